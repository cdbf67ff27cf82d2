// Marks on whole walls: never below the smooth sweep, never higher above it than a cusp, no gaps where runs
// are divided, the same bits for any number of threads.
#include "texture/bench.h"

#include "asperity/base/units.h"
#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

constexpr Feed kFeed{60, 30000};
/// Floats near zero and the sweep's own rounding.
constexpr double kRounding_mm = 1e-8;

enum class Shape { disc, bore, rectangle };

/// Two laps about a wall, sinking, in one joined run.
Bench laps(Shape shape, CutterKind kind) {
  Cutter cutter = bench::plain_cutter(kind);
  cutter.helix_deg = 30;
  cutter.runout_mm = 0.01;
  cutter.corner_radius_mm = 0.5;
  Bench bench(cutter);
  const double r = bench.swept.cutters[0].profile.radius_mm();
  WallFeature &wall = std::get<WallFeature>(bench.job.features[0]);
  if (shape != Shape::rectangle) {
    const bool bore = shape == Shape::bore;
    wall.outline = Outline::circle({1, 2}, 14);
    wall.side = bore ? Side::inside : Side::outside;
    bench.arc({1 + (bore ? 7 - r : 7 + r), 2, -6}, {1, 2}, -4.2 * kPi, kFeed);
    return bench;
  }
  wall.outline = Outline::rounded_rectangle({0, 0}, 16, 10, 2);
  const double x = 6, y = 3, a = 2 + r; // corner centres, axis about them
  for (const double z : {-4.0, -8.0})
    bench.feed({-x, y + a, z}, {x, y + a, z}, kFeed)
        .arc({x, y + a, z}, {x, y}, -kPi / 2, kFeed)
        .feed({x + a, y, z}, {x + a, -y, z}, kFeed)
        .arc({x + a, -y, z}, {x, -y}, -kPi / 2, kFeed)
        .feed({x, -y - a, z}, {-x, -y - a, z}, kFeed)
        .arc({-x, -y - a, z}, {-x, -y}, -kPi / 2, kFeed)
        .feed({-x - a, -y, z}, {-x - a, y, z}, kFeed)
        .arc({-x - a, y, z}, {-x, y}, -kPi / 2, kFeed);
  return bench;
}

WallChart whole_wall(const Bench &bench) {
  return make_wall_chart(bench.wall().outline, bench.wall().side == Side::inside, -9.5, -0.5, 0.05);
}

} // namespace

TEST(WallCover, MarksLieBetweenTheSmoothSweepAndACuspAboveIt) {
  for (const Shape shape : {Shape::disc, Shape::bore, Shape::rectangle})
    for (const CutterKind kind : {CutterKind::flat, CutterKind::ball, CutterKind::corner_radius}) {
      const Bench bench = laps(shape, kind);
      WallChart smooth = whole_wall(bench), marked = whole_wall(bench);
      ASSERT_TRUE(sweep_wall(smooth, bench.swept, 1, Progress()));
      ASSERT_TRUE(sweep_wall_with_marks(marked, bench.source(), 1, Progress()));
      std::size_t cut = 0;
      double highest = 0;
      for (std::size_t cell = 0; cell < smooth.envelope_mm.size(); ++cell) {
        const double below = static_cast<double>(smooth.envelope_mm[cell]),
                     above = static_cast<double>(marked.envelope_mm[cell]);
        ASSERT_EQ(std::isfinite(above), std::isfinite(below)) << cell;
        if (!std::isfinite(below))
          continue;
        ++cut;
        ASSERT_GE(above, below - kRounding_mm - 1e-7 * below) << cell; // floats are coarser on high cells
        const double h = bench.swept.cutters[0].profile.radius_mm();
        const double z = marked.z_mm[cell / marked.columns()];
        if (z > -4 + h) // flanks of rounded tips have smaller circles and higher cusps
          highest = std::max(highest, above - below);
      }
      EXPECT_GT(cut, smooth.envelope_mm.size() / 3);
      // f^2 / 8R at a feed per revolution of 0.12 mm along the path; less along a disc, more along a bore of
      // 7 mm where (7 / 4)^2 (1 / 3 - 1 / 7) 3 = 1.75 times; a corner's path counts as a disc of 2 mm.
      const double cusp = 0.12 * 0.12 / 24 * (shape == Shape::bore ? 1.75 : 1.0);
      EXPECT_LT(highest,
                1.03 * cusp); // trochoid at this feed: 2 f / 2 pi R = 1.3 %, and the orbit as much again
      EXPECT_GT(highest, 0.5 * cusp);
    }
}

TEST(WallCover, ResultIsTheSameForAnyNumberOfThreads) {
  const Bench bench = laps(Shape::bore, CutterKind::flat);
  WallChart one = whole_wall(bench), three = whole_wall(bench);
  ASSERT_TRUE(sweep_wall_with_marks(one, bench.source(), 1, Progress()));
  ASSERT_TRUE(sweep_wall_with_marks(three, bench.source(), 3, Progress()));
  EXPECT_EQ(one.envelope_mm, three.envelope_mm);
  EXPECT_EQ(one.owner, three.owner);
}

TEST(WallCover, DividingAnArcOfThePathChangesNothing) {
  // The same lap as one arc and as 40: each place has the same axis place, time and feed.
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.01;
  Bench whole(cutter), parts(cutter);
  const double radius = 7 + whole.swept.cutters[0].profile.radius_mm();
  for (Bench *bench : {&whole, &parts})
    std::get<WallFeature>(bench->job.features[0]).outline = Outline::circle({0, 0}, 14);
  whole.arc({radius, 0, -10}, {0, 0}, -2 * kPi, kFeed);
  Vec3 at(radius, 0, -10);
  for (int i = 0; i < 40; ++i) {
    parts.arc(at, {0, 0}, -2 * kPi / 40, kFeed);
    at = parts.path.pieces.back().curve.point(1);
  }
  WallChart a = whole_wall(whole), b = whole_wall(parts);
  ASSERT_TRUE(sweep_wall_with_marks(a, whole.source(), 1, Progress()));
  ASSERT_TRUE(sweep_wall_with_marks(b, parts.source(), 1, Progress()));
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell)
    ASSERT_NEAR(a.envelope_mm[cell], b.envelope_mm[cell], 2e-8) << cell; // time adds up over 40 pieces
}

TEST(WallCover, CancelledSweepSaysSo) {
  const Bench bench = laps(Shape::disc, CutterKind::flat);
  WallChart strip = whole_wall(bench);
  Progress progress;
  progress.cancel();
  EXPECT_FALSE(sweep_wall_with_marks(strip, bench.source(), 1, progress));
}
