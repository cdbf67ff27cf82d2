// Handedness and form of arcs in the three planes, against NISTIR 6556 (Kramer, Proctor, Messina
// 2000), 3.5.3.
#include "arc.h"
#include "asperity/base/units.h"
#include "reading.h"

#include <cmath>

namespace asperity::gcode {
namespace {

const Curve &last_curve(const Reading &reading) { return reading.moves().back().curve; }

// Clockwise is seen from the positive end of the third axis. In XZ, seen from +Y, Z runs to the right and X
// upward.
struct QuarterTurn {
  const char *arc;
  Vec3 begin;
  Vec3 middle; ///< where the arc is at 45 degrees
};

// derived: the quarter arcs about the origin, radius 10, drawn by hand for each plane.
TEST(ArcPlane, QuarterTurnsRunTheRightWayInEachPlane) {
  const double m = 10.0 / std::sqrt(2.0);
  const QuarterTurn kTurns[] = {
      {"G17 G3 X0 Y10 I-10", {10, 0, 0}, {m, m, 0}},   // from +X to +Y, counter-clockwise from +Z
      {"G17 G2 X0 Y-10 I-10", {10, 0, 0}, {m, -m, 0}}, // from +X to -Y
      {"G18 G3 X10 Z0 K-10", {0, 0, 10}, {m, 0, m}},   // from +Z to +X, counter-clockwise from +Y
      {"G18 G2 X-10 Z0 K-10", {0, 0, 10}, {-m, 0, m}}, // from +Z to -X
      {"G18 G2 X0 Z10 I-10", {10, 0, 0}, {m, 0, m}},   // from +X to +Z, clockwise from +Y
      {"G19 G3 Y0 Z10 J-10", {0, 10, 0}, {0, m, m}},   // from +Y to +Z, counter-clockwise from +X
      {"G19 G2 Y0 Z-10 J-10", {0, 10, 0}, {0, m, -m}}, // from +Y to -Z
      {"G18 G2 X0 Z10 R10", {10, 0, 0}, {m, 0, m}},    // by radius
      {"G18 G3 X0 Z10 R-10", {10, 0, 0}, {-m, 0, -m}}, // the long way, from +X back over -Z and -X to +Z
  };
  for (const QuarterTurn &turn : kTurns) {
    const Vec3 &b = turn.begin;
    const std::string start =
        "G0 X" + std::to_string(b.x) + " Y" + std::to_string(b.y) + " Z" + std::to_string(b.z) + "\n";
    const Reading reading = read_good(metric(start + turn.arc), strict());
    SCOPED_TRACE(turn.arc);
    expect_at(last_curve(reading).point(0.0), last_curve(reading).begin);
    expect_at(last_curve(reading).point(1.0), last_curve(reading).end);
    expect_at(last_curve(reading).point(0.5), turn.middle);
  }
}

TEST(ArcPlane, ThirdAxisMakesAHelixWithTheFeedAlongIt) {
  const Reading reading = read_good(metric("G18 G0 X10 Y0 Z0\nG2 X0 Z10 I-10 Y3"));
  const Curve &arc = last_curve(reading);
  expect_at(arc.rise, {0, 3, 0});
  expect_at(arc.point(1.0), {0, 3, 10});
  // derived: Pythagoras on the unrolled helix.
  EXPECT_NEAR(arc.length_mm(), std::hypot(5.0 * kPi, 3.0), kRounding_mm);
  EXPECT_EQ(reading.moves().back().feed_mm_per_min, 600.0);
}

TEST(ArcPlane, FullCircleByRepeatingTheStart) {
  const Reading reading = read_good(metric("G0 X5 Y0 Z0\nG3 X5 Y0 I-5\nG91 G2 X0 I-5"), strict());
  ASSERT_EQ(reading.moves().size(), 3u);
  EXPECT_NEAR(reading.moves()[1].curve.sweep_rad, 2.0 * kPi, kRounding_mm);
  EXPECT_NEAR(reading.moves()[2].curve.sweep_rad, -2.0 * kPi, kRounding_mm);
}

TEST(ArcPlane, ModalArcsGoOnWithoutTheGWord) {
  const Reading reading = read_good(metric("G0 X0 Y0 Z0\nG3 X10 I5\nX0 I-5"), strict());
  ASSERT_EQ(reading.moves().size(), 3u);
  expect_at(reading.moves()[2].curve.point(0.5), {5, 5, 0});
}

TEST(ArcPlane, IncrementalEndsAndInchesScaleTheArc) {
  const Reading reading = read_good("G20 F10 S1000 M3\nG0 X1 Y1 Z0\nG91 G2 X1 Y1 I1 J0\nM2\n", strict());
  const Curve &arc = last_curve(reading);
  expect_at(arc.centre, {50.8, 25.4, 0});
  EXPECT_NEAR(arc.radius_mm, 25.4, kRounding_mm);
  EXPECT_NEAR(arc.sweep_rad, -0.5 * kPi, kRounding_mm);
}

// Rounded ends must meet the next move: on arcs up to 270 degrees both ends lie on the curve.
TEST(ArcPlane, RoundedArcsStillMeetBothEnds) {
  for (int i = 1; i < 54; ++i) {
    const double sweep_rad = rad_from_deg(5.0 * i);
    const Vec3 begin(7.123, 0.0, 0.0);
    const auto round3 = [](double x) { return std::round(x * 1e3) / 1e3; };
    const Vec3 end(round3(7.123 * std::cos(sweep_rad)), round3(7.123 * std::sin(sweep_rad)), 0.0);
    const Curve arc = arc_about({begin, end, Plane::xy, false}, {0.0, 0.0});
    expect_at(arc.point(0.0), begin);
    expect_at(arc.point(1.0), end);
    // The rounding of 0.5 um in each of two coordinates cannot move the radius by more than its double.
    EXPECT_NEAR(arc.radius_mm, 7.123, 1.5e-3);
  }
}

} // namespace
} // namespace asperity::gcode
