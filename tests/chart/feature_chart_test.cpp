// Charts of features: what the blank and the feature say, cell by cell, whatever is copied and shared.
#include "asperity/chart/feature_chart.h"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>

namespace asperity {
namespace {

constexpr double kBlank_mm = 31.6, kWall_mm = 31.0;

Job job_with(BlankShape shape) {
  Job job;
  job.blank.shape = shape;
  job.blank.diameter_mm = 2 * kBlank_mm;
  job.blank.z_bottom_mm = 0, job.blank.z_top_mm = 12;
  job.blank.elephant_foot_mm = 0.3, job.blank.elephant_foot_height_mm = 1.5;
  job.blank.profile_mm = {{kBlank_mm + 1, 0}, {kBlank_mm, 6}, {kBlank_mm + 0.5, 12}};
  job.blank.rounds = {{{25, 0}, 14, 4, 9, true}};
  return job;
}

WallFeature rim() {
  WallFeature wall;
  wall.outline = Outline::circle({0, 0}, 2 * kWall_mm);
  wall.diameter_mm = 2 * kWall_mm;
  wall.z_bottom_mm = 0, wall.z_top_mm = 13;
  return wall;
}

FloorFeature face() {
  FloorFeature floor;
  floor.outline = Outline::circle({0, 0}, 2 * kWall_mm);
  floor.islands = {Outline::circle({0, 0}, 20)};
  floor.z_mm = 11.5;
  return floor;
}

/// Off a floor nothing is a number, and no such value equals another.
bool have_same_bits(const LargeArray<float> &a, const LargeArray<float> &b) {
  return a.size() == b.size() && std::memcmp(a.data(), b.data(), a.size() * sizeof(float)) == 0;
}

TEST(FeatureChart, WallsHoldTheBlanksStockInEveryCell) {
  for (const BlankShape shape : {BlankShape::cylinder, BlankShape::revolved}) {
    const Job job = job_with(shape);
    const WallChart chart = wall_chart_of(job, rim(), 0.25, 1);
    for (std::size_t row = 0; row < chart.rows(); ++row)
      for (std::size_t column = 0; column < chart.columns(); ++column)
        ASSERT_EQ(chart.blank_mm[chart.at(column, row)],
                  static_cast<float>(job.blank.wall_stock_mm(chart.foot[column], chart.normal[column],
                                                             chart.z_mm[row], chart.band_mm)))
            << column << " " << row;
  }
}

TEST(FeatureChart, AConcentricBlankStandsOutByTheDifferenceOfRadii) {
  // Above the foot and the hole; above the blank there is none of it. [plane geometry]
  constexpr double kFloat_mm = 1e-6;
  const WallChart chart = wall_chart_of(job_with(BlankShape::cylinder), rim(), 0.25, 2);
  for (std::size_t row = 0; row < chart.rows(); ++row) {
    const float stock = chart.blank_mm[chart.at(chart.columns() / 2, row)];
    if (chart.z_mm[row] > 1.5 && chart.z_mm[row] < 12) {
      EXPECT_NEAR(stock, kBlank_mm - kWall_mm, kFloat_mm) << row;
    } else if (chart.z_mm[row] > 12) {
      EXPECT_EQ(stock, -chart.band_mm) << row;
    }
  }
}

TEST(FeatureChart, FloorsAreWantedWithinTheirEdgesOnly) {
  const FloorChart chart =
      floor_chart_of(job_with(BlankShape::cylinder), face(), {-33, -33}, {33, 33}, 0.3, 1);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      const double rho = std::hypot(chart.x_mm(i), chart.y_mm(j));
      const bool is_wanted = rho <= kWall_mm - kFloorEdge_mm && rho >= 10.0 + kFloorEdge_mm;
      ASSERT_EQ(chart.in_feature(chart.at(i, j)), is_wanted) << rho;
      if (is_wanted) {
        ASSERT_EQ(chart.blank_mm[chart.at(i, j)], 0.5f) << "the blank's top is 0.5 mm up, the hole is blind";
      }
    }
}

TEST(FeatureChart, BitsDoNotDependOnThreads) {
  const Job job = job_with(BlankShape::cylinder);
  const WallChart wall = wall_chart_of(job, rim(), 0.1, 1);
  const FloorChart floor = floor_chart_of(job, face(), {-20, -5}, {20, 7}, 0.1, 1);
  for (const int threads : {2, 3, 0}) {
    EXPECT_EQ(wall_chart_of(job, rim(), 0.1, threads).blank_mm, wall.blank_mm);
    EXPECT_EQ(wall_chart_of(job, rim(), 0.1, threads).foot, wall.foot);
    const FloorChart other = floor_chart_of(job, face(), {-20, -5}, {20, 7}, 0.1, threads);
    EXPECT_TRUE(have_same_bits(other.blank_mm, floor.blank_mm));
    EXPECT_TRUE(have_same_bits(other.wanted_mm, floor.wanted_mm));
  }
}

} // namespace
} // namespace asperity
