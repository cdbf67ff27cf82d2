// `asperity tolerance` and `asperity calibrate` as a user runs them.
#include "cli/workshop.h"

namespace asperity::test_support {

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

constexpr const char *kMeasured = "fit = [\"stiffness_share\"]\n"
                                  "[[pull]]\nforce_N = 20\nmoved_um = 25\nuncertainty_um = 3\n";

} // namespace

using ToleranceCommand = Workshop;
using CalibrateCommand = Workshop;

TEST_F(ToleranceCommand, PrintsBandsChancesAndWhatToMeasureFirst) {
  const Ran ran = run({"tolerance", "bush.toml", "--draws", "40"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  for (const char *part : {"How sure: 40 draws", "outer side: diameter [mm]", "95 % of the draws",
                           "conformance probability", "Measure this first.", "coverage factor 2", "JCGM 101",
                           "Force coefficients are table values", "Wear eye protection"})
    EXPECT_TRUE(holds(ran.out, part)) << part << '\n' << ran.out;
}

TEST_F(ToleranceCommand, WritesTheSameTableForTheSameSeed) {
  EXPECT_EQ(run({"tolerance", "bush.toml", "--draws", "12", "--csv", "a.csv", "--json", "a.json"}).status, 0);
  EXPECT_EQ(run({"tolerance", "bush.toml", "--draws", "12", "--csv", "b.csv", "--threads", "1"}).status, 0);
  EXPECT_EQ(run({"tolerance", "bush.toml", "--draws", "12", "--csv", "c.csv", "--seed", "2"}).status, 0);
  EXPECT_TRUE(holds(read("a.csv"), "\nouter side/diameter_mm,outer side,diameter,mm,")) << read("a.csv");
  EXPECT_EQ(read("a.csv"), read("b.csv"));
  EXPECT_NE(read("a.csv"), read("c.csv"));
  EXPECT_TRUE(holds(read("a.json"), "\"coverage_factor\": 2"));
}

TEST_F(ToleranceCommand, RefusesWhatMakesNoSense) {
  EXPECT_EQ(run({"tolerance", "bush.toml", "--draws", "1"}).status, 2);
  EXPECT_EQ(run({"tolerance", "nowhere.toml"}).status, 2);
  EXPECT_EQ(run({"tolerance", "bush.toml", "--csv", "no/such/folder.csv"}).status, 2);
  write("bush.toml",
        job("{ plus = 0.2, minus = 0.2 }",
            "[uncertainty]\nx_zero_mm = 0\ny_zero_mm = 0\nz_zero_mm = 0\ncutter_diameter_mm = 0\n"
            "runout_share = 0\ncutting_force_share = 0\nedge_force_share = 0\nstiffness_share = 0\n"
            "blank_allowance_mm = 0\n"));
  const Ran ran = run({"tolerance", "bush.toml"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "nothing is uncertain")) << ran.err;
}

TEST_F(CalibrateCommand, WritesAFileThatTheJobIncludes) {
  write("measured.toml", kMeasured);
  const Ran ran = run({"calibrate", "bush.toml", "measured.toml", "-o", "machine.toml"});
  EXPECT_EQ(ran.status, 0) << ran.err;
  // 20 N over 25 um is 0.8 N/um; the job states 1.0.
  EXPECT_TRUE(holds(ran.out, "machine stiffness: 0.8 times what the job states")) << ran.out;
  EXPECT_TRUE(holds(ran.out, "Remove from the job, whose own values win: machine.stiffness_xy_N_per_um."));
  EXPECT_TRUE(holds(read("machine.toml"), "stiffness_xy_N_per_um = 0.8"));
  const std::string own = "[machine]\nstiffness_xy_N_per_um = 1.0\n";
  std::string text = job();
  text.replace(text.find(own), own.size(), "");
  write("bush.toml", "include = \"machine.toml\"\n" + text);
  const Ran again = run({"predict", "bush.toml"});
  EXPECT_LE(again.status, 1) << again.err;
  EXPECT_EQ(again.err, "");
}

TEST_F(CalibrateCommand, RefusesWhatTheReadingsCannotTell) {
  write("measured.toml",
        "fit = [\"stiffness_share\", \"edge_force_share\"]\n"
        "[[reading]]\nnumber = \"outer side/diameter_mm\"\nvalue = 20.0\nuncertainty = 0.01\n");
  const Ran ran = run({"calibrate", "bush.toml", "measured.toml"});
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "cannot tell") || holds(ran.err, "say less about")) << ran.err;
  EXPECT_EQ(run({"calibrate", "bush.toml", "nowhere.toml"}).status, 2);
}

} // namespace asperity::test_support
