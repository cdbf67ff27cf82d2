// Break, slip and overload against worked numbers.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// One sample: tip 60 mm above the grip, nothing engaged above it, peak force `force_N`.
Scene pushed_post(double force_N) {
  Scene scene;
  scene.job.cutters = {flat_cutter()};
  scene.job.material.name = "PETG";
  scene.job.material.break_stress_MPa = 25;
  scene.job.material.friction = 0.25;
  scene.job.blank.shape = BlankShape::box;
  scene.job.blank.size_mm = {20, 20};
  scene.job.blank.z_top_mm = 70;
  scene.job.holding.grip_z_mm = 0;
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 60}, {10, 0, 60}), 77)};
  CutSample sample;
  sample.position_mm = {0, 0, 60};
  sample.in_contact = true;
  sample.peak_force_N = static_cast<float>(force_N);
  scene.cut.samples = {sample};
  return scene;
}

// Derived: a solid 20 x 20 post has W = 20^3/6 = 1333.3 mm^3; at 60 mm and with square corner 2 and impact 2
// a force F gives 4 F 60/1333.3 = 0.18 F MPa, so 25 MPa is reached at 138.9 N, and margin 2 at 69.4 N.
TEST(BreakRisk, ThePostBreaksAtTheForceOfTheBendingFormula) {
  const FoundList found = find_break_risk(pushed_post(100).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "margin"), 1.389, 0.001);
  EXPECT_NEAR(quantity(found[0].finding, "stress at the grip"), 18.0, 0.01);
  EXPECT_EQ(found[0].finding.weight, Weight::danger);
  EXPECT_EQ(found[0].finding.lines, std::vector<std::uint32_t>{77});
  EXPECT_NE(found[0].finding.rests_on.find("PETG"), std::string::npos);
  EXPECT_TRUE(find_break_risk(pushed_post(69).evidence()).empty());
  EXPECT_FALSE(find_break_risk(pushed_post(70).evidence()).empty());
}

TEST(BreakRisk, TheEngagedLengthRaisesThePoint) {
  Scene scene = pushed_post(69);
  scene.cut.samples[0].axial_depth_mm = 2;
  EXPECT_EQ(find_break_risk(scene.evidence()).size(), 1u) << "62 mm: 0.186 F";
}

TEST(BreakRisk, WithoutAGripItIsNotAsked) {
  Scene scene = pushed_post(1000);
  scene.job.holding.grip_z_mm.reset();
  EXPECT_TRUE(find_break_risk(scene.evidence()).empty());
}

// Friction law: 0.25 (400 - 40) = 90 N holds against 60 N: margin 1.5.
TEST(SlipRisk, ThePushIsHeldAgainstFrictionLessLift) {
  Scene scene = pushed_post(60);
  EXPECT_TRUE(find_slip_risk(scene.evidence()).empty()) << "no clamping force given: not checked";
  scene.job.holding.clamp_force_N = 400;
  scene.cut.samples[0].mean_force_N[2] = 40;
  const FoundList found = find_slip_risk(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "margin"), 1.5, 1e-6);
  EXPECT_NEAR(quantity(found[0].finding, "holding force"), 90, 1e-4);
  EXPECT_EQ(found[0].finding.weight, Weight::danger);
  scene.job.holding.clamp_force_N = 600;
  EXPECT_TRUE(find_slip_risk(scene.evidence()).empty()) << "0.25 x 560 = 140 N: margin 2.3";
}

// 32 F L/(pi d^3): 2 x 150 N at 20 mm on the 4.8 mm core: 553 MPa; on the shank, 25 mm of 6 mm: 354 MPa.
TEST(CutterOverload, TheFlutesCoreDecides) {
  const FoundList found = find_cutter_overload(pushed_post(150).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "stress in the cutter"), 32 * 300 * 20 / (kPi * 4.8 * 4.8 * 4.8),
              0.1);
  EXPECT_EQ(found[0].finding.weight, Weight::flaw);
  EXPECT_EQ(find_cutter_overload(pushed_post(300).evidence())[0].finding.weight, Weight::danger);
  EXPECT_TRUE(find_cutter_overload(pushed_post(130).evidence()).empty());
}

} // namespace
} // namespace asperity::test
