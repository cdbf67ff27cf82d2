// Swept tooth marks against teeth followed one by one through time: phase, slow-downs, discs and bores,
// passes over each other; and against the smooth sweep: nothing below it, no gaps.
#include "texture/bench.h"
#include "texture/tooth_walk.h"

#include "asperity/base/units.h"
#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

/// Greatest difference to the walked teeth, as a share of the cusp's height: a peak may be a column's width
/// off (1 %), and a tooth's path is taken to have steady feed from one mark to the next.
constexpr double kShare = 0.02;

void expect_same(const Bench &bench, const WallChart &strip) {
  const std::vector<double> walked = bench::walked_wall_mm(bench, strip);
  const double cusp = bench::height_mm(strip.envelope_mm);
  EXPECT_GT(cusp, 1e-5); // marks there are
  for (std::size_t i = 0; i < strip.columns(); ++i)
    ASSERT_NEAR(static_cast<double>(strip.envelope_mm[i]), walked[i], kShare * cusp) << i;
}

Cutter runout_cutter() {
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.01;
  return cutter;
}

/// A disc or bore about the origin instead of the side, one arc round it.
Bench round_bench(bool inside, double wall_radius_mm, double sweep_rad, const Cutter &cutter) {
  Bench bench(cutter);
  WallFeature &wall = std::get<WallFeature>(bench.job.features[0]);
  wall.kind = OutlineKind::circle;
  wall.outline = Outline::circle({0, 0}, 2 * wall_radius_mm);
  wall.side = inside ? Side::inside : Side::outside;
  const double r = bench.swept.cutters[0].profile.radius_mm();
  const double axis_radius = inside ? wall_radius_mm - r : wall_radius_mm + r;
  bench.wait(0.00123);
  bench.arc({axis_radius, 0, -10}, {0, 0}, sweep_rad, {60, 30000});
  return bench;
}

WallChart round_strip(const Bench &bench, double s_mm, double length_mm, int threads = 1) {
  std::vector<double> columns;
  for (double s = s_mm; s < s_mm + length_mm; s += 0.0005)
    columns.push_back(s);
  const WallFeature &wall = bench.wall();
  WallChart strip = make_wall_chart(wall.outline, wall.side == Side::inside, columns, {-5.0});
  EXPECT_TRUE(sweep_wall_with_marks(strip, bench.source(), threads, Progress()));
  return strip;
}

} // namespace

TEST(WallWalk, StraightPassHasItsMarksWhereTheTeethWere) {
  for (const bool climb : {true, false})
    for (const Cutter &cutter : {runout_cutter(), bench::plain_cutter()}) {
      Bench bench(cutter);
      bench.wait(0.01234); // the spindle's phase runs on from time 0
      const Vec3 a(climb ? 3 : -3, bench.beside_y_mm(), -10), b(climb ? -3 : 3, bench.beside_y_mm(), -10);
      bench.feed(a, b, {50, 30000});
      expect_same(bench, bench.side_strip(0, 0.6, 0.0005, -5));
    }
}

TEST(WallWalk, MarksFollowASlowDown) {
  Bench bench(runout_cutter());
  const double y = bench.beside_y_mm();
  bench.change({5, y, -10}, {-5, y, -10}, 100, 10, 30000);
  expect_same(bench, bench.side_strip(0, 2, 0.0005, -5));
  // The pitch: feed per revolution at the local speed, v(d) = sqrt(v0^2 - 2 a d).
  const WallChart strip = bench.side_strip(0, 2, 0.0005, -5);
  std::vector<double> peaks;
  for (std::size_t i = 1; i + 1 < strip.columns(); ++i)
    if (strip.envelope_mm[i] > strip.envelope_mm[i - 1] && strip.envelope_mm[i] >= strip.envelope_mm[i + 1])
      peaks.push_back(strip.s_mm[i] - bench.s_at_mm(0)); // along x
  ASSERT_GT(peaks.size(), 8u);
  for (std::size_t k = 1; k < peaks.size(); ++k) {
    const double gone_mm = 5 - (peaks[k] + peaks[k - 1]) / 2;
    const double v = std::sqrt(100 * 100 - (100 * 100 - 10 * 10) * gone_mm / 10);
    EXPECT_NEAR(peaks[k] - peaks[k - 1], v / 500, 0.002) << gone_mm; // two columns and the change over a mark
  }
}

TEST(WallWalk, DiscAndBoreKeepTheTeethsPhase) {
  for (const bool inside : {false, true})
    for (const double sweep : {1.0, -1.0}) {
      const Bench bench = round_bench(inside, inside ? 12 : 9, sweep, runout_cutter());
      const double round_mm = bench.wall().outline.length_mm(), radius = round_mm / (2 * kPi);
      const double middle = sweep > 0 ? 0.5 * radius : round_mm - 0.5 * radius;
      expect_same(bench, round_strip(bench, middle - 0.3, 0.6));
    }
}

TEST(WallWalk, TwoPassesLeaveTheLowerOfBoth) {
  Bench bench(runout_cutter());
  const double y = bench.beside_y_mm();
  bench.feed({3, y, -10}, {-3, y, -10}, {50, 30000})
      .wait(0.0007)
      .feed({3, y, -10}, {-3, y, -10}, {65, 30000});
  expect_same(bench, bench.side_strip(0, 0.8, 0.0005, -5));
}

TEST(WallWalk, ThereAndBackInOneRunAreTwoPasses) {
  Bench bench(runout_cutter());
  const double y = bench.beside_y_mm();
  bench.feed({3, y, -10}, {-3, y, -10}, {50, 30000}).feed({-3, y, -10}, {3, y, -10}, {50, 30000});
  EXPECT_TRUE(bench.swept.pieces[1].joins_previous);
  expect_same(bench, bench.side_strip(0, 0.8, 0.0005, -5));
}

TEST(WallWalk, TwoLapsInOneRunAreTwoPasses) {
  // A bore of 5 mm: the second lap of one joined run passes the same place while the first is still near.
  const Bench bench = round_bench(true, 5, 3.9 * kPi, runout_cutter());
  expect_same(bench, round_strip(bench, 5.0, 0.6));
}
