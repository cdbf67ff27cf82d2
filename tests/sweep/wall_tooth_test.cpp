// Tooth passes laid on a wall at once against every pass laid by itself, and against the marks' closed form.
#include "asperity/base/units.h"
#include "asperity/surface/tooth_marks.h"
#include "asperity/sweep/tooth_passes.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::wall_test {
namespace {

/// Floats hold hollows of a micrometre to 0.1 pm; the turns within a block cost less than a hundredth of a
/// nm.
constexpr double kExact_mm = 1e-8;
constexpr double kTurnsPerMm = 15.0;

WallChart strip(double length_mm, double spacing_mm) {
  const Outline outline = Outline::rounded_rectangle({0, 0}, 60.0, 20.0, 2.0);
  std::vector<double> s;
  for (double at = 5.0; at < 5.0 + length_mm; at += spacing_mm)
    s.push_back(at);
  return make_wall_chart(outline, false, s, {0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 8.5, 9.5});
}

/// Turns at a place where feed swings by a third over 3 mm.
double turns_at(double s, double turns_per_mm, double swing) {
  return turns_per_mm * (s + swing * std::sin(2.0 * s) / 2.0);
}

/// Where a given turn is met, by halving.
double place_of(double turns, double turns_per_mm, double swing) {
  double low = -1e3, high = 1e3;
  for (int i = 0; i < 200; ++i) {
    const double middle = 0.5 * (low + high);
    (turns_at(middle, turns_per_mm, swing) < turns ? low : high) = middle;
  }
  return 0.5 * (low + high);
}

ToothLap lap_of(const WallChart &chart, double phase, double swing) {
  ToothLap lap;
  lap.low_mm = 2.0 + phase;
  lap.high_mm = 100.0;
  lap.turns_per_mm_up = 0.0306;
  lap.base_mm = 0.002 * phase;
  lap.lag_mm = {0.0, 0.00005, 0.003};
  lap.bow_per_mm = 0.13;
  lap.bow4_per_mm3 = 0.01;
  for (const double s : chart.s_mm)
    lap.turns.push_back(turns_at(s, kTurnsPerMm, swing) + phase);
  return lap;
}

/// Every pass of every tooth near the ray.
double lowest_mm(const ToothLap &lap, double phase, double swing, double s, double z) {
  double least = std::numeric_limits<double>::infinity();
  const double here = turns_at(s, kTurnsPerMm, swing) + phase - lap.turns_per_mm_up * z;
  for (std::size_t tooth = 0; tooth < lap.lag_mm.size(); ++tooth)
    for (double turn = std::floor(here) - 3.0; turn < here + 3.0; turn += 1.0) {
      const double share = double(tooth) / double(lap.lag_mm.size());
      const double d = s - place_of(turn + share - phase + lap.turns_per_mm_up * z, kTurnsPerMm, swing),
                   x = d * d;
      least = std::min(least, lap.base_mm + lap.lag_mm[tooth] + x * (lap.bow_per_mm + lap.bow4_per_mm3 * x));
    }
  return least;
}

void expect_single_passes(double swing, double tolerance_mm) {
  WallChart chart = strip(15.0, 0.006); // more than one block of columns
  const double phases[] = {0.0, 0.31, 0.77};
  std::vector<ToothLap> laps;
  for (const double phase : phases)
    laps.push_back(lap_of(chart, phase, swing));
  ASSERT_TRUE(lay_tooth_passes(chart, laps, 2, Progress{}));
  for (std::size_t row = 0; row < chart.rows(); ++row)
    for (std::size_t i = 0; i < chart.columns(); i += 37) {
      double least = std::numeric_limits<double>::infinity();
      for (std::size_t k = 0; k < laps.size(); ++k)
        if (chart.z_mm[row] >= laps[k].low_mm)
          least = std::min(least, lowest_mm(laps[k], phases[k], swing, chart.s_mm[i], chart.z_mm[row]));
      const float found = chart.envelope_mm[chart.at(i, row)];
      if (std::isinf(least))
        ASSERT_TRUE(std::isinf(found));
      else
        ASSERT_NEAR(double(found), least, tolerance_mm) << "column " << i << " row " << row;
    }
}

TEST(ToothPasses, SteadyFeedMatchesEveryPassByItself) { expect_single_passes(0.0, kExact_mm); }

// The parabola leaves out the third derivative of place over turns, (3 u''^2 - u' u''') / u'^5, below 0.002
// mm here. The widest gap between teeth that touch is 2/3 of a turn of 0.1 mm; with 0.05 um of lag their
// hollows meet 0.36 turns aside: 0.002 x 0.36^3 / 6 mm times the slope there, 2 x 0.13 x 0.036, is 1.5e-7 mm.
TEST(ToothPasses, VaryingFeedMatchesEveryPassByItself) { expect_single_passes(1.0 / 3.0, 1.5e-7); }

// The closed form of one pass's marks, derived by other means in the surface room.
TEST(ToothPasses, TeethWithRunoutMatchTheMarksClosedForm) {
  const ToothPass pass{
      .radius_mm = 3.0, .flutes = 2, .feed_per_tooth_mm = 0.05, .eccentricity_mm = 0.00002, .helix_rad = 0.5};
  const ToothMarks marks(pass);
  WallChart chart = strip(2.0, 0.002);
  ToothLap lap;
  lap.high_mm = 100.0;
  lap.turns_per_mm_up = std::tan(pass.helix_rad) / (2.0 * kPi * pass.radius_mm);
  lap.lag_mm = {0.0, 2.0 * pass.eccentricity_mm};
  // y = R - R cos q where x = q (R - a): to the fourth order R q^2/2 - R q^4/24 with q = x/p + R x^3/(6 p^4).
  const double r = pass.radius_mm, p = r - 2.0 * pass.feed_per_tooth_mm / (2.0 * kPi);
  lap.bow_per_mm = r / (2.0 * p * p);
  lap.bow4_per_mm3 = r * r / (6.0 * std::pow(p, 5)) - r / (24.0 * std::pow(p, 4));
  for (const double s : chart.s_mm)
    lap.turns.push_back(s / (2.0 * pass.feed_per_tooth_mm));
  ASSERT_TRUE(lay_tooth_passes(chart, std::span(&lap, 1), 1, Progress{}));
  for (std::size_t row = 0; row < chart.rows(); ++row)
    for (std::size_t i = 0; i < chart.columns(); ++i)
      ASSERT_NEAR(double(chart.envelope_mm[chart.at(i, row)]),
                  marks.height_mm(chart.s_mm[i], chart.z_mm[row]), kExact_mm);
}

TEST(ToothPasses, BitsDoNotDependOnTheThreadCount) {
  const WallChart fresh = strip(15.0, 0.006);
  const ToothLap lap = lap_of(fresh, 0.2, 0.2);
  WallChart one = fresh, two = fresh;
  lay_tooth_passes(one, std::span(&lap, 1), 1, Progress{});
  lay_tooth_passes(two, std::span(&lap, 1), 2, Progress{});
  EXPECT_EQ(one.envelope_mm, two.envelope_mm);
}

TEST(ToothPasses, PassesOnlyLower) {
  WallChart chart = strip(2.0, 0.006);
  std::fill(chart.envelope_mm.begin(), chart.envelope_mm.end(), -1.0f);
  const ToothLap lap = lap_of(chart, 0.2, 0.0);
  lay_tooth_passes(chart, std::span(&lap, 1), 1, Progress{});
  for (const float e : chart.envelope_mm)
    ASSERT_EQ(e, -1.0f);
}

} // namespace
} // namespace asperity::wall_test
