// `asperity study` as a user runs it: tables, files, parts, the best plan.
#include "study/study_workshop.h"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace asperity::test_support {

namespace {

using StudyCommand = StudyWorkshop;

std::vector<std::string> loud(std::vector<std::string> arguments) {
  std::erase(arguments, "--quiet");
  return arguments;
}

} // namespace

TEST_F(StudyCommand, PrintsTableFrontInfluenceBestPlanAndCautions) {
  write_job(true);
  const Ran ran = run(loud(study()));
  EXPECT_LE(ran.status, 1) << ran.err;
  for (const char *part :
       {"Study of bush.toml", "program: bush.ngc, slow.ngc", "setup.z_zero_error_mm: 0.00, 0.05",
        "8 of 8 combinations are here", "time_s", "outer side/witness_depth_um", "* front",
        "Influence on outer side/witness_depth_um", "analysis of variance", "together", "Best plan",
        "Every row is a prediction", "eye protection", "Kept in s.db"})
    EXPECT_TRUE(holds(ran.out, part)) << part << '\n' << ran.out;
  EXPECT_FALSE(holds(ran.out, "\x1b")) << "no colours into a file";
  EXPECT_EQ(files(), (std::vector<std::string>{"bush.ngc", "bush.toml", "s.db", "slow.ngc"}));
}

TEST_F(StudyCommand, WritesTableJsonAndPictures) {
  write_job(true);
  EXPECT_LE(run(study({"--out", "results"})).status, 1);
  EXPECT_EQ(files(),
            (std::vector<std::string>{"bush.ngc", "bush.toml", "results/front.png", "results/influence.png",
                                      "results/study.csv", "results/study.json", "s.db", "slow.ngc"}));
  EXPECT_TRUE(read("results/front.png").starts_with("\x89PNG\r\n\x1a\n"));
  const auto all = nlohmann::json::parse(read("results/study.json"));
  EXPECT_EQ(all["format"], "asperity-study");
  EXPECT_EQ(all["trials"].size(), kCombinations);
  EXPECT_EQ(all["varied"][1]["values"], (nlohmann::json{"0.00", "0.05"}));
  EXPECT_EQ(all["front"]["y"], "outer side/witness_depth_um");
  const std::string csv = read("results/study.csv");
  EXPECT_EQ(std::count(csv.begin(), csv.end(), '\n'), 5 + 1 + 8);
}

TEST_F(StudyCommand, NumbersAreThoseOfPredict) {
  ASSERT_LE(run(study({"--json", "study.json"})).status, 1);
  const auto trials = nlohmann::json::parse(read("study.json"))["trials"];
  // Combination 7 of 8: the slow program, z zero error 0.05, runout 0.0.
  ASSERT_EQ(trials[6]["values"]["program"], "slow.ngc");
  std::string job = read("bush.toml");
  job.replace(job.find("program = \"bush.ngc\""), 20, "program = \"slow.ngc\"");
  job.replace(job.find("[setup]\n"), 8, "[setup]\nz_zero_error_mm = 0.05\n");
  job.replace(job.find("number = 1\n"), 11, "number = 1\nrunout_mm = 0.0\n");
  write("one.toml", job);
  ASSERT_LE(run({"predict", "one.toml", "--quiet", "--json", "one.json"}).status, 1);
  const auto one = nlohmann::json::parse(read("one.json"));
  EXPECT_EQ(trials[6]["numbers"]["time_s"], one["time"]["total_s"]);
  EXPECT_EQ(trials[6]["numbers"]["outer side/diameter_mm"], one["features"][0]["sizes"][0]["mean_mm"]);
  EXPECT_EQ(trials[6]["numbers"]["peak_side_force_N"], one["cut"]["peak_side_force_N"]["value"]);
}

TEST_F(StudyCommand, RoughnessIsReadOnlyWhereItIsAskedFor) {
  ASSERT_LE(run(study({"--csv", "without.csv"})).status, 1);
  EXPECT_FALSE(holds(read("without.csv"), "/ra_um"));
  const std::vector<std::string> one{"study", "bush.toml", "--vary", "cutter.1.runout_mm=0.0,0.02",
                                     "--quiet"};
  std::vector<std::string> axis = one;
  axis.insert(axis.end(), {"--up", "outer side/ra_high_um", "--results", "r.db", "--csv", "with.csv"});
  const Ran ran = run(axis);
  EXPECT_LE(ran.status, 1) << ran.err;
  EXPECT_TRUE(holds(read("with.csv"), "outer side/ra_high_um"));
}

TEST_F(StudyCommand, PartsMergedEqualTheWholeByteForByte) {
  ASSERT_LE(run(study({"--csv", "whole.csv", "--threads", "1"})).status, 1);
  for (const std::string part : {"1", "2", "3"}) {
    const Ran ran = run(study({"--results", part + ".db", "--part", part + "/3"}));
    EXPECT_EQ(ran.status, 0) << ran.err;
  }
  const Ran merged = run({"study", "merge", "all.db", "2.db", "3.db", "1.db", "3.db"});
  EXPECT_EQ(merged.status, 0) << merged.err;
  EXPECT_TRUE(holds(merged.out, "8 combinations; 2 stood in several parts")) << merged.out;
  EXPECT_LE(run({"study", "show", "all.db", "--csv", "merged.csv"}).status, 1);
  EXPECT_EQ(read("merged.csv"), read("whole.csv"));
}

TEST_F(StudyCommand, WrongCombinationsAreKeptAsSuch) {
  const Ran ran =
      run({"study", "bush.toml", "--vary", "cutter.1.flutes=2,-3,3", "--results", "s.db", "--csv", "s.csv"});
  EXPECT_LE(ran.status, 1) << ran.err;
  EXPECT_TRUE(holds(ran.out, "1 of them wrong")) << ran.out;
  EXPECT_TRUE(holds(read("s.csv"), "\n2,-3,wrong,")) << read("s.csv");
  EXPECT_TRUE(holds(read("s.csv"), "flutes")) << "and says why";
}

TEST_F(StudyCommand, BestWritesItsJobWhichPredictsTheSame) {
  ASSERT_LE(run(study({"--json", "study.json"})).status, 1);
  const auto all = nlohmann::json::parse(read("study.json"));
  std::filesystem::create_directory(folder() / "plans");
  const Ran best = run({"study", "best", "s.db", "--at-most", "outer side/witness_depth_um=1000",
                        "--write-job", "plans/best.toml", "--nearest"});
  EXPECT_LE(best.status, 1) << best.err;
  EXPECT_TRUE(holds(best.out, "plans/best.toml")) << best.out;
  ASSERT_LE(run({"predict", "plans/best.toml", "--quiet", "--json", "best.json"}).status, 1);
  const auto taken = static_cast<std::size_t>(all["best"]["combination"].get<int>()) - 1;
  EXPECT_EQ(nlohmann::json::parse(read("best.json"))["time"]["total_s"],
            all["trials"][taken]["numbers"]["time_s"]);
}

TEST_F(StudyCommand, WhereNoneMeetsEverythingItSaysSoAndNamesTheNearest) {
  ASSERT_LE(run(study()).status, 1);
  const Ran best = run({"study", "best", "s.db", "--at-most", "time_s=0.001", "--write-job", "new.toml"});
  EXPECT_EQ(best.status, 1);
  EXPECT_TRUE(holds(best.out, "No combination meets everything wanted")) << best.out;
  EXPECT_TRUE(holds(best.out, "MISSED time_s")) << best.out;
  EXPECT_TRUE(holds(best.err, "--nearest writes the nearest")) << best.err;
  EXPECT_FALSE(std::filesystem::exists(folder() / "new.toml"));
}

TEST_F(StudyCommand, HelpExplainsListsAndNamesEveryOption) {
  const Ran ran = run({"study", "--help"});
  EXPECT_EQ(ran.status, 0);
  for (const char *part :
       {"--vary", "--results", "--part", "--along", "--up", "--at-most", "--at-least", "--out", "--csv",
        "--json", "--roughness", "--threads", "--quiet", "merge", "best", "show", "FROM:TO:STEP", "goes on"})
    EXPECT_TRUE(holds(ran.out, part)) << part;
}

} // namespace asperity::test_support
