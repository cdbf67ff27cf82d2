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

LargeArray<float> marks(const Bench &bench, double pitch_mm) {
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

TEST(WallMarks, DoublingTheFeedMakesCuspsFourTimesAsHigh) {
  // f^2 / 8R, up to the trochoid's share: (R - f / 2 pi)^2 shrinks by 1.1 % from 0.1 to 0.2 mm a revolution.
  // [derived]
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.010;
  const double single = bench::ra_mm(marks(one_pass(cutter, feed_per_rev(0.1), true), 0.1));
  const double twice = bench::ra_mm(marks(one_pass(cutter, feed_per_rev(0.2), true), 0.2));
  const double trochoid = std::pow((3 - 0.1 / (2 * kPi)) / (3 - 0.2 / (2 * kPi)), 2);
  EXPECT_NEAR(twice / single, 4 * trochoid, 4 * 2 * kRaShare);
}

TEST(WallMarks, WithoutRunoutNTeethLeaveOneNthSquared) {
  // Same feed per revolution, one tooth or n equal ones: h / n^2. [derived: pitch f / n]
  for (const int flutes : {1, 2, 3, 4}) {
    Cutter cutter = bench::plain_cutter();
    cutter.flutes = flutes;
    const double ra = bench::ra_mm(marks(one_pass(cutter, feed_per_rev(0.24), true), 0.24));
    const double one = cusp_ra_mm(parabola_cusp_mm(std::pow(3 - 0.24 / (2 * kPi), 2) / 3, 0.24));
    EXPECT_NEAR(ra * flutes * flutes, one, (flutes == 1 ? 2 : 1) * kRaShare * one)
        << flutes; // arc against parabola
  }
}

TEST(WallMarks, RunoutEffectSwitchedOffGivesEqualTeeth) {
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.02;
  Bench with(cutter), without(cutter);
  without.job.effects.runout = false;
  without.swept.cutters[0].profile = cutter.profile();
  for (Bench *bench : {&with, &without})
    bench->feed({25, bench->beside_y_mm(), -10}, {-25, bench->beside_y_mm(), -10}, feed_per_rev(0.1));
  EXPECT_NEAR(bench::ra_mm(marks(with, 0.1)), 4 * bench::ra_mm(marks(without, 0.1)),
              kRaShare * 4 * bench::ra_mm(marks(without, 0.1)));
}

TEST(WallMarks, HelixMovesMarksAlongTheFeedWithHeight) {
  // The edge dz higher passes dz tan(helix) / (2 pi R) of a turn later, and so that share of the feed farther
  // on. [derived: unrolled cylinder]
  Cutter cutter = bench::plain_cutter();
  cutter.helix_deg = 30;
  cutter.runout_mm = 0.01;
  const Feed how = feed_per_rev(0.2);
  for (const bool climb : {true, false}) {
    const Bench bench = one_pass(cutter, how, climb);
    const double spacing = 0.001, dz = 4;
    const auto low = bench.side_strip(0, kStrip_mm, spacing, -7).envelope_mm;
    const auto high = bench.side_strip(0, kStrip_mm, spacing, -7 + dz).envelope_mm;
    // The shift in columns, towards +x, at which both agree best; one period is 200 columns.
    std::size_t best = 0;
    double least = HUGE_VAL;
    for (std::size_t shift = 0; shift < 200; ++shift) {
      double sum = 0;
      for (std::size_t i = 200; i < low.size(); ++i)
        sum += std::pow(static_cast<double>(high[i] - low[i - shift]), 2);
      if (sum < least) {
        least = sum;
        best = shift;
      }
    }
    const double lag_mm = 0.2 * dz * std::tan(rad_from_deg(30)) / (2 * kPi * 3);
    const double expected = climb ? 0.2 - lag_mm : lag_mm; // the feed runs to -x when climbing
    EXPECT_NEAR(static_cast<double>(best) * spacing, expected, 1.5 * spacing) << climb;
  }
}

TEST(WallMarks, NoFeedOrNoTurningLeavesTheSmoothSweep) {
  Bench creeping(bench::plain_cutter());
  creeping.feed({25, creeping.beside_y_mm(), -10}, {-25, creeping.beside_y_mm(), -10}, {0.05, 30000});
  EXPECT_LT(bench::height_mm(creeping.side_strip(0, 1, 0.005, kAtZ_mm).envelope_mm), 1e-9);
  Bench still = one_pass(bench::plain_cutter(), feed_per_rev(0.1), true);
  still.path.pieces[0].turn = SpindleTurn::off;
  EXPECT_LT(bench::height_mm(still.side_strip(0, 1, 0.005, kAtZ_mm).envelope_mm), 1e-9);
}

TEST(WallMarks, PitchIsTheFeedARevolutionUnlessTeethAreEqual) {
  Cutter cutter = bench::plain_cutter();
  const auto pitch = [](const Cutter &c, double off_mm) {
    Bench bench(c);
    bench.feed({-25, bench.beside_y_mm() - off_mm, -10}, {25, bench.beside_y_mm() - off_mm, -10},
               {50, 30000});
    return mark_pitch_mm(std::get<WallChart>(bench.wall_chart()), bench.source());
  };
  constexpr double kRounded = 1e-4; // feeds are kept to 0.004 %
  EXPECT_NEAR(pitch(cutter, 0.0), 0.05, 0.05 * kRounded);
  cutter.runout_mm = 0.02;
  EXPECT_NEAR(pitch(cutter, 0.0), 0.1, 0.1 * kRounded);
  EXPECT_EQ(pitch(cutter, 0.5), 0); // a roughing pass half a millimetre off leaves nothing on the wall
}
