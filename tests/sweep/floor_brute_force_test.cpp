// Every kind of move under every kind of cutter against dense sampling of the path.
#include "asperity/base/units.h"

#include "sweep/floor_jobs.h"
#include "sweep/floor_reference.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace asperity::floor_test {
namespace {

/// Promised exactness of level and straight moves; float storage takes a quarter of it (half an ulp at 4 mm).
constexpr double kLine_mm = 1e-6;
/// Promised exactness of helices and of arcs whose bending changes.
constexpr double kHelix_mm = 1e-5;
/// Promised exactness of arcs in upright planes.
constexpr double kUpright_mm = 1e-4;
constexpr int kCells = 120;

void check(const Curve &curve, double tolerance_mm, const std::string &what,
           const AxisOffset &begin = offset({0, 0}, 0), const AxisOffset &end = offset({0, 0}, 0)) {
  for (const NamedProfile &cutter : all_profiles()) {
    SweptPath path = path_with(cutter.profile);
    add(path, curve, begin, end);
    FloorChart chart = square_chart(4.0);
    sweep(chart, path);
    expect_reference(chart, path, kCells, tolerance_mm, cutter.name + ", " + what);
  }
}

TEST(FloorBruteForce, LinesMatchAtEverySlope) {
  for (const double dz : {0.0, 1e-4, -0.05, 0.4, -3.0, 7.0})
    check(Curve::line({-1.7, -0.9, 0.1}, {1.4, 1.3, 0.1 + dz}), kLine_mm,
          "line rising " + std::to_string(dz));
}

// Where a grown ball's flat or a worn ball's point meets the arc, cells 1 um apart, and little else to round:
// storage loses 4e-9 at the heights that occur, arithmetic in floats as much again.
TEST(FloorBruteForce, GrownAndWornBallsMatchRightUnderTheirTips) {
  constexpr double kFine_mm = 1.5e-7;
  for (const double grown : {0.001, 0.004, 0.012, 0.018, -0.001, -0.004, -0.012})
    for (const double slope : {0.0, 1e-6, 1e-4, 1e-3, 2.7e-3, 8e-3, 0.035, 0.3, 0.49}) {
      SweptPath path = path_with(CutterProfile::ball(1.5).grown(grown));
      const double rise = slope * std::hypot(1.4, 0.7);
      add(path, Curve::line({-1.4, -0.7, -rise}, {1.4, 0.7, rise}));
      FloorChart chart = square_chart(0.05, 0.001, 0.0);
      sweep(chart, path);
      expect_reference(chart, path, kCells, kFine_mm,
                       "grown by " + std::to_string(grown) + ", slope " + std::to_string(slope));
    }
}

TEST(FloorBruteForce, ShortSteepMovesMatch) {
  check(Curve::line({0.3, 0.1, 0.5}, {0.301, 0.102, -0.6}), kLine_mm, "near plunge");
  check(Curve::line({0.3, 0.1, 0.5}, {0.35, 0.1, 0.501}), kLine_mm, "short line");
}

TEST(FloorBruteForce, PlungesAndStandingCuttersAreStamps) {
  check(Curve::line({0.3, 0.1, 0.5}, {0.3, 0.1, -0.6}), kLine_mm, "plunge");
  check(Curve::line({0.3, 0.1, 0.5}, {0.3, 0.1, 0.5}), kLine_mm, "standing");
}

TEST(FloorBruteForce, ABendingLineIsStillALine) {
  check(Curve::line({-1.7, -0.9, 0.1}, {1.4, 1.3, 0.2}), kLine_mm, "bending line",
        offset({0.02, -0.03}, 0.004), offset({-0.01, 0.05}, -0.002));
  check(Curve::line({0.3, 0.1, 0.5}, {0.3, 0.1, 0.5}), kLine_mm, "standing, springing back",
        offset({0.1, 0}, 0), offset({-0.1, 0.05}, 0));
}

TEST(FloorBruteForce, LevelArcsMatchRoundSmallAndLargeCircles) {
  for (const double radius : {0.4, 1.5, 2.5, 40.0}) {
    const double sweep_rad = radius > 10.0 ? 0.1 : -4.5;
    const double a = 1.0 + sweep_rad;
    const Vec2 centre = radius > 10.0 ? Vec2(-40.0 * std::cos(1.0), -40.0 * std::sin(1.0)) : Vec2(0.2, -0.1);
    const Vec2 begin = centre + radius * Vec2(std::cos(1.0), std::sin(1.0)),
               end = centre + radius * Vec2(std::cos(a), std::sin(a));
    check(Curve::plan_arc({begin.x, begin.y, 0.2}, {end.x, end.y, 0.2}, centre, sweep_rad), kLine_mm,
          "level arc of " + std::to_string(radius));
  }
}

TEST(FloorBruteForce, HelicesMatchRoundSmallAndLargeCircles) {
  for (const double radius : {0.4, 1.2, 1.6, 2.5})
    for (const double dz : {-0.8, 0.05, 4.0}) {
      const double sweep_rad = dz < 0.0 ? -9.0 : 5.0; // more and less than one turn
      const Vec2 centre(0.2, -0.1);
      const double a = 1.0 + sweep_rad;
      const Vec2 begin = centre + radius * Vec2(std::cos(1.0), std::sin(1.0)),
                 end = centre + radius * Vec2(std::cos(a), std::sin(a));
      check(Curve::plan_arc({begin.x, begin.y, 0.2}, {end.x, end.y, 0.2 + dz}, centre, sweep_rad), kHelix_mm,
            "helix of " + std::to_string(radius) + " rising " + std::to_string(dz));
    }
}

TEST(FloorBruteForce, ArcsWhoseBendingChangesMatch) {
  for (const double radius : {0.4, 2.5})
    check(Curve::plan_arc({radius, 0, 0.2}, {-radius, 0, 0.2}, {0, 0}, kPi), kHelix_mm,
          "bending arc of " + std::to_string(radius), offset({0.02, -0.03}, 0.004),
          offset({-0.01, 0.05}, -0.002));
}

TEST(FloorBruteForce, ArcsInUprightPlanesMatch) {
  for (const double turned : {0.0, 0.7}) {
    Curve arc;
    arc.axis_x = {std::cos(turned), std::sin(turned), 0};
    arc.axis_y = {0, 0, 1};
    arc.radius_mm = 1.2;
    arc.start_rad = kPi;
    arc.sweep_rad = -kPi;
    arc.begin = -1.2 * arc.axis_x;
    arc.end = 1.2 * arc.axis_x;
    check(arc, kUpright_mm, "dome");
    arc.start_rad = -2.8;
    arc.sweep_rad = 2.0;
    arc.rise = {-0.3 * std::sin(turned), 0.3 * std::cos(turned), 0}; // sideways, along the arc's axis
    arc.begin = arc.centre + arc.radius_mm * (std::cos(-2.8) * arc.axis_x + std::sin(-2.8) * arc.axis_y);
    arc.end = arc.point(1.0);
    check(arc, kUpright_mm, "hollow with drift", offset({0.01, 0}, 0), offset({0, 0.02}, 0.001));
  }
}

TEST(FloorBruteForce, JoinedWanderingsMatch) {
  unsigned number = 1;
  for (const double turn_rad : {0.02, 0.6, 2.5})
    for (const NamedProfile &cutter : all_profiles()) {
      const SweptPath path = wandering_path(cutter.profile, number++, 25, turn_rad, 0.3, 0.02);
      FloorChart chart = square_chart(4.0);
      sweep(chart, path);
      expect_reference(chart, path, 100, kHelix_mm, cutter.name + " turning " + std::to_string(turn_rad));
    }
}

TEST(FloorBruteForce, SculptedSurfacesKeepTheirResidual) {
  const SweptPath path = wandering_path(CutterProfile::ball(1.5), 5, 60, 0.5, 0.3, 0.01);
  FloorChart chart = square_chart(4.0, 0.1, 12.0);
  for (std::size_t cell = 0; cell < chart.wanted_mm.size(); ++cell) {
    const double x = chart.x_mm(cell % chart.nx), y = chart.y_mm(cell / chart.nx);
    chart.wanted_mm[cell] = float(-12.0 + 0.1 * x - 0.05 * y * y);
    if (cell % 7 == 0)
      chart.wanted_mm[cell] = std::numeric_limits<float>::quiet_NaN();
  }
  sweep(chart, path);
  expect_reference(chart, path, 500, kHelix_mm, "sculpted");
  for (std::size_t cell = 0; cell < chart.wanted_mm.size(); cell += 7)
    ASSERT_TRUE(std::isinf(chart.envelope_mm[cell])) << "cells outside the feature are never swept";
}

} // namespace
} // namespace asperity::floor_test
