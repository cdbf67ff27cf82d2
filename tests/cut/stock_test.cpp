// The coarse stock against plane geometry.
#include "walk_scene.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

Job round_job() {
  Job job = bar_job(0.0);
  job.blank.shape = BlankShape::cylinder;
  job.blank.centre = {0, 0};
  job.blank.diameter_mm = 40;
  return job;
}

constexpr double kCell_mm = 0.2;

TEST(Stock, PlacesARoundSideWithinTheStatedBound) {
  const Job job = round_job();
  const Stock stock(job.blank, layer_bounds(0, 10, {}, 1.0, 20), kCell_mm);
  const double bound = kCell_mm * kCell_mm / (8.0 * 20.0) + 1e-5; // float storage
  for (int i = 0; i < 100; ++i) {
    const double a = 0.0631 * i;
    EXPECT_NEAR(stock.depth_mm(3, 20.0 * Vec2(std::cos(a), std::sin(a))), 0.0, 2.0 * bound);
  }
}

TEST(Stock, EveryLayerIsTheBlanksOwnSlice) {
  // A foot at the bottom, a hole from below, a boss on top, a bore all through: slices alike and not.
  Job job = round_job();
  job.blank.elephant_foot_mm = 0.3, job.blank.elephant_foot_height_mm = 1.5;
  job.blank.rounds = {
      {{3, 2}, 6.0, 0.0, 4.0, true}, {{-4, 0}, 5.0, 10.0, 13.0, false}, {{0, -8}, 4.0, 0.0, 10.0, true}};
  for (const BlankShape shape : {BlankShape::cylinder, BlankShape::revolved}) {
    job.blank.shape = shape;
    job.blank.profile_mm = {{20, 0}, {18, 6}, {18, 10}};
    const Stock stock(job.blank, layer_bounds(0, 13, {4.0, 10.0}, 0.7, 40), kCell_mm);
    const Stock::Grid &grid = stock.grid();
    for (std::size_t l = 0; l < stock.layers(); ++l)
      for (int j = 0; j + 1 < grid.ny; j += 7)
        for (int i = 0; i + 1 < grid.nx; i += 5) {
          const Vec2 p = grid.origin_mm + Vec2(i, j) * grid.cell_mm;
          const double z = 0.5 * (stock.bottom_mm(l) + stock.top_mm(l));
          const auto expected = static_cast<double>(static_cast<float>(job.blank.plan_depth_mm(p, z)));
          ASSERT_NEAR(stock.depth_mm(l, p), expected, 1e-9 * std::abs(expected) + 1e-9)
              << l << " " << i << " " << j;
        }
  }
}

TEST(Stock, DepthsOnACircleAreThoseOfItsPlaces) {
  const Job job = bar_job(0.0);
  Stock stock(job.blank, layer_bounds(0, 10, {5.0}, 1.0, 20), kCell_mm);
  stock.carve({{10, 10}, {0, 0}, 5.0}, {{50, 12}, {0.001, 0}, 5.0}, CutterProfile::flat(3.0), 20.0);
  Stock::Places places;
  for (std::size_t i = 0; i < Stock::kPlaces; ++i)
    places.x[i] = std::sin(0.2 * static_cast<double>(i)),
    places.y[i] = std::cos(0.2 * static_cast<double>(i));
  Stock::Depths depths;
  for (const Vec2 centre :
       {Vec2(30, 11), Vec2(10, 10), Vec2(0, 0), Vec2(59, 19), Vec2(-40, 10)}) // also off the grid
    for (const std::size_t l : {std::size_t{2}, stock.layers() - 1}) {
      stock.depths_mm(l, centre, 3.0, places, depths);
      for (std::size_t i = 0; i < Stock::kPlaces; ++i)
        EXPECT_EQ(depths[i], stock.depth_mm(l, centre + 3.0 * Vec2(places.x[i], places.y[i])));
    }
}

TEST(Stock, CarvedGrooveHasTheCuttersWidth) {
  const Job job = bar_job(0.0);
  Stock stock(job.blank, layer_bounds(0, 10, {5.0}, 1.0, 20), kCell_mm);
  const CutterProfile flat = CutterProfile::flat(3.0);
  stock.carve({{10, 10}, {0, 0}, 5.0}, {{50, 10}, {0, 0}, 5.0}, flat, 20.0);
  EXPECT_NEAR(stock.depth_mm(7, {30, 13}), 0.0, 1e-5);
  EXPECT_NEAR(stock.depth_mm(7, {30, 12.9}), -0.1, 1e-5);
  EXPECT_NEAR(stock.depth_mm(7, {30, 13.1}), 0.1, 1e-5);
  EXPECT_GT(stock.depth_mm(2, {30, 10}), 1.0) << "below the tip nothing is cut";
  EXPECT_NEAR(stock.surface_mm({30, 10}), 5.0, 1e-5);
  EXPECT_NEAR(stock.surface_mm({30, 15}), 10.0, 1e-5);
}

TEST(Stock, ChainedStrokesLeaveWhatSingleOnesLeave) {
  // A round, a sharp corner, straight back, a step down and a standing stroke; bent more and more.
  std::vector<Stock::Stroke> ends;
  for (int i = 0; i <= 40; ++i)
    ends.push_back({Vec2(20, 10) + 6.0 * Vec2(std::sin(0.1 * i), std::cos(0.1 * i)), {1e-4 * i, 0}, 5.0});
  for (const Vec2 at : {Vec2(30, 12), Vec2(44, 12), Vec2(30, 12)})
    ends.push_back({at, {0.002, 0.001}, 5.0});
  for (const double tip : {3.0, 3.0, 2.5})
    ends.push_back({Vec2(30, 10 + tip), {0.0, 0.001}, tip});
  const Job job = bar_job(0.0);
  const std::vector<double> bounds = layer_bounds(0, 10, {5.0, 3.0}, 1.0, 20);
  Stock chained(job.blank, bounds, kCell_mm), single(job.blank, bounds, kCell_mm);
  const CutterProfile flat = CutterProfile::flat(3.0);
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    chained.carve(ends[i], ends[i + 1], flat, 20.0);
    single.carve(ends[i], ends[i + 1], flat, 20.0);
    single.carve({{-900, 0}, {0, 0}, 5.0}, {{-901, 0}, {0, 0}, 5.0}, flat,
                 20.0); // far away: breaks the chain
  }
  constexpr double kFloat_mm =
      5e-6; // two strokes of 14 mm, each off by a ten-millionth of its length and more
  for (double x = 5.0; x < 55.0; x += 0.07)
    for (double y = 0.0; y < 20.0; y += 0.13) {
      EXPECT_EQ(chained.surface_mm({x, y}), single.surface_mm({x, y}));
      // Deeper inside, grid points beyond the stroke's reach are left as they are.
      const auto read_mm = [&](const Stock &stock, std::size_t l) {
        return std::min(stock.depth_mm(l, {x, y}), 0.01);
      };
      for (std::size_t l = 0; l < single.layers(); ++l)
        ASSERT_NEAR(read_mm(chained, l), read_mm(single, l), kFloat_mm) << x << " " << y;
    }
}

TEST(Stock, IsExactAsFarAwayFromItsSideAsItsCuttersCanTell) {
  constexpr double kRadius_mm = 3.0;
  const Job job = bar_job(0.0);
  Stock exact(job.blank, {0.0, 5.0, 10.0}, kCell_mm);
  Stock told(job.blank, {0.0, 5.0, 10.0}, kCell_mm, 1, kRadius_mm);
  const CutterProfile flat = CutterProfile::flat(kRadius_mm);
  Vec2 at(-6, 3);
  for (int lap = 0; lap < 3; ++lap)
    for (int i = 0; i < 120; ++i) {
      const Vec2 to(-6 + 0.6 * i, 3.0 + 2.0 * lap + std::sin(0.2 * i));
      for (Stock *stock : {&exact, &told})
        stock->carve({at, {0.001, 0}, 5.0}, {to, {0.001, 0}, 5.0}, flat, 20.0);
      at = to;
    }
  // From one mark of a circle in the stock to the next, 5 degrees on.
  const double mark_mm = kRadius_mm * kPi / 36;
  std::size_t near_side = 0, far = 0;
  for (double x = -1.0; x < 61.0; x += 0.07)
    for (double y = -1.0; y < 21.0; y += 0.13) {
      const double a = exact.depth_mm(1, {x, y}), b = told.depth_mm(1, {x, y});
      if (a > -mark_mm) {
        ++near_side;
        ASSERT_EQ(a, b) << x << " " << y;
      } else {
        ++far;
        ASSERT_LT(b, -0.5 * mark_mm) << x << " " << y;
        ASSERT_GE(b, a) << x << " " << y;
      }
    }
  EXPECT_GT(near_side, 10000u);
  EXPECT_GT(far, 10000u);
}

TEST(Stock, LayerTheTipHasNotPassedKeepsItsSidesAndRemembersItsHeight) {
  const Job job = bar_job(0.0);
  Stock stock(job.blank, {0.0, 5.0, 10.0}, kCell_mm);
  stock.carve({{10, 10}, {0, 0}, 7.0}, {{50, 10}, {0, 0}, 7.0}, CutterProfile::flat(3.0), 20.0);
  EXPECT_GT(stock.depth_mm(1, {30, 10}), 1.0);
  EXPECT_NEAR(stock.surface_mm({30, 10}), 7.0, 1e-5);
}

TEST(Stock, LayerOfWhichNextToNothingIsLeftIsPassed) {
  const Job job = bar_job(0.0);
  for (const double left_mm : {0.0004, 0.02}) {
    Stock stock(job.blank, {0.0, 5.0, 10.0}, kCell_mm);
    const double tip_mm = 5.0 + left_mm;
    stock.carve({{10, 10}, {0, 0}, tip_mm}, {{50, 10}, {0, 0}, tip_mm}, CutterProfile::flat(3.0), 20.0);
    EXPECT_NEAR(stock.depth_mm(1, {30, 10}), -3.0, 0.01) << left_mm;
    EXPECT_GT(stock.depth_mm(0, {30, 10}), 1.0) << left_mm;
  }
}

TEST(LayerBounds, HoldTheLevelsAndAreNoThickerThanAsked) {
  const std::vector<double> bounds = layer_bounds(0, 10, {2.3, 4.6, 4.6, 20.0, -1.0}, 1.0, 100);
  EXPECT_EQ(bounds.front(), 0.0);
  EXPECT_EQ(bounds.back(), 10.0);
  EXPECT_EQ(std::count(bounds.begin(), bounds.end(), 4.6), 1);
  for (std::size_t i = 1; i < bounds.size(); ++i) {
    EXPECT_GT(bounds[i], bounds[i - 1]);
    EXPECT_LE(bounds[i] - bounds[i - 1], 1.0 + 1e-9);
  }
  EXPECT_LE(layer_bounds(0, 100, {}, 0.5, 50).size(), 51U);
}

} // namespace
} // namespace asperity::test
