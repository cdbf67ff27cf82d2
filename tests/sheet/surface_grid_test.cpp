// Charts thinned out: means, places, and what is said of them.
#include "asperity/sheet/surface_grid.h"

#include "asperity/base/units.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

TEST(SurfaceGrid, HoldsNoMoreCellsThanAskedFor) {
  const Outcome outcome = test_support::rim_outcome(0.1);
  const SurfaceGrid grid = surface_grid(outcome.job.features[0], outcome.charts[0], 6000);
  EXPECT_LE(grid.columns * grid.rows, 6000u);
  EXPECT_GE(grid.columns * grid.rows, 5500u);
  EXPECT_EQ(grid.chart_columns, std::get<WallChart>(outcome.charts[0]).columns());
}

TEST(SurfaceGrid, AnEvenWallKeepsItsMeanAndItsLip) {
  Outcome outcome = test_support::rim_outcome(0.2);
  WallChart &wall = std::get<WallChart>(outcome.charts[0]);
  for (std::size_t cell = 0; cell < wall.envelope_mm.size(); ++cell)
    if (wall.is_cut(cell))
      wall.envelope_mm[cell] = 0.0125f;
  const SurfaceGrid grid = surface_grid(outcome.job.features[0], outcome.charts[0], 6000);
  for (std::size_t k = 0; k < grid.cell.size(); ++k)
    EXPECT_EQ(grid.e_mm[k],
              grid.cell[k] == GridCell::cut ? 0.0125f : 1.0f); // the lip stands where the blank does
  const Vec3 drawn = grid.point_mm(0, grid.rows - 1, 10.0);
  EXPECT_NEAR(glm::length(plan(drawn)), 31.0 + 0.125, 1e-3);
  EXPECT_NEAR(glm::length(plan(grid.point_mm(0, 0, 10.0))), 31.0 + 1.0,
              1e-3); // uncut stock stays true to size
}

} // namespace
} // namespace asperity
