// A chart thinned out to a stated number of cells, for surfaces that travel: 3D views and exported meshes.
#pragma once

#include "asperity/predict/outcome.h"

#include <cstdint>
#include <string>
#include <vector>

namespace asperity {

enum class GridCell : std::uint8_t { absent, cut, uncut };

/// Each cell is the mean of a block of chart cells. Walls: column i stands at foot[i], row j at z_mm[j], e
/// along normal[i] (which leaves the material). Floors and domes: at x_mm[i], y_mm[j] over wanted height, e
/// along z.
struct SurfaceGrid {
  std::string name;
  bool is_wall = false, is_inside = false;
  std::size_t columns = 0, rows = 0;
  std::size_t chart_columns = 0, chart_rows = 0; ///< before thinning
  std::vector<Vec2> foot, normal;                ///< walls
  std::vector<double> z_mm;                      ///< walls
  std::vector<double> x_mm, y_mm, wanted_z_mm;   ///< floors and domes; wanted_z_mm one a cell
  std::vector<float> e_mm;                       ///< row by row; 0 where absent
  std::vector<GridCell> cell;

  std::size_t at(std::size_t column, std::size_t row) const { return row * columns + column; }
  /// Part frame; e `times` larger where cut.
  Vec3 point_mm(std::size_t column, std::size_t row, double times = 1.0) const;
};

inline constexpr std::size_t kViewCells = 24000;

/// At most `cells` cells (and 16 each way at least where the chart has them); walls keep more columns than
/// rows.
SurfaceGrid surface_grid(const Feature &feature, const Chart &chart, std::size_t cells);

} // namespace asperity
