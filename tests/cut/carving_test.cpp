// Rows and vectors against the plain formula, point by point.
#include "carving.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

using namespace asperity;

namespace {

constexpr int kNx = 70, kNy = 50;
const Stock::Grid kGrid{{-3.0, 2.0}, 0.21, kNx, kNy};

Vec2 grid_point(int i, int j) { return kGrid.origin_mm + Vec2(i, j) * kGrid.cell_mm; }

double distance_to_way(Vec2 p, Vec2 a, Vec2 ab) {
  const double length2 = glm::dot(ab, ab);
  const double u = length2 > 0.0 ? std::clamp(glm::dot(p - a, ab) / length2, 0.0, 1.0) : 0.0;
  return glm::length(p - a - u * ab);
}

/// Ways in all directions, along the axes, of no length, and partly off the grid.
std::vector<std::array<Vec2, 2>> some_ways() {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> x(-6.0, 15.0), y(0.0, 15.0), step(-1.5, 1.5);
  std::vector<std::array<Vec2, 2>> ways{{{{5, 7}, {5, 7}}}, {{{5, 7}, {6, 7}}}, {{{5, 7}, {5, 6}}}};
  for (int k = 0; k < 60; ++k) {
    const Vec2 a(x(random), y(random));
    ways.push_back({a, a + Vec2(step(random), step(random))});
  }
  return ways;
}

bool holds(const Swath &swath, int i, int j) {
  const int row = j - swath.first_row;
  return row >= 0 && row < static_cast<int>(swath.rows.size()) &&
         i >= swath.rows[static_cast<std::size_t>(row)].first &&
         i <= swath.rows[static_cast<std::size_t>(row)].last;
}

} // namespace

TEST(Swath, HoldsWhatIsInReachAndNotTooFarBehind) {
  constexpr double kReach_mm = 1.3, kBehind_mm = 0.2;
  // A swath is as wide as its box in the row, so it may hold more than what is in reach: counted against
  // that.
  constexpr double kRounding_mm = 1e-9;
  Swath all, ahead;
  for (const auto &[a, b] : some_ways()) {
    const Vec2 ab = b - a;
    find_swath(kGrid, a, ab, kReach_mm, std::nullopt, all);
    find_swath(kGrid, a, ab, kReach_mm, kBehind_mm, ahead);
    const double length = glm::length(ab);
    for (int j = 0; j < kNy; ++j)
      for (int i = 0; i < kNx; ++i) {
        const Vec2 p = grid_point(i, j);
        const double before = length > 0.0 ? glm::dot(p - a, ab) / length : 0.0;
        if (distance_to_way(p, a, ab) < kReach_mm - kRounding_mm) {
          EXPECT_TRUE(holds(all, i, j)) << i << " " << j;
          EXPECT_TRUE(before < -kBehind_mm + kRounding_mm || holds(ahead, i, j)) << i << " " << j;
        }
        EXPECT_TRUE(holds(all, i, j) || !holds(ahead, i, j));
        if (holds(ahead, i, j) && length > 0.0) {
          EXPECT_GT(before, -kBehind_mm - kRounding_mm);
        }
      }
  }
}

constexpr float kNothingIsDeep = -std::numeric_limits<float>::infinity();

TEST(CarveRows, LeavesTheSmallerOfDepthAndDistance) {
  constexpr double kRadius_mm = 1.5, kFloat_mm = 2e-6; // a ten-millionth of 15 mm and some
  Swath swath;
  for (const auto &[a, b] : some_ways()) {
    std::vector<float> layer(kNx * kNy + kCarvedAtOnce, 0.4F);
    find_swath(kGrid, a, b - a, kRadius_mm + 0.3, std::nullopt, swath);
    carve_rows(layer.data(), kGrid, swath, {kGrid.origin_mm - a, b - a, kRadius_mm}, kNothingIsDeep);
    for (int j = 0; j < kNy; ++j)
      for (int i = 0; i < kNx; ++i) {
        const double depth = distance_to_way(grid_point(i, j), a, b - a) - kRadius_mm;
        const double expected = holds(swath, i, j) ? std::min(depth, 0.4) : 0.4;
        EXPECT_NEAR(layer[static_cast<std::size_t>(j * kNx + i)], expected, kFloat_mm) << i << " " << j;
      }
    EXPECT_EQ(layer.back(), 0.4F) << "behind the grid's end nothing changes";
  }
}

TEST(CarveRows, LeavesAloneOnlyWhatIsDeepAlready) {
  constexpr float kDeep_mm = -0.8F;
  std::mt19937 random(9);
  std::uniform_real_distribution<float> some_mm(-1.2F, 0.2F);
  Swath swath;
  std::size_t left_alone = 0;
  for (const auto &[a, b] : some_ways()) {
    std::vector<float> before(kNx * kNy + kCarvedAtOnce);
    for (std::size_t i = 0; i < before.size(); ++i) // whole stretches of points that are deep
      before[i] = i / 16 % 2 == 0 ? -1.0F : some_mm(random);
    std::vector<float> exact = before, carved = before;
    find_swath(kGrid, a, b - a, 1.8, std::nullopt, swath);
    const Capsule capsule{kGrid.origin_mm - a, b - a, 1.5};
    carve_rows(exact.data(), kGrid, swath, capsule, kNothingIsDeep);
    carve_rows(carved.data(), kGrid, swath, capsule, kDeep_mm);
    for (std::size_t i = 0; i < before.size(); ++i) {
      if (before[i] > kDeep_mm) {
        EXPECT_EQ(carved[i], exact[i]) << i;
      } else {
        EXPECT_TRUE(carved[i] == exact[i] || carved[i] == before[i]) << i;
        left_alone += carved[i] != exact[i] ? 1 : 0;
      }
    }
  }
  EXPECT_GT(left_alone, 0u);
}

TEST(LowerSurface, IsTheCuttersLowerSideOverItsWay) {
  constexpr double kTop_mm = 9.0, kFloat_mm = 1e-5;
  Swath swath;
  for (const CutterProfile &profile : {CutterProfile::flat(1.5), CutterProfile::ball(1.5)})
    for (const auto &[a, b] : some_ways()) {
      std::vector<float> surface(kNx * kNy + kCarvedAtOnce, static_cast<float>(kTop_mm));
      find_swath(kGrid, a, b - a, 1.8, std::nullopt, swath);
      lower_surface(surface.data(), kGrid, swath, {a, {0, 0}, 4.0}, {b, {0, 0}, 4.5}, profile);
      for (int j = 0; j < kNy; ++j)
        for (int i = 0; i < kNx; ++i) {
          const Vec2 p = grid_point(i, j), ab = b - a;
          const double length2 = glm::dot(ab, ab);
          const double u = length2 > 0.0 ? std::clamp(glm::dot(p - a, ab) / length2, 0.0, 1.0) : 0.0;
          const double rho = glm::length(p - a - u * ab);
          const double expected =
              rho <= 1.5 ? std::min(kTop_mm, 4.0 + 0.5 * u + profile.height_at(rho)) : kTop_mm;
          EXPECT_NEAR(surface[static_cast<std::size_t>(j * kNx + i)], expected, kFloat_mm) << i << " " << j;
        }
    }
}
