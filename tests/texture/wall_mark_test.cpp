// Tooth marks on walls, swept from a timed path: heights against the closed forms of side milling, places
// against the turning of the spindle.
#include "texture/bench.h"

#include "asperity/base/units.h"
#include "asperity/surface/kinematic.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

/// Heights of single cusps: the sampled peak is missed by up to half a column of 200 a mark (1 % of the
/// height); the feed is rounded to 0.004 %, residuals are floats good to 0.001 nm near zero.
constexpr double kPeakShare = 0.011;
/// Ra averages over the whole mark and does not miss a peak.
constexpr double kRaShare = 1e-3;
constexpr double kStrip_mm = 2.0, kAtZ_mm = -5.0;

Bench one_pass(Cutter cutter, Feed how, bool climb) {
  Bench bench(cutter);
  const double y = bench.beside_y_mm();
  const Vec3 left(-25, y, -10), right(25, y, -10);
  // A clockwise spindle climbs with the wall on its right: along -x here.
  climb ? bench.feed(right, left, how) : bench.feed(left, right, how);
  return bench;
}

std::vector<float> marks(const Bench &bench, double pitch_mm) {
  return bench.side_strip(0, 20 * pitch_mm, pitch_mm / 200, kAtZ_mm).envelope_mm;
}

Feed feed_per_rev(double mm) { return {mm * 500, 30000}; }

} // namespace

TEST(WallMarks, UpAndDownMillingMatchTheTrochoid) {
  // R 3, 2 flutes, fz 0.05: 0.103072 um up, 0.105283 um down; fz 0.5: 9.407302 and 11.640795. [exact trochoid
  // of side milling, solved for the crossing of neighbouring tooth paths]
  struct Row {
    double fz_mm;
    bool climb;
    double height_um;
  };
  for (const Row &row : {Row{0.05, false, 0.103072}, Row{0.05, true, 0.105283}, Row{0.5, false, 9.407302},
                         Row{0.5, true, 11.640795}}) {
    const Bench bench = one_pass(bench::plain_cutter(), feed_per_rev(2 * row.fz_mm), row.climb);
    const auto heights = marks(bench, row.fz_mm);
    EXPECT_NEAR(um_from_mm(bench::height_mm(heights)), row.height_um, kPeakShare * row.height_um);
    EXPECT_NEAR(um_from_mm(bench::ra_mm(heights)), um_from_mm(cusp_ra_mm(mm_from_um(row.height_um))),
                (row.fz_mm > 0.1 ? 3e-3 : kRaShare) * row.height_um *
                    0.2566) // arcs, not parabolas, at 0.5 mm
        << row.fz_mm << row.climb;
  }
}

TEST(WallMarks, OneLongToothMarksAtFeedPerRevolution) {
  // Eccentricity 5 um, R 3, fz 0.05, n = 2, 3, 4: Ra 0.106917, 0.240563, 0.427667 um by the circle; the
  // trochoid's path radius changes that by R^2 / (R +- f / 2 pi)^2. [derived]
  for (const int flutes : {2, 3, 4}) {
    const double circle_ra_um = 0.106917 * flutes * flutes / 4.0;
    Cutter cutter = bench::plain_cutter();
    cutter.flutes = flutes;
    cutter.runout_mm = 0.010;
    const double rev_mm = 0.05 * flutes;
    for (const bool climb : {true, false}) {
      const Bench bench = one_pass(cutter, feed_per_rev(rev_mm), climb);
      const double factor = std::pow(3 / (3 + (climb ? -1 : 1) * rev_mm / (2 * kPi)), 2);
      const double expected = circle_ra_um * factor;
      EXPECT_NEAR(um_from_mm(bench::ra_mm(marks(bench, rev_mm))), expected, kRaShare * expected) << flutes;
    }
  }
}
