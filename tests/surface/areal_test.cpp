// Areal parameters and the areal filter: ISO 25178-2:2021 definitions, ISO 16610-61 transmission.
#include "asperity/surface/areal_filter.h"
#include "asperity/surface/areal_parameters.h"
#include "asperity/surface/floor_marks.h"
#include "asperity/surface/kinematic.h"
#include "asperity/surface/profile_parameters.h"

#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"
#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {

HeightGrid grid_of(std::size_t columns, std::size_t rows, double spacing,
                   const std::function<double(double, double)> &height) {
  HeightGrid grid;
  grid.columns = columns;
  grid.rows = rows;
  grid.spacing_x_mm = grid.spacing_y_mm = spacing;
  for (std::size_t j = 0; j < rows; ++j)
    for (std::size_t i = 0; i < columns; ++i)
      grid.heights_mm.push_back(static_cast<float>(
          height((static_cast<double>(i) + 0.5) * spacing, (static_cast<double>(j) + 0.5) * spacing)));
  grid.valid.assign(columns * rows, 1);
  return grid;
}

} // namespace

TEST(Areal, RuledSurfaceHasItsProfilesParameters) {
  // Infinite along one axis: line and area integrals agree, so Sa = Ra, Sq = Rq, Sz = Rz. [derived]
  const auto profile = sampled(parabolic_cusp(1), 1000, 3);
  const auto p = profile_parameters(about_mean(profile), 0.001);
  std::vector<double> surface;
  for (int row = 0; row < 5; ++row)
    surface.insert(surface.end(), profile.begin(), profile.end());
  const ArealParameters a = areal_parameters(surface);
  EXPECT_NEAR(a.sa_mm, p.ra_mm, 1e-12);
  EXPECT_NEAR(a.sq_mm, p.rq_mm, 1e-12);
  EXPECT_NEAR(a.sz_mm, p.rz_mm, 1e-12);
  EXPECT_NEAR(a.ssk, p.rsk, 1e-10);
  EXPECT_NEAR(a.sku, p.rku, 1e-10);
  EXPECT_NEAR(a.sa_mm, cusp_ra_mm(1), 1e-6);
}

TEST(Areal, MaskedCellsDoNotCount) {
  const std::vector<double> heights = {1, -1, 1, -1, 1e9};
  const std::vector<std::uint8_t> valid = {1, 1, 1, 1, 0};
  const ArealParameters a = areal_parameters(heights, valid);
  EXPECT_EQ(a.cells, 4u);
  EXPECT_EQ(a.sa_mm, 1);
  EXPECT_EQ(a.sp_mm, 1);
  EXPECT_EQ(a.sv_mm, 1);
  EXPECT_EQ(a.sku, 1);
  EXPECT_EQ(areal_parameters(heights, std::vector<std::uint8_t>(5, 0)).cells, 0u);
}

TEST(Areal, BallPatternSampledMatchesItsClosedForm) {
  // Brute force over one cell of the grid; 800 x 800 midpoints and spheres for paraboloids: each 1e-5 to
  // 1e-4.
  constexpr double kSampling = 5e-4;
  for (const double stagger : {0.0, 0.5})
    for (const double feed : {0.3, 0.15, 0.7}) {
      const BallFloor floor{30, feed, 0.3, stagger};
      std::vector<double> heights;
      for (int i = 0; i < 800; ++i)
        for (int j = 0; j < 800; ++j)
          heights.push_back(ball_floor_texture_mm(floor, feed * (i + 0.5) / 800, 0.6 * (j + 0.5) / 800));
      const BallPattern pattern{30, 0.3, feed};
      const PatternHeights p = stagger > 0 ? staggered_ball_pattern(pattern) : square_ball_pattern(pattern);
      const ArealParameters a = areal_parameters(heights);
      EXPECT_NEAR(a.sa_mm, p.sa_mm, kSampling * p.sa_mm) << stagger << " " << feed;
      EXPECT_NEAR(a.sq_mm, p.sq_mm, kSampling * p.sq_mm) << stagger << " " << feed;
      EXPECT_NEAR(a.sz_mm, p.sz_mm, 20 * kSampling * p.sz_mm)
          << stagger << " " << feed; // no cell on the peak
    }
}

TEST(ArealFilter, CrossedWavesTransmitByTheProductOfBothAxes) {
  // A product of sines of 2 and 4 mm through a cutoff of 2 mm keeps 0.5 x 0.8408964 in the mean surface.
  constexpr double kFloat = 2e-6; // heights and sums are floats
  auto grid = grid_of(200, 600, 0.02, [](double x, double y) {
    return std::sin(2 * kPi * x / 2) * std::sin(2 * kPi * y / 4);
  });
  grid.x_ends = ProfileEnds::closed;
  const auto mean = mean_surface_mm(grid, 2);
  for (const std::size_t row : {150u, 250u, 350u}) // beyond a cutoff from the open ends
    for (std::size_t i = 0; i < 200; i += 7)
      EXPECT_NEAR(mean[grid.at(i, row)],
                  0.5 * 0.8408964 * static_cast<double>(grid.heights_mm[grid.at(i, row)]), kFloat);
}

TEST(ArealFilter, ConstantStaysFlatRoundGapsAndToItsEdges) {
  auto grid = grid_of(80, 60, 0.05, [](double, double) { return 0.25; });
  for (std::size_t i = 20; i < 30; ++i)
    for (std::size_t j = 10; j < 50; ++j) {
      grid.valid[grid.at(i, j)] = 0;
      grid.heights_mm[grid.at(i, j)] = 1e6f;
    }
  const HeightGrid rough = rough_surface(grid, {0.8, 0.2}, 1);
  for (std::size_t cell = 0; cell < rough.valid.size(); ++cell)
    ASSERT_NEAR(rough.heights_mm[cell], 0, 1e-6);
  EXPECT_EQ(areal_parameters(rough).cells, 80u * 60 - 400);
}

TEST(ArealFilter, ThreadsChangeNoDigit) {
  const auto grid = grid_of(300, 200, 0.01, [](double x, double y) { return std::sin(31 * x * y) + x; });
  EXPECT_EQ(mean_surface_mm(grid, 0.25, 1), mean_surface_mm(grid, 0.25, 2));
}

TEST(ArealFilter, GridsOfChartsKnowTheirGapsAndEnds) {
  WallChart wall = make_wall_chart(Outline::circle({0, 0}, 26.2), false, 0, 5, 0.25);
  std::fill(wall.blank_mm.begin(), wall.blank_mm.end(), 1.0f);
  std::fill(wall.envelope_mm.begin(), wall.envelope_mm.end(), 0.01f);
  wall.envelope_mm[7] = std::numeric_limits<float>::infinity();
  const auto grid = height_grid(wall);
  ASSERT_TRUE(grid.has_value());
  EXPECT_EQ(grid->x_ends, ProfileEnds::closed);
  EXPECT_EQ(grid->valid[7], 0);
  EXPECT_EQ(areal_parameters(*grid).cells, wall.columns() * wall.rows() - 1);
  const Outline circle = Outline::circle({0, 0}, 26.2);
  EXPECT_FALSE(height_grid(make_wall_chart(circle, false, {0, 1, 3}, {0, 1})).has_value());

  FloorChart floor = make_floor_chart({0, 0}, {2, 1}, 0.1, 0);
  std::fill(floor.envelope_mm.begin(), floor.envelope_mm.end(), 0.02f);
  floor.wanted_mm[3] = std::numeric_limits<float>::quiet_NaN();
  const HeightGrid flat = height_grid(floor);
  EXPECT_EQ(areal_parameters(flat).cells, floor.nx * floor.ny - 1);
  EXPECT_EQ(flat.spacing_y_mm, floor.spacing_mm);
}

TEST(ArealFilter, ABlockWithItsMarginHasTheMeanSurfaceOfTheWhole) {
  // Bit for bit, over the seam and at both ends, with gaps: a mean rests on the cells in reach, no others.
  WallChart wall = make_wall_chart(Outline::circle({0, 0}, 3), false, 0, 5, 0.1);
  std::fill(wall.blank_mm.begin(), wall.blank_mm.end(), 1.0f);
  for (std::size_t cell = 0; cell < wall.envelope_mm.size(); ++cell)
    if (cell % 7 != 3)
      wall.envelope_mm[cell] =
          static_cast<float>(0.1 * std::sin(0.37 * static_cast<double>(cell * cell % 1009)));
  constexpr double kCutoff_mm = 0.8;
  const HeightGrid whole = *height_grid(wall);
  ASSERT_EQ(whole.x_ends, ProfileEnds::closed);
  const std::vector<float> mean = mean_surface_mm(whole, kCutoff_mm, 1);
  const std::size_t margin = mean_reach_cells(kCutoff_mm, whole);
  for (const CellBlock block :
       {CellBlock{0, 20, 0, 10}, CellBlock{whole.columns - 15, 15, 12, whole.rows - 12},
        CellBlock{30, 25, 20, 9}, CellBlock{0, whole.columns, 0, whole.rows}}) {
    const HeightGrid part = height_grid(wall, block, margin);
    const std::vector<float> part_mean = mean_surface_mm(part, kCutoff_mm, 1);
    for (std::size_t j = 0; j < block.rows; ++j)
      for (std::size_t i = 0; i < block.columns; ++i)
        ASSERT_EQ(part_mean[part.at(margin + i, margin + j)], mean[whole.at(block.column + i, block.row + j)])
            << i << " " << j << " of the block at " << block.column;
  }
}
