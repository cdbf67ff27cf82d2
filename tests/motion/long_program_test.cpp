// Checks that a program of a million moves is planned in time and memory proportional to its length.
#include "program_builder.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <sys/resource.h>

#include <ctime>

namespace asperity {
namespace {

/// A spiral of short chords, as a finishing program for a dome would have.
Program spiral(std::size_t moves, PathControl control) {
  ProgramBuilder builder({40, 0, 0});
  if (control == PathControl::blend)
    builder.blend(0.01);
  for (std::size_t i = 1; i <= moves; ++i) {
    const double a = 2 * kPi * static_cast<double>(i) / 400,
                 r = 40 - 39.0 * static_cast<double>(i) / static_cast<double>(moves);
    builder.feed_to({r * std::cos(a), r * std::sin(a), -1}, 1800);
  }
  return builder.program();
}

double plan_cpu_s(const Program &program, TimedPath &path) {
  const std::clock_t begin = std::clock();
  path = plan(program, Machine{});
  return static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
}

double most_memory_bytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) * 1024;
}

TEST(LongProgram, MillionMovesTakeSecondsAndOneCopyOfThePath) {
  const Program program = spiral(1000000, PathControl::exact_path);
  const double before = most_memory_bytes();
  TimedPath path;
  // About 0.5 s on an idle core; ten times that for a slow or busy machine. A quadratic plan would take
  // hours.
  EXPECT_LT(plan_cpu_s(program, path), 5.0);
  ASSERT_EQ(path.pieces.size(), 1000000u);
  const double path_bytes = static_cast<double>(path.pieces.size() * sizeof(PathPiece));
  EXPECT_LT(most_memory_bytes() - before, 1.2 * path_bytes); // the pieces and nothing else of their size
  EXPECT_EQ(path.pieces.back().v_out_mm_per_s, 0.0);
  EXPECT_NEAR(path.pieces.back().start_s + path.pieces.back().duration_s, path.duration_s,
              1e-9 * path.duration_s);
}

TEST(LongProgram, RoundedSpiralKeepsRoomForItsArcs) {
  const Program program = spiral(200000, PathControl::blend);
  TimedPath path;
  EXPECT_LT(plan_cpu_s(program, path), 3.0);
  EXPECT_GT(path.pieces.size(), 200000u);
  EXPECT_LE(path.pieces.capacity(), 400000u);
}

} // namespace
} // namespace asperity
