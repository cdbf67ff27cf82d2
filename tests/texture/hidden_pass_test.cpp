// Roughing laps that stay off what a finishing lap leaves are not swept for their marks, and that changes
// nothing.
#include "hidden_pass.h"

#include "texture/bench.h"

#include "asperity/base/units.h"
#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

constexpr Feed kFeed{60, 30000};
constexpr double kRadius_mm = 7.0, kAllowance_mm = 0.4, kLittle_mm = 0.1;
const Vec2 kMiddle(1, 2);

Bench round_wall(bool inside) {
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.01;
  Bench bench(cutter);
  WallFeature &wall = std::get<WallFeature>(bench.job.features[0]);
  wall.outline = Outline::circle(kMiddle, 2.0 * kRadius_mm);
  wall.side = inside ? Side::inside : Side::outside;
  return bench;
}

/// Once round, so far off the finished wall.
void lap(Bench &bench, double off_mm, double z_mm) {
  const bool inside = bench.wall().side == Side::inside;
  const double away = bench.swept.cutters[0].profile.radius_mm() + off_mm;
  const double radius = inside ? kRadius_mm - away : kRadius_mm + away;
  bench.arc({kMiddle.x + radius, kMiddle.y, z_mm}, kMiddle, (inside ? 2.0 : -2.0) * kPi, kFeed);
}

std::vector<PassPart> parts_of(const Bench &bench) {
  const Region everywhere{Vec2(-1e3), Vec2(1e3), -1e3, 1e3};
  const LargeArray<PassPart> parts = pass_parts(bench.path, bench.swept, everywhere, 1e3);
  return {parts.begin(), parts.end()};
}

bool stays_above(const Bench &bench, double height_mm) {
  const std::vector<PassPart> parts = parts_of(bench);
  Pass pass;
  for (const PassPart &part : parts)
    pass.parts.push_back(&part);
  return asperity::stays_above(pass, bench.swept.cutters, bench.wall().outline,
                               bench.wall().side == Side::inside, height_mm);
}

} // namespace

TEST(HiddenPass, ALapStaysAboveEverythingBelowItsAllowance) {
  for (const bool inside : {false, true}) {
    Bench bench = round_wall(inside);
    lap(bench, kAllowance_mm, -6);
    EXPECT_TRUE(stays_above(bench, kAllowance_mm - kLittle_mm)) << inside;
    EXPECT_FALSE(stays_above(bench, kAllowance_mm + kLittle_mm)) << inside;
    EXPECT_TRUE(stays_above(bench, -1.0)) << "a wall cut too deep hides it all the more";
  }
}

TEST(HiddenPass, BendingTowardsTheWallCounts) {
  Bench bench = round_wall(false);
  lap(bench, kAllowance_mm, -6);
  AxisOffset bent;
  for (Vec2 &node : bent.left)
    node = {0.0, 0.1};
  BentPiece piece = bench.swept.bent(bench.swept.pieces.back());
  piece.end = bent;
  bench.swept.add(piece);
  bench.path.pieces.push_back(bench.path.pieces.back());
  bench.swept.pieces.back().owner = static_cast<std::uint32_t>(bench.path.pieces.size() - 1);
  EXPECT_TRUE(stays_above(bench, kAllowance_mm - 0.1 - kLittle_mm));
  EXPECT_FALSE(stays_above(bench, kAllowance_mm - 0.1 + kLittle_mm));
}

TEST(HiddenPass, NoPassThatIsSaidToStayAboveCutsLower) {
  // Straight feeds and arcs thrown about a rounded plate, against their sweep.
  std::mt19937 random(20);
  std::uniform_real_distribution<double> place(-14.0, 14.0), sweep(0.3, 1.8), height(0.0, 1.0);
  int above = 0;
  for (int trial = 0; trial < 300; ++trial) {
    Bench bench(bench::plain_cutter());
    WallFeature &wall = std::get<WallFeature>(bench.job.features[0]);
    wall.outline = Outline::rounded_rectangle({0, 0}, 16, 10, 2);
    const Vec3 begin(place(random), place(random), -6), other(place(random), place(random), -6);
    if (trial % 2 == 0)
      bench.feed(begin, other, kFeed);
    else
      bench.arc(begin, plan(other), sweep(random), kFeed);
    const double limit_mm = height(random);
    if (!stays_above(bench, limit_mm))
      continue;
    ++above;
    WallChart chart = make_wall_chart(wall.outline, false, -6.0, -5.0, 0.1);
    ASSERT_TRUE(sweep_wall(chart, bench.swept, 1, Progress()));
    for (const float e : chart.envelope_mm)
      ASSERT_GT(e, limit_mm) << trial;
  }
  EXPECT_GT(above, 60);
}

TEST(HiddenPass, RoughingLapsBeforeAFinishingLapChangeNoBit) {
  for (const bool inside : {false, true}) {
    Bench alone = round_wall(inside), all = round_wall(inside);
    for (const double z : {-4.0, -7.0, -10.0})
      lap(all, kAllowance_mm, z);
    const auto roughing = static_cast<std::uint32_t>(all.path.pieces.size());
    // The finishing lap on its own comes at the same time, with the spindle turned the same way.
    for (const double z : {90.0, 87.0, 84.0})
      lap(alone, kAllowance_mm, z);
    lap(all, 0.0, -10);
    lap(alone, 0.0, -10);
    WallChart a = make_wall_chart(all.wall().outline, inside, -9.5, -0.5, 0.05), b = a;
    ASSERT_TRUE(sweep_wall_with_marks(a, all.source(), 1, Progress()));
    ASSERT_TRUE(sweep_wall_with_marks(b, alone.source(), 1, Progress()));
    EXPECT_EQ(a.envelope_mm, b.envelope_mm);
    EXPECT_EQ(a.owner, b.owner);
    EXPECT_EQ(a.owner.front(), roughing);
  }
}
