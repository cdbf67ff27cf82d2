// Diameter, roundness and taper of round walls against profiles whose least-squares circle is known.
#include "../../src/finding/least_squares_circle.h"
#include "rim_scene.h"

#include "asperity/finding/measure.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// Envelopes are floats: half a unit in the last place of 0.1 mm is 4 nm.
constexpr double kFloat_mm = 1e-8;
/// Extremes of a wave are met to half a column: 0.1 mm of 195 mm, so (2 pi n 0.05/195)^2/2 of the amplitude.
constexpr double kSampled_mm = 1e-6;

double turn(double s_mm) { return s_mm / (0.5 * kRimDiameter_mm); }

SizeMeasure diameter_of(const WallFeature &wall, const std::function<double(double, double)> &e) {
  return measure_wall(wall, drawn_chart(wall, 0.1, e)).at(0);
}

TEST(CircleSize, StockLeftOutsideAddsTwiceToTheDiameter) {
  const SizeMeasure size = diameter_of(rim_wall(), [](double, double) { return 0.010; });
  EXPECT_EQ(size.what, "diameter");
  EXPECT_NEAR(size.mean_mm, 62.020, kFloat_mm);
  EXPECT_NEAR(size.smallest_mm, 62.020, kFloat_mm);
  EXPECT_NEAR(size.largest_mm, 62.020, kFloat_mm);
  EXPECT_NEAR(size.roundness_mm, 0.0, kFloat_mm);
  EXPECT_NEAR(size.taper_mm, 0.0, kFloat_mm);
}

TEST(CircleSize, StockLeftInABoreTakesTwiceFromTheDiameter) {
  WallFeature bore = rim_wall();
  bore.side = Side::inside;
  EXPECT_NEAR(diameter_of(bore, [](double, double) { return 0.010; }).mean_mm, 61.980, kFloat_mm);
}

// Derived: the least-squares circle of r + a cos n t (n >= 2) is r itself, so roundness is 2a and the mean
// stays.
TEST(CircleSize, LobesGiveTwiceTheirAmplitudeAsRoundness) {
  for (const int lobes : {2, 3, 5}) {
    const SizeMeasure size =
        diameter_of(rim_wall(), [&](double s, double) { return 0.015 * std::cos(lobes * turn(s)); });
    EXPECT_NEAR(size.roundness_mm, 0.030, kSampled_mm) << lobes;
    EXPECT_NEAR(size.mean_mm, 62.0, kSampled_mm) << lobes;
  }
}

// Derived: a circle moved by d has e = d cos(t - t0) to first order: still round.
TEST(CircleSize, AMovedCircleIsStillRound) {
  const SizeMeasure size =
      diameter_of(rim_wall(), [](double s, double) { return 0.05 * std::cos(turn(s) - 1.0); });
  EXPECT_NEAR(size.roundness_mm, 0.0, 4 * kFloat_mm);
  EXPECT_NEAR(size.mean_mm, 62.0, kFloat_mm);
}

TEST(CircleSize, RoundnessIsThatOfTheWorstHeight) {
  const SizeMeasure size = diameter_of(
      rim_wall(), [](double s, double z) { return (z > 7 ? 0.004 : 0.001) * std::cos(2 * turn(s)); });
  EXPECT_NEAR(size.roundness_mm, 0.008, kSampled_mm);
}

// Derived: e = k (14 - z): the lowest and highest tenths of 140 rows stand 12.6 mm apart in their means.
TEST(CircleSize, TaperIsBottomMinusTop) {
  const SizeMeasure size = diameter_of(rim_wall(), [](double, double z) { return 0.001 * (14.0 - z); });
  EXPECT_NEAR(size.taper_mm, 2 * 0.001 * 12.6, 1e-7);
  EXPECT_NEAR(size.mean_mm, 62.0 + 2 * 0.001 * 7.0, 1e-7);
  EXPECT_NEAR(size.largest_mm - size.smallest_mm, 2 * 0.001 * 13.9, 1e-7);
}

TEST(CircleSize, ALipAtTheBaseIsNotMeasured) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const SizeMeasure unreached =
      diameter_of(rim_wall(), [&](double, double z) { return z < 0.6 ? nan : 0.002; });
  EXPECT_NEAR(unreached.largest_mm, 62.004, kFloat_mm);
  const SizeMeasure fillet = diameter_of(rim_wall(), [](double, double z) { return z < 0.6 ? 0.3 : 0.002; });
  EXPECT_NEAR(fillet.largest_mm, 62.004, kFloat_mm);
}

TEST(CircleSize, HeightsCutLessThanNineTenthsRoundAreLeftOut) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const SizeMeasure size = diameter_of(rim_wall(), [&](double s, double z) {
    return z > 10 && s < 25 ? nan : z > 10 ? 0.02 : 0.0;
  });
  EXPECT_NEAR(size.largest_mm, 62.0, kFloat_mm) << "25 of 195 mm missing above z 10";
}

TEST(CircleSize, TheVerdictAsksForBothExtremes) {
  WallFeature wall = rim_wall();
  wall.size[0] = SizeWanted{62.0, 61.95, 62.05};
  const auto leaning = [](double by) { return [by](double, double z) { return by * (z - 7.0) / 7.0; }; };
  EXPECT_EQ(diameter_of(wall, leaning(0.02)).verdict, Verdict::met);
  EXPECT_NE(diameter_of(wall, leaning(0.03)).verdict, Verdict::met) << "the mean is right, the ends are not";
  EXPECT_EQ(diameter_of(wall, [](double, double) { return 0.03; }).verdict, Verdict::too_large);
  EXPECT_EQ(diameter_of(wall, [](double, double) { return -0.03; }).verdict, Verdict::too_small);
  EXPECT_EQ(diameter_of(rim_wall(), leaning(0.03)).verdict, Verdict::not_asked);
  EXPECT_EQ(
      diameter_of(wall, [](double, double) { return std::numeric_limits<double>::quiet_NaN(); }).verdict,
      Verdict::not_measured);
}

// Derived: points of an exact circle moved by (a, b) and grown by m, on half of its arc only.
TEST(LeastSquaresCircle, HalfAnArcStillGivesTheCentre) {
  std::vector<Vec2> direction;
  std::vector<double> e;
  for (int k = 0; k <= 180; ++k) {
    direction.emplace_back(std::cos(rad_from_deg(k)), std::sin(rad_from_deg(k)));
    e.push_back(0.3 + 0.02 * direction.back().x - 0.01 * direction.back().y);
  }
  e[7] = std::numeric_limits<double>::quiet_NaN();
  const CircleFit fit = fit_circle(direction, e);
  EXPECT_NEAR(fit.mean_mm, 0.3, 1e-12);
  EXPECT_NEAR(fit.centre_x_mm, 0.02, 1e-12);
  EXPECT_NEAR(fit.centre_y_mm, -0.01, 1e-12);
  EXPECT_NEAR(fit.roundness_mm, 0.0, 1e-12);
  EXPECT_EQ(fit.points, 180u);
}

} // namespace
} // namespace asperity::test
