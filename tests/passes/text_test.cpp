// The program text: what it says first, that it reads back to what was planned, and the sheave's twins.
#include "passes/planned.h"

#include "asperity/base/text_file.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

namespace asperity::test {
namespace {

const std::string kScenes = ASPERITY_SOURCE_DIR "/scenes/";

std::optional<JobProgram> program_of(const std::filesystem::path &file, Problems &problems) {
  const auto job = read_job(file, problems);
  auto program = job ? job_program(*job, problems) : std::nullopt;
  for (const Problem &problem : problems.all())
    ADD_FAILURE() << text_of(problem);
  return program;
}

TEST(PassText, SaysUnitZeroCutterAndCautionsFirstAndEndsProperly) {
  const std::string text = planned(wall_pass("rim", "stepdown_mm = 3\nentry = \"plunge\"")).plan.text;
  const std::string head = text.substr(0, text.find("G21"));
  for (const char *words :
       {"(Dial bezel [two])", "Unit mm, absolute", "X5 Y-3 Z10", "diameter 6 mm, 2 flutes",
        "above the work first", "eye protection", "controller", "maker"})
    EXPECT_NE(head.find(words), std::string::npos) << words;
  EXPECT_NE(text.find("G21 G90 G17 G94 G40"), std::string::npos);
  EXPECT_TRUE(text.ends_with("M5\nM30\n%\n"));
}

TEST(PassText, IsReadWithoutAWordEvenToTheLetterOfTheStandard) {
  const auto plan =
      planned(wall_pass("crank", "stepdown_mm = 3\nentry = \"arc\"\nlead_radius_mm = 2\noverlap_mm = 1") +
              floor_pass("ring", "pattern = \"parallel\"\nedge = \"open\"\nstepover_mm = 2") +
              dome_pass(5, "pattern = \"spiral\"\nstepover_mm = 2"));
  ReadOptions options = read_options(plan.job);
  options.strict = true; // NISTIR 6556: arcs' radii within 0.002 mm, lines of 256 characters, percent signs
  Problems problems;
  read_program_text(plan.plan.text, "bezel.ngc", options, problems);
  for (const Problem &problem : problems.all())
    ADD_FAILURE() << text_of(problem);
  EXPECT_NE(plan.plan.text.find("G43 H5"), std::string::npos) << "a cutter with a length in the table";
}

TEST(PassText, ReadsBackToTheStrokesThatWerePlanned) {
  const auto plan = planned(wall_pass("crank", "stepdown_mm = 3\nentry = \"ramp\"\nramp_deg = 3") +
                            floor_pass("face", "pattern = \"spiral\"\nedge = \"open\"\nstepover_mm = 2"));
  std::vector<PassStroke> strokes;
  for (const PassStroke &stroke : plan.plan.route.strokes())
    if (stroke.cuts())
      strokes.push_back(stroke);
  const auto moves = feed_moves(plan.program);
  ASSERT_EQ(moves.size(), strokes.size());
  for (std::size_t i = 0; i < moves.size(); ++i)
    for (const double u : {0.0, 0.37, 1.0}) {
      const Vec3 read = moves[i].curve.point(u) + plan.job.setup.program_zero_mm;
      EXPECT_LT(glm::distance(read, strokes[i].point(u)), 3e-6) << "move " << i << " at " << u;
    }
}

TEST(PassText, DecimalsAndChordsAreAsAskedFor) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 10\nentry = \"plunge\"\nchord_mm = 0.5") +
                            "[between_passes]\ndecimals = 3\n");
  EXPECT_EQ(plan.plan.text.find("G2 "), std::string::npos);
  std::size_t chords = 0;
  for (const Move &move : level_moves(plan.program, -10.0))
    chords += move.curve.length_mm() < 0.51 ? 1 : 0;
  EXPECT_EQ(chords, 290u); // 2 pi 23 / 0.5 = 289.03
  EXPECT_EQ(plan.plan.text.find(".0000"), std::string::npos);
}

/// Planned passes move the cutter exactly as their program does.
void expect_twins(const std::string &plan, const std::string &program) {
  Problems problems;
  const auto ours = program_of(kScenes + "sheave/" + plan, problems);
  const auto theirs = program_of(kScenes + "sheave/" + program, problems);
  ASSERT_TRUE(ours && theirs);
  ASSERT_EQ(ours->program.moves.size(), theirs->program.moves.size());
  for (std::size_t i = 0; i < ours->program.moves.size(); ++i) {
    const Move &a = ours->program.moves[i], &b = theirs->program.moves[i];
    ASSERT_EQ(a.kind, b.kind) << i;
    ASSERT_EQ(a.curve.begin, b.curve.begin) << i;
    ASSERT_EQ(a.curve.end, b.curve.end) << i;
    ASSERT_EQ(a.curve.sweep_rad, b.curve.sweep_rad) << i;
    ASSERT_EQ(a.curve.centre, b.curve.centre) << i;
    ASSERT_EQ(a.feed_mm_per_min, b.feed_mm_per_min) << i;
    ASSERT_EQ(a.spindle_rpm, b.spindle_rpm) << i;
    ASSERT_EQ(a.dwell_s, b.dwell_s) << i;
    ASSERT_EQ(a.tool, b.tool) << i;
    ASSERT_EQ(a.turn, b.turn) << i;
    ASSERT_EQ(a.control, b.control) << i;
  }
}

TEST(SheaveTwins, PlungedLevelsMoveAsTheirProgram) { expect_twins("planned-plunge.toml", "plunge.toml"); }
TEST(SheaveTwins, ZigzagRampMovesAsItsProgram) { expect_twins("planned-zigzag.toml", "zigzag.toml"); }

TEST(SheaveTwins, ArcPlanIsPlannedAndSaysItsDecimals) {
  Problems problems;
  const auto program = program_of(kScenes + "sheave/planned-arc.toml", problems);
  ASSERT_TRUE(program);
  EXPECT_NE(program->text.find("G3 "), std::string::npos) << "lead arcs";
}

TEST(Reference, EveryPassKeyShownIsRead) {
  // The reference job shows its passes behind "#: ", in place of the program.
  std::istringstream lines([] {
    Problems problems;
    return read_file(kScenes + "reference.toml", 1u << 20, problems).value_or("");
  }());
  std::string text;
  for (std::string line; std::getline(lines, line);)
    text += line.starts_with("program =") ? "" : (line.starts_with("#: ") ? line.substr(3) : line) + "\n";
  const auto folder = std::filesystem::temp_directory_path() / "asperity_reference_passes";
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "reference.toml") << text;
  Problems problems;
  auto job = read_job(folder / "reference.toml", problems);
  // The bolt stands on the hub cap; it is in nobody's way here.
  if (job)
    std::erase_if(job->holding.keep_outs, [](const KeepOut &each) { return each.name == "bush bolt"; });
  const auto program = job ? job_program(*job, problems) : std::nullopt;
  for (const Problem &problem : problems.all())
    ADD_FAILURE() << text_of(problem);
  std::filesystem::remove_all(folder);
  ASSERT_TRUE(program);
  EXPECT_GT(program->program.moves.size(), 100u);
}

} // namespace
} // namespace asperity::test
