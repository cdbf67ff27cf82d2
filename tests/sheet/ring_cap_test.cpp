// Flat faces between rings: area, count and direction of the triangles.
#include "ring_cap.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <map>

namespace asperity {
namespace {

std::vector<Vec2> circle(Vec2 centre, double radius, int corners) {
  std::vector<Vec2> ring;
  for (int k = 0; k < corners; ++k)
    ring.push_back(centre + radius * Vec2(std::cos(2 * kPi * k / corners), std::sin(2 * kPi * k / corners)));
  return ring;
}

double circle_area(double radius, int corners) {
  return 0.5 * corners * radius * radius * std::sin(2 * kPi / corners);
}

std::vector<Vec2> all_of(const std::vector<Vec2> &outer, const std::vector<std::vector<Vec2>> &holes) {
  std::vector<Vec2> all = outer;
  for (const auto &hole : holes)
    all.insert(all.end(), hole.begin(), hole.end());
  return all;
}

/// Area; every triangle must run counter-clockwise, and every ring edge occur once.
double checked_area(const std::vector<Vec2> &outer, const std::vector<std::vector<Vec2>> &holes) {
  const auto cap = ring_cap(outer, holes);
  const std::vector<Vec2> points = all_of(outer, holes);
  // derived: a region of n corners with h holes has n + 2 h - 2 triangles (Euler).
  EXPECT_EQ(cap.size(), points.size() + 2 * holes.size() - 2);
  double area = 0.0;
  std::map<std::pair<std::size_t, std::size_t>, int> edges;
  for (const auto &[a, b, c] : cap) {
    const double twice = cross(points[b] - points[a], points[c] - points[a]);
    EXPECT_GT(twice, 0.0);
    area += 0.5 * twice;
    for (const auto &[p, q] : {std::pair{a, b}, std::pair{b, c}, std::pair{c, a}})
      ++edges[{std::min(p, q), std::max(p, q)}];
  }
  std::size_t single = 0;
  for (const auto &[edge, times] : edges) {
    EXPECT_LE(times, 2);
    single += times == 1 ? 1 : 0;
  }
  EXPECT_EQ(single, points.size()); // as many border edges as corners
  return area;
}

TEST(RingCap, FillsACircle) {
  EXPECT_NEAR(checked_area(circle({3, 4}, 10, 60), {}), circle_area(10, 60), 1e-9);
}

TEST(RingCap, LeavesHolesOpen) {
  EXPECT_NEAR(checked_area(circle({0, 0}, 31, 200),
                           {circle({0, 0}, 5, 50), circle({20, 0}, 4, 30), circle({-18, 6}, 6, 41)}),
              circle_area(31, 200) - circle_area(5, 50) - circle_area(4, 30) - circle_area(6, 41), 1e-9);
}

TEST(RingCap, StraightRunsOfManyPointsAreFilled) {
  std::vector<Vec2> square;
  for (int k = 0; k < 20; ++k)
    square.push_back({k * 0.5, 0});
  for (int k = 0; k < 20; ++k)
    square.push_back({10, k * 0.5});
  for (int k = 0; k < 20; ++k)
    square.push_back({10 - k * 0.5, 10});
  for (int k = 0; k < 20; ++k)
    square.push_back({0, 10 - k * 0.5});
  EXPECT_NEAR(checked_area(square, {circle({5, 5}, 2, 24)}), 100.0 - circle_area(2, 24), 1e-9);
}

TEST(RingCap, AHollowOutlineIsFilled) {
  const std::vector<Vec2> horseshoe = {{0, 0}, {9, 0}, {9, 6}, {6, 6}, {6, 3}, {3, 3}, {3, 6}, {0, 6}};
  EXPECT_NEAR(checked_area(horseshoe, {}), 9 * 6 - 3 * 3, 1e-12);
}

} // namespace
} // namespace asperity
