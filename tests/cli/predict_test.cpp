// A whole prediction through the program: what it prints, writes and returns, and how it stops.
#include "cli/workshop.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

const std::vector<std::string> kInputs = {"bush.ngc", "bush.toml"};

} // namespace

using Predict = Workshop;

TEST_F(Predict, EverythingMetIsStatusZero) {
  const Ran ran = run({"predict", "bush.toml"});
  EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
  EXPECT_TRUE(ran.out.starts_with("Bell-crank bush\n"));
  EXPECT_TRUE(holds(ran.out, "\nMET  all of 1 wanted value met; 0 dangers"));
  EXPECT_TRUE(holds(ran.out, "Wear eye protection"));
  EXPECT_FALSE(holds(ran.out, "\x1b")) << "no colours into a file";
  EXPECT_EQ(files(), kInputs) << "nothing is written unless asked";
}

TEST_F(Predict, AMissedSizeIsStatusOne) {
  write("bush.toml", job("{ nominal = 19.0, plus = 0.01, minus = 0.01 }"));
  const Ran ran = run({"predict", "bush.toml"});
  EXPECT_EQ(ran.status, 1) << ran.err;
  EXPECT_TRUE(holds(ran.out, "NOT MET  1 of 1 wanted value missed"));
}

TEST_F(Predict, ADangerIsStatusOneThoughTheSizeIsMet) {
  const std::string bolt = "[hold_down]\n[[hold_down.bolt]]\nname = \"stud\"\ncentre_mm = [-14, 0]\n"
                           "head_diameter_mm = 4.0\ntop_mm = 6.0\n";
  write("bush.toml", job("{ plus = 0.2, minus = 0.2 }", bolt));
  const Ran ran = run({"predict", "bush.toml"});
  EXPECT_EQ(ran.status, 1) << ran.out << ran.err;
  EXPECT_TRUE(holds(ran.out, "DANGER keep-out touched")) << ran.out;
}

TEST_F(Predict, OutHoldsTwoPicturesAFeatureAndTheJson) {
  const Ran ran = run({"predict", "bush.toml", "--out", "results/first"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  EXPECT_EQ(files(),
            (std::vector<std::string>{"bush.ngc", "bush.toml", "results/first/outer-side-ra.png",
                                      "results/first/outer-side.png", "results/first/prediction.json"}));
  for (const char *picture : {"results/first/outer-side.png", "results/first/outer-side-ra.png"}) {
    EXPECT_TRUE(holds(ran.out, picture));
    EXPECT_TRUE(read(picture).starts_with("\x89PNG\r\n\x1a\n"));
  }
  const auto document = nlohmann::json::parse(read("results/first/prediction.json"));
  EXPECT_EQ(document.at("format"), "asperity-prediction");
  EXPECT_EQ(document.at("job").at("title"), "Bell-crank bush");
}

TEST_F(Predict, FeaturesWithTheSameFileNameDoNotOverwriteEachOther) {
  // "outer-side" again, and the name that its roughness map would take.
  std::string more;
  for (const char *name : {"Outer  Side", "outer side ra"})
    more += fmt::format("[[wall]]\nname = \"{}\"\noutline = \"circle\"\ncentre_mm = [0, 0]\n"
                        "diameter_mm = 20.0\nside = \"outside\"\nbottom_mm = 2.0\ntop_mm = 4.0\n",
                        name);
  write("bush.toml", job("{ plus = 0.2, minus = 0.2 }", more));
  EXPECT_LE(run({"predict", "bush.toml", "--out", "results"}).status, 1);
  EXPECT_EQ(files(), (std::vector<std::string>{"bush.ngc", "bush.toml", "results/outer-side-2-ra.png",
                                               "results/outer-side-2.png", "results/outer-side-ra-2-ra.png",
                                               "results/outer-side-ra-2.png", "results/outer-side-ra.png",
                                               "results/outer-side.png", "results/prediction.json"}));
}

TEST_F(Predict, QuietPrintsNothingAndWritesTheSame) {
  const Ran ran = run({"predict", "bush.toml", "--quiet", "--json", "p.json"});
  EXPECT_EQ(ran.status, 0);
  EXPECT_EQ(ran.out + ran.err, "");
  EXPECT_TRUE(nlohmann::json::accept(read("p.json")));
}

TEST_F(Predict, TheResultDoesNotDependOnTheNumberOfThreads) {
  EXPECT_EQ(run({"predict", "bush.toml", "--quiet", "--threads", "1", "--json", "one.json"}).status, 0);
  EXPECT_EQ(run({"predict", "bush.toml", "--quiet", "--threads", "3", "--json", "three.json"}).status, 0);
  EXPECT_EQ(read("one.json"), read("three.json"));
}

TEST_F(Predict, InterruptedItStopsSoonAndLeavesNoFile) {
  write("bush.toml", job("{ plus = 0.2, minus = 0.2 }", "[chart]\nwall_spacing_mm = 0.005\n"));
  std::string long_program = program();
  const std::size_t level = long_program.find("G2 X13");
  for (int k = 0; k < 400; ++k)
    long_program.insert(level, "G2 X13 Y0 I-13 J0\n");
  write("bush.ngc", long_program);
  constexpr double kWellInside_s = 0.4; // the whole run takes several seconds
  const Ran ran = run({"predict", "bush.toml", "--out", "results"}, kWellInside_s);
  EXPECT_EQ(ran.status, 130) << ran.out << ran.err;
  EXPECT_TRUE(holds(ran.err, "stopped"));
  EXPECT_EQ(files(), kInputs);
  EXPECT_EQ(ran.out, "");
}

} // namespace asperity::test_support
