// Cutter silhouettes against elementary geometry.
#include "asperity/base/units.h"
#include "asperity/job/cutter.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kRounding = 1e-12;

Cutter cutter(CutterKind kind, double diameter_mm, double tip_diameter_mm, double corner_mm,
              double half_angle_deg) {
  Cutter c;
  c.kind = kind;
  c.diameter_mm = diameter_mm;
  c.tip_diameter_mm = tip_diameter_mm;
  c.corner_radius_mm = corner_mm;
  c.half_angle_deg = half_angle_deg;
  return c;
}

TEST(Cutter, FlatIsLevelUpToItsRadius) {
  const CutterProfile profile = cutter(CutterKind::flat, 6, 0, 0, 0).profile();
  EXPECT_TRUE(profile.is_flat());
  EXPECT_EQ(profile.height_at(3.0), 0.0);
}

TEST(Cutter, BallIsACircle) {
  const CutterProfile profile = cutter(CutterKind::ball, 6, 0, 0, 0).profile();
  EXPECT_TRUE(profile.is_ball());
  EXPECT_NEAR(profile.height_at(1.8), 3 - 2.4, kRounding); // 1.8-2.4-3 triangle
}

TEST(Cutter, CornerRadiusIsLevelThenACircle) {
  const CutterProfile profile = cutter(CutterKind::corner_radius, 6, 0, 1, 0).profile();
  EXPECT_EQ(profile.height_at(2.0), 0.0);
  EXPECT_NEAR(profile.height_at(2.6), 1 - 0.8, kRounding); // 0.6-0.8-1 triangle
}

TEST(Cutter, VRisesByTheCotangentOfItsHalfAngle) {
  const CutterProfile profile = cutter(CutterKind::v, 6, 0.4, 0, 30).profile();
  EXPECT_EQ(profile.height_at(0.2), 0.0);
  EXPECT_NEAR(profile.height_at(1.2), 1 / std::tan(rad_from_deg(30)), kRounding);
}

TEST(Cutter, TaperedBallTipRunsTangentIntoItsFlank) {
  // derived: a circle of radius r tangent to a flank of half angle a ends at radius r cos a, height r (1 -
  // sin a).
  const double a = rad_from_deg(8);
  const CutterProfile profile = cutter(CutterKind::tapered, 6, 2, 1, 8).profile();
  EXPECT_EQ(profile.tip_flat_mm(), 0.0);
  EXPECT_NEAR(profile.height_at(std::cos(a)), 1 - std::sin(a), kRounding);
  EXPECT_NEAR(profile.shoulder_mm(), 1 - std::sin(a) + (3 - std::cos(a)) / std::tan(a), kRounding);
}

} // namespace
} // namespace asperity
