// Lengths, areas, points and normals of outlines against plane geometry.
#include "asperity/shape/outline.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12;

/// A slot 20 long between arc centres and 8 wide: two straight sides, two half circles.
Outline slot() {
  return Outline({{{-10, -4}, {10, -4}, {0, 0}, 0.0},
                  {{10, -4}, {10, 4}, {10, 0}, kPi},
                  {{10, 4}, {-10, 4}, {0, 0}, 0.0},
                  {{-10, 4}, {-10, -4}, {-10, 0}, kPi}});
}

TEST(Outline, CircleHasItsLengthAndArea) {
  const Outline circle = Outline::circle({3, 4}, 26.2);
  EXPECT_NEAR(circle.length_mm(), kPi * 26.2, kRounding_mm);
  EXPECT_NEAR(circle.area_mm2(), kPi * 13.1 * 13.1, 1e-11);
  EXPECT_NEAR(circle.low().x, 3 - 13.1, kRounding_mm);
  EXPECT_NEAR(circle.high().y, 4 + 13.1, kRounding_mm);
}

TEST(Outline, RoundedRectangleHasItsLengthAndArea) {
  const Outline bezel = Outline::rounded_rectangle({1, 2}, 40.0, 30.0, 5.0);
  EXPECT_EQ(bezel.elements().size(), 8u);
  EXPECT_NEAR(bezel.length_mm(), 2.0 * (30.0 + 20.0) + 10.0 * kPi, kRounding_mm);
  EXPECT_NEAR(bezel.area_mm2(), 1200.0 - (4.0 - kPi) * 25.0, 1e-11);
  EXPECT_EQ(bezel.fault(), "");
}

TEST(Outline, SharpAndFullyRoundedRectanglesKeepNoEmptyElements) {
  EXPECT_EQ(Outline::rounded_rectangle({0, 0}, 40.0, 30.0, 0.0).elements().size(), 4u);
  const Outline stadium = Outline::rounded_rectangle({0, 0}, 40.0, 30.0, 15.0);
  EXPECT_EQ(stadium.elements().size(), 6u);
  EXPECT_NEAR(stadium.area_mm2(), 300.0 + kPi * 225.0, 1e-10);
}

TEST(Outline, SlotHasItsLengthAreaAndBox) {
  EXPECT_NEAR(slot().length_mm(), 40.0 + 8.0 * kPi, kRounding_mm);
  EXPECT_NEAR(slot().area_mm2(), 160.0 + 16.0 * kPi, 1e-11);
  EXPECT_NEAR(slot().low().x, -14.0, kRounding_mm);
  EXPECT_NEAR(slot().high().x, 14.0, kRounding_mm);
  EXPECT_EQ(slot().high().y, 4.0);
}

TEST(Outline, AClockwiseOutlineIsTurnedRound) {
  std::vector<OutlineElement> backwards;
  const Outline forwards = slot();
  for (const OutlineElement &e : forwards.elements())
    backwards.insert(backwards.begin(), OutlineElement{e.end, e.begin, e.centre, -e.sweep_rad});
  const Outline turned{backwards};
  EXPECT_NEAR(turned.area_mm2(), slot().area_mm2(), 1e-11);
  EXPECT_EQ(turned.fault(), "");
  for (int i = 0; i < 50; ++i) {
    const double s = turned.length_mm() * i / 50.0;
    EXPECT_LT(turned.depth_mm(turned.point(s) + 0.01 * turned.outward_normal(s)), 0.0);
  }
}

TEST(Outline, NormalsPointOutAndAreUpright) {
  const Outline outline = slot();
  for (int i = 0; i < 97; ++i) {
    const double s = outline.length_mm() * i / 97.0;
    const Vec2 p = outline.point(s), n = outline.outward_normal(s);
    EXPECT_NEAR(glm::length(n), 1.0, kRounding_mm);
    EXPECT_NEAR(outline.depth_mm(p), 0.0, kRounding_mm);
    EXPECT_NEAR(outline.depth_mm(p - 0.5 * n), 0.5, kRounding_mm);
    EXPECT_NEAR(outline.depth_mm(p + 0.5 * n), -0.5, kRounding_mm);
  }
}

TEST(Outline, NormalOfAHollowArcPointsTowardsItsCentre) {
  // A square with a bite of radius 2 out of its top side: the bite runs clockwise.
  const Outline bitten({{{-5, -5}, {5, -5}, {0, 0}, 0.0},
                        {{5, -5}, {5, 5}, {0, 0}, 0.0},
                        {{5, 5}, {2, 5}, {0, 0}, 0.0},
                        {{2, 5}, {-2, 5}, {0, 5}, -kPi},
                        {{-2, 5}, {-5, 5}, {0, 0}, 0.0},
                        {{-5, 5}, {-5, -5}, {0, 0}, 0.0}});
  EXPECT_EQ(bitten.fault(), "");
  EXPECT_NEAR(bitten.area_mm2(), 100.0 - 2.0 * kPi, 1e-12);
  const double s = bitten.element_start_mm(3) + kPi;
  EXPECT_NEAR(glm::distance(bitten.point(s), Vec2(0, 3)), 0.0, kRounding_mm);
  EXPECT_NEAR(glm::distance(bitten.outward_normal(s), Vec2(0, 1)), 0.0, kRounding_mm);
}

TEST(Outline, ArcLengthWrapsRound) {
  const Outline outline = slot();
  EXPECT_NEAR(glm::distance(outline.point(outline.length_mm() + 3.0), outline.point(3.0)), 0.0, kRounding_mm);
  EXPECT_NEAR(glm::distance(outline.point(-1.0), outline.point(outline.length_mm() - 1.0)), 0.0,
              kRounding_mm);
  EXPECT_EQ(outline.element_at(0.0), 0u);
  EXPECT_EQ(outline.element_at(20.0), 1u);
  EXPECT_EQ(outline.element_at(19.999), 0u);
}

TEST(OutlineElement, FootIsWhereTheNearestPointLies) {
  const OutlineElement arc{{5, 0}, {0, 5}, {0, 0}, 0.5 * kPi};
  double foot = 0.0;
  EXPECT_NEAR(arc.distance_mm({6, 6}, &foot), std::sqrt(72.0) - 5.0, kRounding_mm);
  EXPECT_NEAR(foot, 5.0 * kPi / 4.0, kRounding_mm);
  EXPECT_NEAR(arc.distance_mm({8, -4}, &foot), 5.0, kRounding_mm); // 3-4-5 from the begin
  EXPECT_EQ(foot, 0.0);
  const OutlineElement clockwise{{0, 5}, {5, 0}, {0, 0}, -0.5 * kPi};
  EXPECT_NEAR(clockwise.distance_mm({6, 6}, &foot), std::sqrt(72.0) - 5.0, kRounding_mm);
  EXPECT_NEAR(foot, 5.0 * kPi / 4.0, kRounding_mm);
  const OutlineElement line{{0, 0}, {10, 0}, {0, 0}, 0.0};
  EXPECT_NEAR(line.distance_mm({3, 4}, &foot), 4.0, kRounding_mm);
  EXPECT_NEAR(foot, 3.0, kRounding_mm);
  EXPECT_NEAR(line.distance_mm({13, 4}, &foot), 5.0, kRounding_mm);
  EXPECT_NEAR(foot, 10.0, kRounding_mm);
}

} // namespace
} // namespace asperity
