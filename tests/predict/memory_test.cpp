// The memory bound stated before a run against what the run takes; alone in its program, because a process
// tells only the most it ever held.
#include "asperity/predict/outcome.h"

#include "properties/small_job.h"

#include <gtest/gtest.h>

#include <sys/resource.h>

namespace asperity::test {
namespace {

double most_held_bytes() {
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return static_cast<double>(usage.ru_maxrss) * 1024.0;
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

TEST(Memory, StaysBelowTheBoundStatedBeforeAndIsNoLessThanAThirdOfIt) {
  Job job = boss_job();
  job.effects = {};
  job.resolution = {0.02, 0.012}; // 0.6 and 2.8 million cells
  const Program program = program_of(chord_program());
  const double before = most_held_bytes();
  const Outcome outcome = predict(job, program, {.threads = 2}, Progress{});
  ASSERT_EQ(outcome.status, Status::done) << outcome.why;
  const double taken = most_held_bytes() - before, bound = static_cast<double>(outcome.memory_bound_bytes);
  RecordProperty("taken_MB", std::to_string(taken * 1e-6));
  RecordProperty("bound_MB", std::to_string(bound * 1e-6));
  EXPECT_LE(taken, bound);
  EXPECT_GE(3.0 * taken, bound);
}

} // namespace
} // namespace asperity::test
