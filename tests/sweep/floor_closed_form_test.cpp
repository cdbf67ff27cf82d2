// Single moves over a floor against formulas of plane and space geometry.
#include "asperity/base/units.h"

#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <string>

namespace asperity::floor_test {
namespace {

/// Float storage of residuals below 8 mm: half an ulp is 0.24 nm; the promise is 1 nm.
constexpr double kStored_mm = 1e-6;
constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Compares every cell with height(x, y) above the base plane z = -1.
void expect_heights(const FloorChart &chart, const std::function<double(double, double)> &height,
                    const std::string &what) {
  int reached = 0;
  for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell) {
    const double x = chart.x_mm(cell % chart.nx), y = chart.y_mm(cell / chart.nx), expected = height(x, y);
    if (std::isnan(expected))
      continue; // left open by the formula
    if (std::isinf(expected)) {
      ASSERT_TRUE(std::isinf(chart.envelope_mm[cell])) << what << " at " << x << " " << y;
      continue;
    }
    ++reached;
    ASSERT_NEAR(double(chart.envelope_mm[cell]) - 1.0, expected, kStored_mm)
        << what << " at " << x << " " << y;
  }
  ASSERT_GT(reached, 100) << what;
}

FloorChart swept(const CutterProfile &profile, const Curve &curve) {
  SweptPath path = path_with(profile);
  add(path, curve);
  FloorChart chart = square_chart(4.0, 0.0625);
  sweep(chart, path);
  return chart;
}

// Level moves: the distance in plan enters the cutter's own profile.
TEST(FloorClosedForm, LevelLineLeavesTheProfileAlongItsStadium) {
  for (const NamedProfile &cutter : all_profiles()) {
    const FloorChart chart = swept(cutter.profile, Curve::line({-1.3, 0.4, 0.2}, {1.1, 0.4, 0.2}));
    expect_heights(
        chart,
        [&](double x, double y) {
          const double d = std::hypot(x - std::clamp(x, -1.3, 1.1), y - 0.4);
          return std::abs(d - cutter.profile.radius_mm()) < 1e-9 ? NAN : 0.2 + cutter.profile.height_at(d);
        },
        cutter.name);
  }
}

TEST(FloorClosedForm, LevelCircleLeavesTheProfileAlongItsRing) {
  for (const NamedProfile &cutter : all_profiles()) {
    const FloorChart chart =
        swept(cutter.profile, Curve::plan_arc({2.3, 0.1, 0}, {2.3, 0.1, 0}, {0.3, 0.1}, 2 * kPi));
    expect_heights(
        chart,
        [&](double x, double y) {
          const double d = std::abs(std::hypot(x - 0.3, y - 0.1) - 2.0);
          return std::abs(d - cutter.profile.radius_mm()) < 1e-9 ? NAN : cutter.profile.height_at(d);
        },
        cutter.name);
  }
}

// Derived: spheres of radius R with centres along a line of slope m touch from below in
// z = centre height + m s - sqrt(1 + m^2) sqrt(R^2 - q^2).
TEST(FloorClosedForm, BallOnASlopeLeavesATiltedCylinder) {
  const double m = 0.6, radius = 1.5;
  const FloorChart chart =
      swept(CutterProfile::ball(radius), Curve::line({-6, 0.3, -6 * m}, {6, 0.3, 6 * m}));
  expect_heights(
      chart,
      [&](double x, double y) {
        const double w2 = radius * radius - (y - 0.3) * (y - 0.3);
        return w2 < 0.0 ? kInfinity : radius + m * x - std::sqrt(1.0 + m * m) * std::sqrt(w2);
      },
      "ball on a slope");
}

// Derived: the disc last (or first) covers a cell with its rim, w = sqrt(R^2 - q^2) down the slope.
TEST(FloorClosedForm, FlatCutterOnASlopeCutsWithItsTrailingRim) {
  const double m = 0.3, radius = 1.5;
  const FloorChart chart =
      swept(CutterProfile::flat(radius), Curve::line({6, 0.3, 6 * m}, {-6, 0.3, -6 * m}));
  expect_heights(
      chart,
      [&](double x, double y) {
        const double w2 = radius * radius - (y - 0.3) * (y - 0.3);
        return w2 < 0.0 ? kInfinity : m * (x - std::sqrt(w2));
      },
      "flat on a slope");
}

// Derived: minimise m c + k sqrt(q^2 + (c - s)^2) over c for a cone of slope k > m.
TEST(FloorClosedForm, SharpVeeOnASlopeLeavesASteeperValley) {
  const double m = 0.5, k = 1.0, radius = 1.5;
  const FloorChart chart = swept(CutterProfile(radius, 0.0, 0.0, rad_from_deg(45.0)),
                                 Curve::line({-6, 0.3, -6 * m}, {6, 0.3, 6 * m}));
  expect_heights(
      chart,
      [&](double x, double y) {
        const double q = std::abs(y - 0.3);
        if (q * k / std::sqrt(k * k - m * m) > radius - 1e-9)
          return q > radius ? kInfinity : NAN; // contact on the rim
        return m * x + q * std::sqrt(k * k - m * m);
      },
      "vee on a slope");
}

// Derived from the flat cutter's rule with the corner circle's contact at slope m: beside the axis line a
// torus touches at flat + corner m / sqrt(1 + m^2), height corner (1 - 1 / sqrt(1 + m^2)).
TEST(FloorClosedForm, CornerRadiusOnASlopeTouchesWhereItsCircleHasThatSlope) {
  const double m = 0.25, g = std::sqrt(1.0 + m * m);
  const FloorChart chart =
      swept(CutterProfile::corner_radius(1.5, 0.3), Curve::line({-6, 0.03125, -6 * m}, {6, 0.03125, 6 * m}));
  expect_heights(
      chart,
      [&](double x, double y) {
        return std::abs(y - 0.03125) < 1e-12 ? m * (x - 1.2 - 0.3 * m / g) + 0.3 * (1.0 - 1.0 / g) : NAN;
      },
      "corner radius on a slope");
}

TEST(FloorClosedForm, APlungeStampsTheCutterAtItsLowest) {
  for (const NamedProfile &cutter : all_profiles()) {
    const FloorChart chart = swept(cutter.profile, Curve::line({0.3, 0.4, 2.0}, {0.3, 0.4, -0.5}));
    expect_heights(
        chart,
        [&](double x, double y) {
          const double d = std::hypot(x - 0.3, y - 0.4);
          return std::abs(d - cutter.profile.radius_mm()) < 1e-9 ? NAN : -0.5 + cutter.profile.height_at(d);
        },
        cutter.name);
  }
}

TEST(FloorClosedForm, BendingShiftsTheStampByTheMeanOfLeftAndRight) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  AxisOffset bend;
  bend.left[0] = {0.10, 0.02};
  bend.right[0] = {-0.04, 0.04};
  bend.left[1] = bend.right[1] = {9.0, 9.0}; // nodes above the tip do not count on a floor
  bend.axial_mm = -0.25;
  add(path, Curve::line({0, 0, 0}, {0, 0, 0}), bend, bend);
  FloorChart chart = square_chart(4.0, 0.0625);
  sweep(chart, path);
  expect_heights(
      chart,
      [](double x, double y) {
        const double d2 = (x - 0.03) * (x - 0.03) + (y - 0.03) * (y - 0.03);
        return d2 > 2.25 ? kInfinity : 1.25 - std::sqrt(2.25 - d2);
      },
      "bent stamp");
}

} // namespace
} // namespace asperity::floor_test
