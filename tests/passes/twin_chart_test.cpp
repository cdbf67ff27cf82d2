// Planned passes cut the same surfaces as their program: the sheave's twins, and a plan written out and read
// back.
#include "asperity/base/text_file.h"
#include "asperity/job/job_change.h"
#include "asperity/passes/job_program.h"
#include "asperity/predict/outcome.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>

namespace asperity::test {
namespace {

constexpr double kSame_mm = 1e-6; // 1 nm
const std::string kSheave = ASPERITY_SOURCE_DIR "/scenes/sheave/";

/// Coarse charts: every move still cuts them, and the test stays short.
const JobChange kCoarse[] = {{"chart.wall_spacing_mm", "0.4"}, {"chart.floor_spacing_mm", "0.8"}};

Outcome predicted(const std::filesystem::path &file) {
  Problems problems;
  const auto job = read_job(file, kCoarse, problems);
  const auto program = job ? job_program(*job, problems) : std::nullopt;
  for (const Problem &problem : problems.all())
    ADD_FAILURE() << text_of(problem);
  PredictOptions options;
  options.roughness = false;
  return program ? predict(*job, program->program, options, Progress{}) : Outcome{};
}

LargeArray<float> envelope_of(const Chart &chart) {
  return std::visit([](const auto &each) { return each.envelope_mm; }, chart);
}

void expect_same_charts(const Outcome &a, const Outcome &b) {
  ASSERT_EQ(a.charts.size(), b.charts.size());
  ASSERT_FALSE(a.charts.empty());
  std::size_t cut = 0;
  for (std::size_t i = 0; i < a.charts.size(); ++i) {
    const LargeArray<float> ours = envelope_of(a.charts[i]), theirs = envelope_of(b.charts[i]);
    ASSERT_EQ(ours.size(), theirs.size());
    for (std::size_t cell = 0; cell < ours.size(); ++cell) {
      ASSERT_EQ(std::isfinite(ours[cell]), std::isfinite(theirs[cell])) << i << ' ' << cell;
      if (!std::isfinite(ours[cell]))
        continue;
      ++cut;
      ASSERT_NEAR(ours[cell], theirs[cell], kSame_mm) << i << ' ' << cell;
    }
  }
  EXPECT_GT(cut, 1000u);
}

TEST(TwinCharts, PlannedPlungesCutAsTheirProgram) {
  expect_same_charts(predicted(kSheave + "planned-plunge.toml"), predicted(kSheave + "plunge.toml"));
}

TEST(TwinCharts, PlannedZigzagCutsAsItsProgram) {
  expect_same_charts(predicted(kSheave + "planned-zigzag.toml"), predicted(kSheave + "zigzag.toml"));
}

TEST(TwinCharts, PlanWrittenOutAndReadBackAsAProgramCutsTheSame) {
  Problems problems;
  const auto text = read_file(kSheave + "planned-arc.toml", 1u << 20, problems);
  const auto job = read_job(kSheave + "planned-arc.toml", problems);
  ASSERT_TRUE(text && job);
  const auto program = job_program(*job, problems);
  ASSERT_TRUE(program);
  const auto folder = std::filesystem::temp_directory_path() / "asperity_written_plan";
  std::filesystem::create_directories(folder);
  ASSERT_EQ(write_file(folder / "sheave.ngc", program->text), "");
  const std::string written = "program = \"sheave.ngc\"\n" + text->substr(0, text->find("[between_passes]"));
  ASSERT_EQ(write_file(folder / "sheave.toml", written), "");
  const Outcome again = predicted(folder / "sheave.toml");
  std::filesystem::remove_all(folder);
  const Outcome planned = predicted(kSheave + "planned-arc.toml");
  expect_same_charts(planned, again);
  EXPECT_TRUE(planned.all_met()) << "tangent arcs and spring laps leave less of a line than the 4 um wanted";
}

} // namespace
} // namespace asperity::test
