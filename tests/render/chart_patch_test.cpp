// Charts as meshes: how many vertices, which are kept, what the grids over them hold.
#include "chart_patch.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace asperity {

namespace {

using test_support::rim_chart;

std::size_t vertices_of(const std::vector<ChartPatch> &patches) {
  std::size_t count = 0;
  for (const ChartPatch &patch : patches)
    count += patch.vertices.size();
  return count;
}

} // namespace

TEST(ChartPatch, KeepsWithinTheVerticesAllowed) {
  const Chart chart = rim_chart(0.05); // 1.1 million cells
  const SurfaceGrid grid(chart, 50.0);
  constexpr std::size_t kMost = 300000;
  constexpr double kEnds = 1.03; // last rows and columns and those beside an edge come on top
  const std::size_t count = vertices_of(patches_of(grid, kMost));
  EXPECT_LE(static_cast<double>(count), kEnds * kMost);
  EXPECT_GT(count, kMost / 4);
}

TEST(ChartPatch, KeepsBothRowsBesideTheLipsEdge) {
  const Chart chart = rim_chart(0.05);
  const SurfaceGrid grid(chart, 50.0);
  double highest_uncut = -1.0, lowest_cut = 1e9;
  for (const ChartPatch &patch : patches_of(grid, 20000))
    for (const SurfaceVertex &v : patch.vertices) {
      const auto z = static_cast<double>(v.place[2]);
      if (v.uncut > 0.5f)
        highest_uncut = std::max(highest_uncut, z);
      else
        lowest_cut = std::min(lowest_cut, z);
    }
  EXPECT_NEAR(lowest_cut - highest_uncut, 0.05, 1e-4); // one cell, though the mesh is several times coarser
}

TEST(ChartPatch, ClosesRoundTheWallAndEveryVertexStandsOnTheCircle) {
  const Chart chart = rim_chart(0.2);
  const SurfaceGrid grid(chart, 50.0);
  ASSERT_TRUE(grid.closes());
  EXPECT_EQ(grid.column(0), grid.column(grid.across() - 1));
  EXPECT_NEAR(grid.u_mm(grid.across() - 1) - grid.u_mm(0), 62.0 * std::numbers::pi, 1e-9);
  for (const ChartPatch &patch : patches_of(grid, 10000))
    for (const SurfaceVertex &v : patch.vertices)
      EXPECT_NEAR(std::hypot(v.place[0], v.place[1]), 31.0, 1e-4); // single precision
}

TEST(ChartPatch, LongChartsAreCutIntoPatchesThatShareTheirBorder) {
  FloorChart floor = make_floor_chart({0, 0}, {1000, 1}, 0.1, 0.0);
  std::fill(floor.envelope_mm.begin(), floor.envelope_mm.end(), 0.0f);
  std::fill(floor.blank_mm.begin(), floor.blank_mm.end(), 1.0f);
  const Chart chart = floor;
  const std::vector<ChartPatch> patches = patches_of(SurfaceGrid(chart, 0.0), 1000000);
  ASSERT_GE(patches.size(), 3u);
  for (std::size_t k = 0; k < patches.size(); ++k) {
    EXPECT_LE(patches[k].width, kMostTexels);
    if (k > 0) {
      EXPECT_EQ(patches[k].first_i, patches[k - 1].first_i + patches[k - 1].width - 1);
    }
  }
}

TEST(ChartPatch, UncutStockKeepsItsHeightUpToAFloorsEdge) {
  FloorChart floor = make_floor_chart({-10, -10}, {10, 10}, 0.1, 0.0);
  for (std::size_t j = 0; j < floor.ny; ++j)
    for (std::size_t i = 0; i < floor.nx; ++i) {
      const bool is_in = std::hypot(floor.x_mm(i), floor.y_mm(j)) < 8.0;
      floor.wanted_mm[floor.at(i, j)] = is_in ? 0.0f : std::nanf("");
      floor.blank_mm[floor.at(i, j)] = 0.4f; // nothing is cut
    }
  const Chart chart = floor;
  for (const ChartPatch &patch : patches_of(SurfaceGrid(chart, 0.0), 4000))
    for (std::uint32_t index : patch.triangles) {
      const SurfaceVertex &v = patch.vertices[index];
      if (std::hypot(v.place[0], v.place[1]) < 8.5f) {
        ASSERT_FLOAT_EQ(v.residual_mm, 0.4f);
        ASSERT_FLOAT_EQ(v.uncut, 1.0f);
      }
    }
}

TEST(SlopeTexels, OfAParabolaAreItsDerivative) {
  // derived: the central difference of a parabola is its derivative, exactly.
  FloorChart floor = make_floor_chart({0, 0}, {10, 4}, 0.1, 0.0);
  for (std::size_t j = 0; j < floor.ny; ++j)
    for (std::size_t i = 0; i < floor.nx; ++i) {
      const double x = floor.x_mm(i), y = floor.y_mm(j);
      floor.envelope_mm[floor.at(i, j)] = static_cast<float>(0.01 * x * x - 0.02 * y);
      floor.blank_mm[floor.at(i, j)] = 5.0f;
    }
  const Chart chart = floor;
  const SurfaceGrid grid(chart, 0.0);
  const ChartPatch patch = patches_of(grid, 100000).front();
  const std::vector<float> slopes = slope_texels(grid, patch);
  constexpr double kSingle = 2e-5; // heights of 1 mm in single precision over 0.2 mm
  const std::size_t i = 40, j = 17, at = 2 * (j * patch.width + i);
  EXPECT_NEAR(static_cast<double>(slopes[at]), 0.02 * floor.x_mm(i), kSingle);
  EXPECT_NEAR(static_cast<double>(slopes[at + 1]), -0.02, kSingle);
}

TEST(ResidualTexels, CarryTheCutSurfaceOnUnderTheLip) {
  const Chart chart = rim_chart(0.2);
  const SurfaceGrid grid(chart, 50.0);
  for (const ChartPatch &patch : patches_of(grid, 10000))
    for (float e : residual_texels(grid, patch))
      EXPECT_LT(e, 0.02f); // the lip stands 1 mm out, the cut wall 0.01 mm
}

} // namespace asperity
