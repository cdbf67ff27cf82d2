// Passes that cannot be: each said once, at its pass, with a remedy.
#include "passes/planned.h"

#include <gtest/gtest.h>

#include <ostream>

namespace asperity::test {
namespace {

struct WrongPass {
  const char *name;
  std::string text;    ///< the passes
  const char *message; ///< part of some problem's message
  const char *remedy;  ///< part of the same problem's remedy
};

void PrintTo(const WrongPass &wrong, std::ostream *out) { *out << wrong.name; }

std::string wall(const std::string &more) { return wall_pass("rim", "stepdown_mm = 3\n" + more); }
std::string plunged(const std::string &more) { return wall("entry = \"plunge\"\n" + more); }

std::string with(std::string text, const std::string &find, const std::string &by) {
  const std::size_t at = text.find(find);
  EXPECT_NE(at, std::string::npos) << find;
  return at == std::string::npos ? text : text.replace(at, find.size(), by);
}

const std::string kLines = "pattern = \"parallel\"\nedge = \"open\"\n";

std::vector<WrongPass> wrong_words() {
  return {
      {"UnknownKind", with(plunged(""), "\"wall\"", "\"wal\""), "kind cannot be \"wal\"", "\"wall\""},
      {"UnknownKey", plunged("stepdwn_mm = 2"), "stepdwn_mm is not a known key", "stepdown_mm"},
      {"UnknownSurface", with(plunged(""), "\"rim\"", "\"rimm\""), "the job has no wall of that name",
       "\"rim\""},
      {"SurfaceOfAnotherKind", with(plunged(""), "\"rim\"", "\"face\""), "no wall of that name", "rim"},
      {"UnknownCutter", with(plunged(""), "cutter = 1", "cutter = 9"), "names 9", "cutters"},
      {"TooManyTurns", with(plunged(""), "rpm = 18000", "rpm = 90000"), "spindle_max_rpm is 24000",
       "lower speed"},
      {"NoFeed", with(plunged(""), "feed_mm_per_min = 1200\n", ""), "feed_mm_per_min is missing", "Add"},
      {"NoStepdown", wall_pass("rim", "entry = \"plunge\""), "stepdown_mm is missing", "Add"},
      {"NegativeStepdown", wall_pass("rim", "entry = \"plunge\"\nstepdown_mm = -2"), "stepdown_mm is -2",
       "unit"},
      {"NoEntry", wall(""), "entry is missing", "Add"},
      {"UnknownEntry", wall("entry = \"spirl\""), "entry cannot be", "Choose one of"},
      {"RampWithoutAngle", wall("entry = \"ramp\""), "ramp_deg is missing", "Add"},
      {"RampTooSteep", wall("entry = \"ramp\"\nramp_deg = 80"), "ramp_deg is 80", "unit"},
      {"AngleOfAPlunge", plunged("ramp_deg = 3"), "ramp_deg does not belong to entry = \"plunge\"", "Remove"},
      {"AngleOfWholeLaps", wall("entry = \"zigzag\"\nramp_deg = 3"), "does not belong", "Remove"},
      {"ArcWithoutRadius", wall("entry = \"arc\""), "lead_radius_mm is missing", "Add"},
      {"HelixBothWays", wall("direction = \"both\"\nentry = \"helix\""), "one way only", "climb"},
      {"StartTwice", plunged("start_deg = 10\nstart_mm = 5"), "given beside start_deg", "not both"},
      {"StepOfAHelix", wall("entry = \"helix\"\nstart_step_deg = 10"), "start_step_deg does not belong",
       "Remove"},
      {"FinishOfNothing", plunged("finish = {}"), "allowance_mm is 0", "allowance_mm"},
      {"TopBelowBottom", plunged("top_mm = -1"), "not above the wall's bottom", "top_mm"},
      {"UnknownPattern", floor_pass("face", "pattern = \"paralel\"\nedge = \"open\"\nstepover_mm = 2"),
       "pattern cannot be", "\"parallel\""},
      {"NoEdge", floor_pass("face", "pattern = \"parallel\"\nstepover_mm = 2"), "edge is missing", "Add"},
      {"PastAWall",
       floor_pass("pocket", "pattern = \"parallel\"\nedge = \"wall\"\nstepover_mm = 2\npast_edge_mm = 1"),
       "past_edge_mm does not belong", "Remove"},
      {"GapWithoutIsland", floor_pass("face", kLines + "stepover_mm = 2\nisland_gap_mm = 1"),
       "without islands", "Remove"},
      {"AngleOfRings",
       floor_pass("face", "pattern = \"outline_parallel\"\nedge = \"open\"\nstepover_mm = 2\nangle_deg = 3"),
       "angle_deg does not belong", "Remove"},
      {"FloorAboveTheTop", floor_pass("face", kLines + "stepover_mm = 2\ntop_mm = 9"),
       "leaves nothing to cut", "top_mm"},
      {"StepoverOfLevels", dome_pass(2, "pattern = \"levels\"\nstepdown_mm = 1\nstepover_mm = 1"),
       "stepover_mm does not belong", "Remove"},
      {"NearInsideTheBlank", plunged("") + "[between_passes]\nnear_mm = 10.2", "not above the blank",
       "above the blank"},
      {"SafeBelowNear", plunged("") + "[between_passes]\nnear_mm = 15\nsafe_mm = 12", "below near_mm",
       "greater height"},
      {"OutlineWithoutSide",
       with(with(plunged(
                     "bottom_mm = 0\ntop_mm = 5\noutline = \"circle\"\ncentre_mm = [0, 0]\ndiameter_mm = 9"),
                 "kind = \"wall\"", "kind = \"outline\""),
            "surface = \"rim\"\n", ""),
       "side is missing", "Add"},
  };
}

std::vector<WrongPass> wrong_shapes() {
  return {
      {"CutterTooThickForTheHollow",
       with(with(plunged(""), "\"rim\"", "\"crank\""), "cutter = 1", "cutter = 5"),
       "its radius is 6 mm, the wall's tightest hollow 5 mm", "at most 10 mm"},
      {"CutterTooThickForTheCorners",
       with(with(plunged(""), "\"rim\"", "\"window\""), "cutter = 1", "cutter = 5"), "tightest hollow 4 mm",
       "at most 8 mm"},
      {"AllowanceThatDoesNotFit", with(plunged("allowance_mm = 8"), "\"rim\"", "\"bore\""), "does not fit",
       "allowance_mm smaller"},
      {"SlantedCutterAtAWall", with(plunged(""), "cutter = 1", "cutter = 4"), "slanted side", "flat"},
      {"LeadArcTooLarge", with(wall("entry = \"arc\"\nlead_radius_mm = 9"), "\"rim\"", "\"bore\""),
       "lead arc of 9 mm does not fit", "smaller"},
      {"ApproachTooLong", with(plunged("approach_mm = 15"), "\"rim\"", "\"bore\""),
       "approach_mm = 15 does not fit", "smaller approach_mm"},
      {"StretchLongerThanTheLap", wall("entry = \"zigzag\"\nzigzag_mm = 400\nramp_deg = 2"),
       "longer than the path", "shorter"},
      {"LevelsWithoutEnd", with(plunged("top_mm = 900"), "stepdown_mm = 3", "stepdown_mm = 0.01"),
       "more than 20000 levels", "larger steps"},
      {"RampWithoutEnd", wall("top_mm = 5000\nentry = \"zigzag\"\nzigzag_mm = 0.5\nramp_deg = 0.05"),
       "more than 20000 laps", "steeper ramp"},
      {"LinesWithoutEnd", floor_pass("face", kLines + "stepover_mm = 0.005\nstepdown_mm = 0.1"),
       "more than 20000 lines", "larger steps"},
      {"RampInAPoint",
       floor_pass("face", "pattern = \"spiral\"\norder = \"outwards\"\nedge = \"open\"\nstepover_mm = 2\n"
                          "entry = \"ramp\"\nramp_deg = 2"),
       "no room for a ramp", "inwards"},
      {"StepoverTooWide", floor_pass("face", kLines + "stepover_mm = 7"), "more than the cutter's diameter",
       "smaller"},
      {"SpiralOfAPocket", floor_pass("pocket", "pattern = \"spiral\"\nedge = \"wall\"\nstepover_mm = 2"),
       "a spiral needs a round floor", "outline_parallel"},
      {"ClampInTheWay",
       plunged("") +
           "[[hold_down.clamp]]\nname = \"edge clamp\"\ncentre_mm = [0, 26]\nsize_x_mm = 8\nsize_y_mm = 8\n"
           "top_mm = 15",
       "would run into \"edge clamp\"", "Move what holds the blank"},
      {"SafeBelowAClamp",
       plunged("") +
           "[between_passes]\nsafe_mm = 14\n[[hold_down.clamp]]\nname = \"edge clamp\"\ncentre_mm = [0, 60]\n"
           "size_x_mm = 8\nsize_y_mm = 8\ntop_mm = 15",
       "is not above \"edge clamp\"", "Raise safe_mm"},
  };
}

class Wrong : public testing::TestWithParam<WrongPass> {};

TEST_P(Wrong, PassIsReportedWithARemedy) {
  const Problems problems = problems_of(GetParam().text);
  ASSERT_TRUE(problems.has_errors());
  bool is_said = false;
  std::string all;
  for (const Problem &problem : problems.all()) {
    is_said = is_said || (problem.message.find(GetParam().message) != std::string::npos &&
                          problem.remedy.find(GetParam().remedy) != std::string::npos);
    all += text_of(problem) + '\n';
    EXPECT_TRUE(problem.file.ends_with("bezel.toml"));
  }
  EXPECT_TRUE(is_said) << all;
  EXPECT_LE(problems.error_count(), 2u) << all;
}

std::string name_of_case(const testing::TestParamInfo<WrongPass> &info) { return info.param.name; }

INSTANTIATE_TEST_SUITE_P(Words, Wrong, testing::ValuesIn(wrong_words()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Shapes, Wrong, testing::ValuesIn(wrong_shapes()), name_of_case);

TEST(WrongPlan, ProgramBesidePassesIsRefused) {
  std::string text = bezel_text(plunged(""));
  const Problems problems = problems_of_text("program = \"bezel.ngc\"\n" + text);
  ASSERT_TRUE(problems.has_errors());
  EXPECT_NE(problems.all()[0].message.find("program stands beside planned passes"), std::string::npos);
  EXPECT_NE(problems.all()[0].remedy.find("Keep one"), std::string::npos);
}

TEST(WrongPlan, NeitherProgramNorPassesIsRefused) {
  const Problems problems = problems_of_text(bezel_text(""));
  ASSERT_EQ(problems.error_count(), 1u);
  EXPECT_NE(problems.all()[0].message.find("no pass is planned either"), std::string::npos);
  EXPECT_NE(problems.all()[0].remedy.find("[[pass]]"), std::string::npos);
}

TEST(WrongPlan, CornersOutOfReachAreWarnedOf) {
  const Problems problems =
      problems_of(with(with(plunged("side = \"inside\"\nbottom_mm = 0\ntop_mm = 5\noutline = "
                                    "\"rounded_rectangle\"\ncentre_mm = [0, 0]\n"
                                    "width_x_mm = 20\nwidth_y_mm = 20\ncorner_radius_mm = 0"),
                            "kind = \"wall\"", "kind = \"outline\""),
                       "surface = \"rim\"\n", ""));
  EXPECT_FALSE(problems.has_errors());
  ASSERT_EQ(problems.all().size(), 1u);
  EXPECT_NE(problems.all()[0].message.find("keep the cutter's radius"), std::string::npos);
}

} // namespace
} // namespace asperity::test
