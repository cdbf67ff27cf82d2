// Joined moves in one line swept as one: the same floor, the same owners, and no more moved than was allowed.
#include "asperity/base/units.h"
#include "asperity/sweep/sweep_floor.h"

#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::floor_test {
namespace {

/// Storage in floats and arithmetic above the plane: the sweep's own promise.
constexpr double kPromised_mm = 1e-6;

FloorChart swept(const SweptPath &path, double merge_within_mm, int threads = 2) {
  FloorChart chart = square_chart(4.0, 0.05);
  EXPECT_TRUE(sweep_floor(chart, path, threads, Progress(), merge_within_mm));
  return chart;
}

/// Uneven joined moves along one line, there or back.
SweptPath uneven_line(const CutterProfile &profile, double rise_mm, bool back) {
  SweptPath path = path_with(profile);
  const Vec3 from(-3.0, -0.7, 0.1), to(3.0, 1.1, 0.1 + rise_mm);
  constexpr int kMoves = 200;
  const auto at = [&](int i) {
    const double u = std::pow(double(i) / kMoves, 1.5), v = back ? 1.0 - u : u;
    return from + v * (to - from);
  };
  for (int i = 0; i < kMoves; ++i)
    add(path, Curve::line(at(i), at(i + 1)), i > 0);
  return path;
}

double difference_mm(const FloorChart &a, const FloorChart &b, std::size_t cell) {
  return std::abs(double(a.envelope_mm[cell]) - double(b.envelope_mm[cell]));
}

double largest_difference_mm(const FloorChart &a, const FloorChart &b) {
  double worst = 0.0;
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell)
    if (std::isfinite(a.envelope_mm[cell]) && std::isfinite(b.envelope_mm[cell]))
      worst = std::max(worst, difference_mm(a, b, cell));
  return worst;
}

/// Where a ball leaves no flank steeper than 45 degrees: up to R (1 - cos 45 deg) above its lowest tip.
double largest_gentle_difference_mm(const FloorChart &a, const FloorChart &b, double radius_mm,
                                    double lowest_tip_mm) {
  const double highest = lowest_tip_mm - a.base_mm + radius_mm * (1.0 - std::cos(0.25 * kPi));
  double worst = 0.0;
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell)
    if (double(a.envelope_mm[cell]) < highest)
      worst = std::max(worst, difference_mm(a, b, cell));
  return worst;
}

TEST(FloorMerge, MergedMovesLeaveTheSameFloor) {
  for (const NamedProfile &cutter : all_profiles())
    for (const double rise : {0.0, 0.2, -1.5})
      for (const bool back : {false, true}) {
        const SweptPath path = uneven_line(cutter.profile, rise, back);
        EXPECT_LE(largest_difference_mm(swept(path, kSameLine_mm), swept(path, 0.0)), kPromised_mm)
            << cutter.name << " rising " << rise;
      }
}

/// Share of cells so near a joint that the two moves' heights differ by less than a float can hold: the
/// circle rises by half an ulp of 1 mm, 6e-8, within sqrt(2 R 6e-8) = 0.0004 mm to either side of it
/// (derived); moves are 0.03 mm long on average.
constexpr double kAtJoints = 2.0 * 0.0004 / 0.03;

// A ball is lowest where one place of the path lies: both ways must name the move that holds it.
TEST(FloorMerge, EveryMoveKeepsItsCells) {
  for (const double rise : {0.0, 0.2, -0.2})
    for (const bool back : {false, true}) {
      const SweptPath path = uneven_line(CutterProfile::ball(1.5), rise, back);
      const FloorChart merged = swept(path, kSameLine_mm), single = swept(path, 0.0);
      std::size_t compared = 0, other = 0;
      for (std::size_t cell = 0; cell < merged.owner.size(); ++cell) {
        if (std::isinf(merged.envelope_mm[cell]) || std::isinf(single.envelope_mm[cell]))
          continue;
        ++compared;
        const double apart = std::abs(double(merged.owner[cell]) - double(single.owner[cell]));
        ASSERT_LE(apart, 1.0);
        other += apart > 0.0;
      }
      EXPECT_GT(compared, 1000u);
      EXPECT_LE(double(other), kAtJoints * double(compared)) << "rising " << rise;
    }
}

// Derived: no point of the path moves by more than was allowed, so the ball's surface moves by no more along
// its normal.
TEST(FloorMerge, ACurveMovesByNoMoreThanWasAllowed) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  const auto at = [](int i) {
    const double x = -3.0 + 0.006 * i;
    return Vec3(x, 0.3 * std::sin(0.8 * x), 0.2 * std::sin(1.3 * x));
  };
  for (int i = 0; i < 1000; ++i)
    add(path, Curve::line(at(i), at(i + 1)), i > 0);
  const FloorChart exact = swept(path, 0.0);
  for (const double within : {1e-5, 5e-5, 5e-4}) {
    const double worst = largest_gentle_difference_mm(exact, swept(path, within), 1.5, -0.2);
    EXPECT_LE(worst, within * std::sqrt(2.0) + kPromised_mm);
    EXPECT_GE(worst, 0.2 * within) << "nothing was merged";
  }
}

TEST(FloorMerge, BitsDoNotDependOnTheThreadCount) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  for (int i = 0; i < 5000; ++i) // more than one portion
    add(path,
        Curve::line({-3.0 + 0.0012 * i, 0.1, 0.1 * std::sin(0.01 * i)},
                    {-3.0 + 0.0012 * (i + 1), 0.1, 0.1 * std::sin(0.01 * (i + 1))}),
        i > 0);
  const FloorChart one = swept(path, 5e-5, 1), two = swept(path, 5e-5, 2);
  EXPECT_EQ(one.envelope_mm, two.envelope_mm);
  EXPECT_EQ(one.owner, two.owner);
}

// More pieces than are turned into strokes at once. Chords begin elsewhere in the halves.
TEST(FloorMerge, AVeryLongPathLeavesTheSameAsItsHalves) {
  constexpr int kPieces = 150000;
  SweptPath whole = path_with(CutterProfile::ball(1.5)), first = whole, second = whole;
  for (int i = 0; i < kPieces; ++i) {
    const auto at = [](int k) {
      const double a = 0.0005 * k, r = 0.5 + 2.5 * k / kPieces;
      return Vec3(r * std::cos(a), r * std::sin(a), 0.1 * std::sin(0.003 * k));
    };
    add(whole, Curve::line(at(i), at(i + 1)), i > 0);
    add(i < kPieces / 2 ? first : second, Curve::line(at(i), at(i + 1)), i > 0 && i != kPieces / 2);
  }
  FloorChart in_halves = swept(first, kSameLine_mm);
  sweep(in_halves, second);
  EXPECT_LE(largest_gentle_difference_mm(swept(whole, kSameLine_mm), in_halves, 1.5, -0.1), kPromised_mm);
}

TEST(FloorMerge, OwnersOutOfOrderAreNotMixed) {
  SweptPath path = uneven_line(CutterProfile::ball(1.5), 0.2, false);
  for (std::size_t i = 0; i < path.pieces.size(); ++i)
    path.pieces[i].owner = static_cast<std::uint32_t>((i * 7919) % path.pieces.size());
  const FloorChart merged = swept(path, kSameLine_mm), single = swept(path, 0.0);
  EXPECT_EQ(merged.envelope_mm, single.envelope_mm);
  EXPECT_EQ(merged.owner, single.owner);
}

} // namespace
} // namespace asperity::floor_test
