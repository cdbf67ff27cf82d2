// Offset outlines against plane geometry: Steiner's formulas, and the distance kept everywhere.
#include "asperity/base/units.h"
#include "asperity/passes/outline_offset.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace asperity::test {
namespace {

constexpr double kRounding_mm = 1e-9; // sums of a few dozen doubles of size 100

Outline polygon(const std::vector<Vec2> &corners) {
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < corners.size(); ++i)
    elements.push_back({corners[i], corners[(i + 1) % corners.size()], Vec2(0.0), 0.0});
  return Outline(std::move(elements));
}

/// A crank with a hollow of 5 mm, sharp outside corners and two sharp inside corners.
Outline crank() {
  return Outline({{{-15, -10}, {15, -10}, Vec2(0.0), 0.0},
                  {{15, -10}, {15, 0}, Vec2(0.0), 0.0},
                  {{15, 0}, {7, 0}, {11, 3}, -2 * std::atan2(4.0, 3.0)},
                  {{7, 0}, {7, 8}, Vec2(0.0), 0.0},
                  {{7, 8}, {-15, 8}, {-4, 8}, kPi},
                  {{-15, 8}, {-15, -10}, Vec2(0.0), 0.0}});
}

/// Every place of the path lies exactly `distance` from the outline, on the right side.
void expect_kept(const Outline &outline, const Outline &path, double outward_mm) {
  for (int i = 0; i < 5000; ++i) {
    const double depth_mm = outline.depth_mm(path.point(path.length_mm() * i / 5000.0));
    ASSERT_NEAR(depth_mm, -outward_mm, 1e-8) << i;
  }
}

TEST(Offset, CircleBecomesCircle) {
  const auto out = offset_outline(Outline::circle({1, 2}, 40.0), 3.25);
  ASSERT_TRUE(out.path);
  EXPECT_NEAR(out.path->length_mm(), 2 * kPi * 23.25, kRounding_mm);
  const auto in = offset_outline(Outline::circle({1, 2}, 40.0), -3.25);
  ASSERT_TRUE(in.path);
  EXPECT_NEAR(in.path->length_mm(), 2 * kPi * 16.75, kRounding_mm);
}

TEST(Offset, ConvexOutlineGrowsBySteinersFormula) {
  // Steiner's formula, from memory: length L + 2 pi d, area A + L d + pi d^2 of the outer parallel body of a
  // convex figure.
  for (const Outline &outline :
       {Outline::rounded_rectangle({0, 0}, 30, 20, 4), Outline::rounded_rectangle({0, 0}, 30, 20, 0),
        polygon({{0, 0}, {20, 0}, {5, 12}})}) {
    const double d = 3.1;
    const auto out = offset_outline(outline, d);
    ASSERT_TRUE(out.path);
    EXPECT_FALSE(out.is_trimmed);
    EXPECT_NEAR(out.path->length_mm(), outline.length_mm() + 2 * kPi * d, kRounding_mm);
    EXPECT_NEAR(out.path->area_mm2(), outline.area_mm2() + outline.length_mm() * d + kPi * d * d, 1e-7);
    expect_kept(outline, *out.path, d);
  }
}

TEST(Offset, InsideOfARectangleKeepsItsSharpCorners) {
  const auto in = offset_outline(Outline::rounded_rectangle({0, 0}, 30, 20, 0), -3.0);
  ASSERT_TRUE(in.path);
  EXPECT_TRUE(in.is_trimmed) << "the cutter cannot reach into the corners";
  EXPECT_NEAR(in.path->area_mm2(), 24.0 * 14.0, kRounding_mm);
  expect_kept(Outline::rounded_rectangle({0, 0}, 30, 20, 0), *in.path, -3.0);
}

TEST(Offset, InsideOfRoundedCornersShrinksTheirRadius) {
  const auto in = offset_outline(Outline::rounded_rectangle({0, 0}, 30, 20, 4), -3.0);
  ASSERT_TRUE(in.path);
  EXPECT_FALSE(in.is_trimmed);
  EXPECT_NEAR(in.path->area_mm2(), 24.0 * 14.0 - (4.0 - kPi), kRounding_mm); // corners of 1 mm
}

TEST(Offset, CornerOfTheCuttersOwnRadiusIsReached) {
  const auto in = offset_outline(Outline::rounded_rectangle({0, 0}, 30, 20, 3), -3.0);
  ASSERT_TRUE(in.path);
  EXPECT_FALSE(in.is_trimmed);
  EXPECT_NEAR(in.path->area_mm2(), 24.0 * 14.0, kRounding_mm);
}

TEST(Offset, FreeFormKeepsItsDistanceOutsideAndInside) {
  for (const double outward_mm : {0.5, 3.0, 4.9, -0.5, -3.0}) {
    const auto offset = offset_outline(crank(), outward_mm);
    ASSERT_TRUE(offset.path) << outward_mm;
    EXPECT_GT(offset.path->area_mm2(), 0.0);
    expect_kept(crank(), *offset.path, outward_mm);
    EXPECT_TRUE(offset.path->fault().empty()) << offset.path->fault();
  }
}

TEST(Offset, HollowTighterThanTheDistanceIsCutOff) {
  // In the hollow of 5 mm an axis 6 mm away from everything touches its two rims and no more.
  const auto out = offset_outline(crank(), 6.0);
  ASSERT_TRUE(out.path);
  expect_kept(crank(), *out.path, 6.0);
  EXPECT_TRUE(out.is_trimmed);
  EXPECT_DOUBLE_EQ(smallest_hollow_mm(crank(), true).value(), 5.0);
  EXPECT_DOUBLE_EQ(smallest_hollow_mm(crank(), false).value(), 11.0);
}

TEST(Offset, ShortSidesVanishAndTheirNeighboursMeet) {
  // A square with one corner cut by 1 mm: 3 mm further in that chamfer is gone when 3 (2 - sqrt 2) > 1.
  const Outline square = polygon({{0, 0}, {20, 0}, {20, 19}, {19, 20}, {0, 20}});
  const auto in = offset_outline(square, -3.0);
  ASSERT_TRUE(in.path);
  EXPECT_NEAR(in.path->area_mm2(), 14.0 * 14.0, 1e-7);
  EXPECT_EQ(in.path->elements().size(), 4u);
}

/// A star-shaped outline of lines and arcs, or one that crosses itself and is no outline.
Outline random_outline(std::mt19937 &random) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  const int count = 3 + static_cast<int>(share(random) * 7);
  std::vector<Vec2> corners;
  for (int i = 0; i < count; ++i) {
    const double angle = 2 * kPi * (i + 0.7 * share(random)) / count, r = 8 + 20 * share(random);
    corners.push_back({r * std::cos(angle), r * std::sin(angle)});
  }
  std::vector<OutlineElement> elements;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const Vec2 a = corners[i], b = corners[(i + 1) % corners.size()], middle = 0.5 * (a + b);
    const double sweep = share(random) < 0.4 ? 3.0 * (share(random) - 0.5) : 0.0;
    const Vec2 centre = sweep == 0.0 ? Vec2(0.0) : middle + 0.5 / std::tan(0.5 * sweep) * left_of(b - a);
    elements.push_back({a, b, centre, sweep});
  }
  return Outline(std::move(elements));
}

TEST(Offset, RandomOutlinesHaveAllPlacesAtTheirDistanceAndNoOthers) {
  // The definition itself: a place beside the outline whose shortest distance from it is d lies on the path.
  std::mt19937 random(7);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  int paths = 0, refusals = 0;
  for (int i = 0; i < 400; ++i) {
    const Outline outline = random_outline(random);
    const double outward_mm = (share(random) < 0.5 ? -1 : 1) * (0.3 + 4 * share(random));
    if (!outline.fault().empty())
      continue;
    const auto offset = offset_outline(outline, outward_mm);
    refusals += offset.path ? 0 : 1;
    if (!offset.path)
      continue;
    ++paths;
    EXPECT_EQ(offset.path->fault(), "");
    for (int k = 0; k < 300; ++k) {
      const double s_mm = outline.length_mm() * k / 300;
      const Vec2 p = outline.point(s_mm) + outward_mm * outline.outward_normal(s_mm);
      if (std::abs(outline.depth_mm(p) + outward_mm) < 1e-9) {
        ASSERT_NEAR(offset.path->depth_mm(p), 0.0, 1e-6) << i << ' ' << outward_mm;
      }
    }
  }
  EXPECT_GT(paths, 350);
  EXPECT_LT(refusals, 10) << "only where a neck or a fork is too narrow";
}

TEST(Offset, DistanceThatDoesNotFitGivesNoPath) {
  EXPECT_FALSE(offset_outline(Outline::circle({0, 0}, 5.9), -3.0).path);
  EXPECT_FALSE(offset_outline(Outline::rounded_rectangle({0, 0}, 30, 5, 2), -3.0).path);
  // Two chambers joined by a neck of 4 mm: a path 3 mm from the wall would fall into two.
  const Outline chambers = polygon({{0, 0},
                                    {20, 0},
                                    {20, 8},
                                    {30, 8},
                                    {30, 0},
                                    {50, 0},
                                    {50, 20},
                                    {30, 20},
                                    {30, 12},
                                    {20, 12},
                                    {20, 20},
                                    {0, 20}});
  EXPECT_TRUE(offset_outline(chambers, -1.5).path);
  EXPECT_FALSE(offset_outline(chambers, -3.0).path);
}

} // namespace
} // namespace asperity::test
