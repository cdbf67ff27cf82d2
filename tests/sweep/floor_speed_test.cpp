// A day's worth of small moves must be swept in about a second, not a minute.
#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <string>

namespace asperity::floor_test {
namespace {

/// Processor time, so that other programs on the machine do not count [s].
double processor_s() { return double(std::clock()) / CLOCKS_PER_SEC; }

/// Zigzag passes 0.75 mm apart in moves of 0.3 mm over a sculpted square of 50 mm.
SweptPath zigzag(const CutterProfile &profile, int pieces) {
  SweptPath path = path_with(profile);
  constexpr int kPerPass = 166;
  const auto tip = [](int i) {
    const int pass = i / kPerPass, along = i % kPerPass;
    const double x = -25.0 + 0.3 * (pass % 2 == 0 ? along : kPerPass - along), y = -25.0 + 0.75 * (pass % 67);
    return Vec3(x, y, std::sin(0.3 * x) * std::cos(0.2 * y));
  };
  for (int i = 0; i < pieces; ++i)
    if (i % kPerPass != kPerPass - 1)
      add(path, Curve::line(tip(i), tip(i + 1)), i % kPerPass != 0);
  return path;
}

// Measured: 0.7 s for all three of one core of a busy 2025 server processor. The limit leaves room for slower
// machines; sweeping whole capsules without passing blocks over takes minutes.
TEST(FloorSpeed, TwentyThousandSmallMovesOverAMillionCellsTakeSeconds) {
#ifndef NDEBUG
  GTEST_SKIP() << "only optimised builds are held to it";
#endif
  constexpr double kLimit_s = 12.0;
  for (const CutterProfile &cutter :
       {CutterProfile::ball(3.0), CutterProfile::flat(3.0), CutterProfile::corner_radius(3.0, 0.5)}) {
    const SweptPath path = zigzag(cutter, 20000);
    FloorChart chart = square_chart(25.0, 0.05);
    const double begin = processor_s();
    sweep(chart, path);
    EXPECT_LT(processor_s() - begin, kLimit_s) << "tip flat " << cutter.tip_flat_mm();
    EXPECT_TRUE(
        std::all_of(chart.envelope_mm.begin(), chart.envelope_mm.end(), [](float e) { return e < 3.0f; }));
  }
}

} // namespace
} // namespace asperity::floor_test
