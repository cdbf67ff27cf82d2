// Inside or outside, and how deep: against shapes whose depth is known in closed form.
#include "asperity/shape/outline.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12;

/// Compares depth with a closed form at random points and on lines through joints, where counting is
/// delicate.
void expect_depth(const Outline &outline, const std::function<double(Vec2)> &depth) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> across(-20.0, 20.0);
  for (int i = 0; i < 5000; ++i) {
    const Vec2 p(across(random), across(random));
    ASSERT_NEAR(outline.depth_mm(p), depth(p), kRounding_mm) << p.x << " " << p.y;
  }
  for (const OutlineElement &e : outline.elements())
    for (const Vec2 q : {e.begin, e.centre, 0.5 * (e.begin + e.end)})
      for (int i = -200; i <= 200; ++i) {
        const Vec2 along_x(0.1 * i, q.y), along_y(q.x, 0.1 * i);
        ASSERT_NEAR(outline.depth_mm(along_x), depth(along_x), kRounding_mm) << along_x.x << " " << along_x.y;
        ASSERT_NEAR(outline.depth_mm(along_y), depth(along_y), kRounding_mm) << along_y.x << " " << along_y.y;
      }
}

TEST(OutlineDepth, CircleMatchesRadiusLessDistance) {
  expect_depth(Outline::circle({3, 4}, 10.0), [](Vec2 p) { return 5.0 - glm::distance(p, Vec2(3, 4)); });
}

TEST(OutlineDepth, SlotMatchesDistanceToItsMidLine) {
  const Outline slot({{{-10, -4}, {10, -4}, {0, 0}, 0.0},
                      {{10, -4}, {10, 4}, {10, 0}, kPi},
                      {{10, 4}, {-10, 4}, {0, 0}, 0.0},
                      {{-10, 4}, {-10, -4}, {-10, 0}, kPi}});
  expect_depth(slot, [](Vec2 p) { return 4.0 - glm::distance(p, Vec2(std::clamp(p.x, -10.0, 10.0), 0.0)); });
}

TEST(OutlineDepth, RectangleMatchesTheBoxFormula) {
  expect_depth(Outline::rounded_rectangle({0, 0}, 24.0, 16.0, 0.0), [](Vec2 p) {
    const Vec2 beyond = glm::abs(p) - Vec2(12, 8);
    return -glm::length(glm::max(beyond, Vec2(0.0))) - std::min(0.0, std::max(beyond.x, beyond.y));
  });
}

TEST(OutlineDepth, RoundedRectangleMatchesTheBoxFormulaGrownByItsCorner) {
  expect_depth(Outline::rounded_rectangle({0, 0}, 24.0, 16.0, 3.0), [](Vec2 p) {
    const Vec2 beyond = glm::abs(p) - Vec2(9, 5);
    return 3.0 - glm::length(glm::max(beyond, Vec2(0.0))) - std::min(0.0, std::max(beyond.x, beyond.y));
  });
}

/// Three quarters of a disc, bounded by an arc of 270 degrees and two radii.
TEST(OutlineDepth, AnArcOfMoreThanHalfATurnIsFollowedTheLongWay) {
  const Outline sector(
      {{{0, 0}, {5, 0}, {0, 0}, 0.0}, {{5, 0}, {0, -5}, {0, 0}, 1.5 * kPi}, {{0, -5}, {0, 0}, {0, 0}, 0.0}});
  EXPECT_EQ(sector.fault(), "");
  EXPECT_NEAR(sector.area_mm2(), 0.75 * kPi * 25.0, 1e-11);
  expect_depth(sector, [](Vec2 p) {
    const auto to_line = [&](Vec2 a, Vec2 b) {
      const double t = std::clamp(glm::dot(p - a, b - a) / glm::dot(b - a, b - a), 0.0, 1.0);
      return glm::distance(p, a + t * (b - a));
    };
    const bool in_notch = p.x > 0.0 && p.y < 0.0;
    const double r = glm::length(p);
    const double to_arc =
        in_notch ? std::min(glm::distance(p, Vec2(5, 0)), glm::distance(p, Vec2(0, -5))) : std::abs(r - 5.0);
    const double distance = std::min({to_arc, to_line({0, 0}, {5, 0}), to_line({0, 0}, {0, -5})});
    return !in_notch && r < 5.0 ? distance : -distance;
  });
}

/// A lens of two arcs: inside is the least depth in either circle; outside the nearer of arcs and points.
TEST(OutlineDepth, ALensOfTwoArcsIsInsideBothCircles) {
  // Circles of radius 5 at (0, -3) and (0, 3) meet at (+-4, 0).
  const double sweep = 2.0 * std::asin(4.0 / 5.0);
  const Outline lens({{{4, 0}, {-4, 0}, {0, -3}, sweep}, {{-4, 0}, {4, 0}, {0, 3}, sweep}});
  EXPECT_EQ(lens.fault(), "");
  std::mt19937 random(3);
  std::uniform_real_distribution<double> across(-6.0, 6.0);
  for (int i = 0; i < 5000; ++i) {
    const Vec2 p(across(random), across(random));
    const double least = std::min(5.0 - glm::distance(p, Vec2(0, -3)), 5.0 - glm::distance(p, Vec2(0, 3)));
    ASSERT_EQ(lens.contains(p), least >= 0.0) << p.x << " " << p.y;
    if (least >= 0.0 && std::abs(p.x) < 1.0) { // near the middle both feet lie on the arcs
      ASSERT_NEAR(lens.depth_mm(p), least, kRounding_mm);
    }
  }
}

} // namespace
} // namespace asperity
