// Outlines that cannot be used are told apart from those that can.
#include "asperity/shape/outline.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace asperity {
namespace {

Outline polygon(const std::vector<Vec2> &corners) {
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < corners.size(); ++i)
    elements.push_back({corners[i], corners[(i + 1) % corners.size()], Vec2(0.0), 0.0});
  return Outline(elements);
}

bool says(const Outline &outline, const std::string &word) {
  return outline.fault().find(word) != std::string::npos;
}

TEST(OutlineFault, GoodOutlinesHaveNone) {
  EXPECT_EQ(polygon({{0, 0}, {10, 0}, {10, 5}, {0, 5}}).fault(), "");
  EXPECT_EQ(Outline::circle({0, 0}, 26.2).fault(), "");
  EXPECT_EQ(Outline::rounded_rectangle({0, 0}, 40, 30, 15).fault(), "");
}

TEST(OutlineFault, AnEmptyOutlineIsNoOutline) { EXPECT_TRUE(says(Outline(), "no elements")); }

TEST(OutlineFault, AGapIsMeasured) {
  const Outline open(
      {{{0, 0}, {10, 0}, {0, 0}, 0.0}, {{10, 0}, {10, 10}, {0, 0}, 0.0}, {{10, 10.25}, {0, 0}, {0, 0}, 0.0}});
  EXPECT_TRUE(says(open, "gap of 0.2500 mm")) << open.fault();
}

TEST(OutlineFault, AnOutlineThatDoesNotCloseHasAGap) {
  const Outline open({{{0, 0}, {10, 0}, {0, 0}, 0.0}, {{10, 0}, {10, 10}, {0, 0}, 0.0}});
  EXPECT_TRUE(says(open, "gap"));
}

TEST(OutlineFault, AnElementWithoutLengthIsNamed) {
  EXPECT_TRUE(says(polygon({{0, 0}, {10, 0}, {10, 0}, {10, 10}}), "no length"));
}

TEST(OutlineFault, AFigureOfEightCrossesItself) {
  EXPECT_TRUE(says(polygon({{0, 0}, {10, 10}, {10, 0}, {0, 11}}), "crosses"));
}

TEST(OutlineFault, ALineThatFoldsBackOnItselfIsACrossing) {
  EXPECT_TRUE(says(polygon({{0, 0}, {10, 0}, {4, 0}, {4, 8}, {0, 8}}), "crosses"));
}

TEST(OutlineFault, AnArcBulgingThroughTheOppositeSideIsACrossing) {
  const double sweep = 2.0 * std::asin(0.8); // radius 5 over a chord of 8: bulge 2 mm
  const Outline crossing({{{0, 0}, {8, 0}, {0, 0}, 0.0},
                          {{8, 0}, {8, 1}, {0, 0}, 0.0},
                          {{8, 1}, {0, 1}, {4, 4}, -sweep},
                          {{0, 1}, {0, 0}, {0, 0}, 0.0}});
  EXPECT_TRUE(says(crossing, "crosses")) << crossing.fault();
}

TEST(OutlineFault, TwoArcsMayShareBothTheirEndsUnlessOneCutsTheSides) {
  const Outline crescent(
      {{{3, 0}, {-3, 0}, {0, 0}, kPi}, {{-3, 0}, {3, 0}, {0, -1}, 2.0 * kPi - 2.0 * std::atan2(3.0, 1.0)}});
  EXPECT_EQ(crescent.fault(), "");
  const Outline pinched({{{-5, 0}, {5, 0}, {0, 0}, 0.0},
                         {{5, 0}, {5, 2}, {0, 0}, 0.0},
                         {{5, 2}, {-5, 2}, {0, 2}, -kPi},
                         {{-5, 2}, {-5, 0}, {0, 0}, 0.0}});
  EXPECT_TRUE(says(pinched, "crosses")) << pinched.fault();
}

TEST(OutlineFault, ATangentJoinRoundedToAMicrometreIsGood) {
  // A line touching a circle of radius 80 at 37 degrees, its coordinates typed to 0.001 mm.
  const auto typed = [](Vec2 p) { return Vec2(std::round(p.x * 1e3) / 1e3, std::round(p.y * 1e3) / 1e3); };
  const double a = rad_from_deg(37.0);
  const Vec2 touch = typed(80.0 * Vec2(std::cos(a), std::sin(a)));
  const Vec2 top = typed(Vec2(touch + 60.0 * Vec2(-std::sin(a), std::cos(a))));
  const Outline outline({{{80, 0}, touch, {0, 0}, a},
                         {touch, top, {0, 0}, 0.0},
                         {top, {-40, 0}, {0, 0}, 0.0},
                         {{-40, 0}, {80, 0}, {0, 0}, 0.0}});
  EXPECT_EQ(outline.fault(), "");
}

TEST(OutlineFault, AnArcThatMissesItsEndIsNamed) {
  const Outline outline({{{5, 0}, {0, 5.2}, {0, 0}, 0.5 * kPi},
                         {{0, 5.2}, {0, 0}, {0, 0}, 0.0},
                         {{0, 0}, {5, 0}, {0, 0}, 0.0}});
  EXPECT_TRUE(says(outline, "does not reach its end")) << outline.fault();
}

TEST(OutlineFault, ANumberThatIsNoneIsNamed) {
  EXPECT_TRUE(says(polygon({{0, 0}, {10, 0}, {NAN, 10}}), "not a number"));
}

} // namespace
} // namespace asperity
