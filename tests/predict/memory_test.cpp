// The memory bound stated before a run against what the run takes; alone in its program, so that nothing else
// is held.
#include "asperity/base/large_array.h"
#include "asperity/predict/outcome.h"

#include "properties/small_job.h"
#include "support/own_memory.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <malloc.h>
#include <sys/resource.h>

#include <fstream>

namespace asperity::test {
namespace {

/// What the process holds, with the most it ever held forgotten.
double held_from_here_bytes() {
  malloc_trim(0);
  std::ofstream("/proc/self/clear_refs") << "5";
  return own_bytes("VmRSS:");
}

/// Laps of short chords, and a face: some thousand moves.
std::string chord_program() {
  std::string text = "G21 G90 G17 G94 G54\nT1 M6\nS18000 M3\nG0 X20 Y0 Z10\nG0 Z4\nG1 X-20 F900\nG0 Z10\n"
                     "G0 X13 Y0\nG0 Z5\n";
  constexpr int kChords = 2000;
  for (const double z : {2.0, 0.0}) {
    text += "G1 Z" + std::to_string(z) + " F300\n";
    for (int i = 1; i <= kChords; ++i) {
      const double a = -2.0 * kPi * i / kChords;
      text +=
          "G1 X" + std::to_string(13.0 * std::cos(a)) + " Y" + std::to_string(13.0 * std::sin(a)) + " F900\n";
    }
  }
  return text + "G0 Z10\nM30\n";
}

/// A wavy face in short moves: a tenth of 1,000,000 moves over 8000 x 8000 cells.
std::string face_program(int lines, int moves_a_line, double side_mm) {
  std::string text = "G21 G90 G17 G94 G54\nT1 M6\nS18000 M3\nG0 Z20\nG0 X0 Y0\nG1 Z4.1 F300\n";
  for (int k = 0; k < lines; ++k)
    for (int i = 0; i <= moves_a_line; ++i) {
      const double y = side_mm * k / (lines - 1), along = side_mm * i / moves_a_line;
      const double x = k % 2 == 0 ? along : side_mm - along;
      text += fmt::format("G1 X{:.4f} Y{:.4f} Z{:.5f} F1800\n", x, y,
                          4.05 + 0.05 * std::sin(0.7 * x) * std::cos(0.45 * y));
    }
  return text + "G0 Z20\nM30\n";
}

Job face_job(double side_mm, double spacing_mm) {
  Job job = boss_job();
  job.cutters[0].kind = CutterKind::ball;
  job.cutters[0].diameter_mm = 3;
  job.blank.shape = BlankShape::box;
  job.blank.centre = {0.5 * side_mm, 0.5 * side_mm};
  job.blank.size_mm = {side_mm + 4, side_mm + 4};
  FloorFeature face;
  face.name = "face";
  face.outline = Outline::rounded_rectangle(job.blank.centre, side_mm, side_mm, 0.5);
  face.z_mm = 4;
  job.features = {face};
  job.resolution = {spacing_mm, spacing_mm};
  job.effects = {};
  return job;
}

/// Predicts, and compares what was taken with what was stated before.
void expect_within_bound(const Job &job, const std::string &text, std::size_t limit_bytes = 0) {
  const Program program = program_of(text);
  const double before = held_from_here_bytes();
  const Outcome outcome =
      predict(job, program, {.threads = 2, .memory_limit_bytes = limit_bytes}, Progress{});
  ASSERT_EQ(outcome.status, Status::done) << outcome.why;
  const double taken = own_bytes("VmHWM:") - before,
               bound = static_cast<double>(outcome.memory_bound.in_memory_bytes);
  ::testing::Test::RecordProperty("taken_MB", std::to_string(taken * 1e-6));
  ::testing::Test::RecordProperty("bound_MB", std::to_string(bound * 1e-6));
  EXPECT_LE(taken, bound);
  EXPECT_GE(2.0 * taken, bound);
}

TEST(Memory, StaysBelowTheBoundStatedBeforeAndIsNoLessThanHalfOfIt) {
  Job job = boss_job();
  job.effects = {};
  job.resolution = {0.02, 0.012}; // 0.6 and 2.8 million cells
  expect_within_bound(job, chord_program());
}

TEST(Memory, ATenthOfAMillionMovesOver64MillionCellsGoesThroughInASixthOf2GiB) {
  // A band of the roughness map and the fixed part are no smaller than for the whole.
  constexpr std::size_t kLimit = (std::size_t{1} << 31) / 6;
  expect_within_bound(face_job(50, 0.0198), face_program(316, 316, 50), kLimit);
}

/// Private memory that may be written, held to so much [bytes]; beyond it an allocation fails.
class OwnMemoryLimit {
public:
  explicit OwnMemoryLimit(double bytes) {
    ::getrlimit(RLIMIT_DATA, &before_);
    rlimit now = before_;
    now.rlim_cur = static_cast<rlim_t>(bytes);
    ::setrlimit(RLIMIT_DATA, &now);
  }
  ~OwnMemoryLimit() { ::setrlimit(RLIMIT_DATA, &before_); }

private:
  rlimit before_{};
};

TEST(Memory, ChartsLargerThanItLieOnTheDisk) {
  const Job job = face_job(50, 0.0083); // 36 million cells, four lists of 145 MB
  const Program program = program_of(face_program(20, 40, 50));
  constexpr std::size_t kLimit = 300'000'000;
  if (disk_room_bytes() < 2e9)
    GTEST_SKIP() << "no disk to put them on";
  const OwnMemoryLimit limit(own_bytes("VmData:") + static_cast<double>(kLimit));
  const Outcome outcome = predict(job, program, {.threads = 2, .memory_limit_bytes = kLimit}, Progress{});
  ASSERT_EQ(outcome.status, Status::done) << outcome.why;
  EXPECT_LE(outcome.memory_bound.in_memory_bytes, kLimit);
  const auto &chart = std::get<FloorChart>(outcome.charts[0]);
  EXPECT_EQ(outcome.memory_bound.on_disk_bytes, 16 * chart.nx * chart.ny);
  // Under a line of the path the surface is the path's height, to the ball's share of slope and sagitta.
  constexpr double kX_mm = 25.0, kY_mm = 50.0 * 10 / 19, kBallOnSlope_mm = 0.005;
  const auto cell = chart.at(static_cast<std::size_t>((kX_mm - chart.origin_mm.x) / chart.spacing_mm),
                             static_cast<std::size_t>((kY_mm - chart.origin_mm.y) / chart.spacing_mm));
  EXPECT_NEAR(chart.residual_mm(cell), 0.05 + 0.05 * std::sin(0.7 * kX_mm) * std::cos(0.45 * kY_mm),
              kBallOnSlope_mm);
}

} // namespace
} // namespace asperity::test
