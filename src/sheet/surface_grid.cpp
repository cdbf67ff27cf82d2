// Charts thinned out by block means.
#include "asperity/sheet/surface_grid.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr std::size_t kLeastEachWay = 16;
constexpr std::size_t kMostWallRows = 48; ///< marks on walls run up and down: columns matter more

/// Ends of `parts` blocks of nearly equal size.
std::vector<std::size_t> block_ends(std::size_t count, std::size_t parts) {
  std::vector<std::size_t> ends;
  for (std::size_t k = 1; k <= parts; ++k)
    ends.push_back(k * count / parts);
  return ends;
}

double mean(const std::vector<double> &values, std::size_t begin, std::size_t end) {
  double sum = 0.0;
  for (std::size_t k = begin; k < end; ++k)
    sum += values[k];
  return sum / static_cast<double>(end - begin);
}

std::vector<double> means(const std::vector<double> &values, const std::vector<std::size_t> &ends) {
  std::vector<double> out;
  std::size_t begin = 0;
  for (const std::size_t end : ends) {
    out.push_back(mean(values, begin, end));
    begin = end;
  }
  return out;
}

struct BlockSum {
  double cut = 0, uncut = 0, wanted = 0;
  std::size_t cut_cells = 0, uncut_cells = 0;

  std::size_t cells() const { return cut_cells + uncut_cells; }
  bool is_cut() const { return cut_cells > 0 && cut_cells >= uncut_cells; }
};

bool in_feature(const WallChart &, std::size_t) { return true; }
bool in_feature(const FloorChart &chart, std::size_t cell) { return chart.in_feature(cell); }
double wanted_z(const WallChart &, std::size_t) { return 0.0; }
double wanted_z(const FloorChart &chart, std::size_t cell) {
  return chart.base_mm + static_cast<double>(chart.wanted_mm[cell]);
}

/// No blank stood here, or it reached past every bound: shown where it is wanted.
double finite_residual(double e) { return std::isfinite(e) ? e : 0.0; }

template <typename C>
BlockSum block_sum(const C &chart, std::size_t i0, std::size_t i1, std::size_t j0, std::size_t j1) {
  BlockSum sum;
  for (std::size_t j = j0; j < j1; ++j)
    for (std::size_t i = i0; i < i1; ++i) {
      const std::size_t cell = chart.at(i, j);
      if (!in_feature(chart, cell))
        continue;
      const double e = finite_residual(static_cast<double>(chart.residual_mm(cell)));
      sum.wanted += wanted_z(chart, cell);
      (chart.is_cut(cell) ? sum.cut : sum.uncut) += e;
      ++(chart.is_cut(cell) ? sum.cut_cells : sum.uncut_cells);
    }
  return sum;
}

template <typename C>
void fill_cells(SurfaceGrid &grid, const C &chart, const std::vector<std::size_t> &column_ends,
                const std::vector<std::size_t> &row_ends) {
  for (std::size_t j = 0; j < row_ends.size(); ++j)
    for (std::size_t i = 0; i < column_ends.size(); ++i) {
      const BlockSum sum = block_sum(chart, i == 0 ? 0 : column_ends[i - 1], column_ends[i],
                                     j == 0 ? 0 : row_ends[j - 1], row_ends[j]);
      const bool is_absent = sum.cells() == 0, is_cut = sum.is_cut();
      grid.cell.push_back(is_absent ? GridCell::absent : is_cut ? GridCell::cut : GridCell::uncut);
      const double e = is_absent ? 0.0
                       : is_cut  ? sum.cut / static_cast<double>(sum.cut_cells)
                                 : sum.uncut / static_cast<double>(sum.uncut_cells);
      grid.e_mm.push_back(static_cast<float>(e));
      if (!grid.is_wall)
        grid.wanted_z_mm.push_back(is_absent ? 0.0 : sum.wanted / static_cast<double>(sum.cells()));
    }
}

void thin_wall(SurfaceGrid &grid, const WallChart &chart, std::size_t cells) {
  grid.rows = std::min(chart.rows(), kMostWallRows);
  grid.columns = std::clamp(cells / std::max<std::size_t>(grid.rows, 1),
                            std::min(kLeastEachWay, chart.columns()), chart.columns());
  const auto column_ends = block_ends(chart.columns(), grid.columns),
             row_ends = block_ends(chart.rows(), grid.rows);
  grid.z_mm = means(chart.z_mm, row_ends);
  for (const double s : means(chart.s_mm, column_ends)) {
    grid.foot.push_back(chart.outline.point(s));
    grid.normal.push_back((chart.inside ? -1.0 : 1.0) * chart.outline.outward_normal(s));
  }
  fill_cells(grid, chart, column_ends, row_ends);
}

void thin_floor(SurfaceGrid &grid, const FloorChart &chart, std::size_t cells) {
  const double share =
      std::sqrt(static_cast<double>(cells) / std::max(1.0, double(chart.nx) * double(chart.ny)));
  const auto thinned = [&](std::size_t count) {
    return std::clamp(static_cast<std::size_t>(share * double(count)), std::min(kLeastEachWay, count), count);
  };
  grid.columns = thinned(chart.nx);
  grid.rows = thinned(chart.ny);
  std::vector<double> x, y;
  for (std::size_t i = 0; i < chart.nx; ++i)
    x.push_back(chart.x_mm(i));
  for (std::size_t j = 0; j < chart.ny; ++j)
    y.push_back(chart.y_mm(j));
  const auto column_ends = block_ends(chart.nx, grid.columns), row_ends = block_ends(chart.ny, grid.rows);
  grid.x_mm = means(x, column_ends);
  grid.y_mm = means(y, row_ends);
  fill_cells(grid, chart, column_ends, row_ends);
}

} // namespace

Vec3 SurfaceGrid::point_mm(std::size_t i, std::size_t j, double times) const {
  const double e = static_cast<double>(e_mm[at(i, j)]) * (cell[at(i, j)] == GridCell::cut ? times : 1.0);
  if (is_wall)
    return {foot[i] + e * normal[i], z_mm[j]};
  return {x_mm[i], y_mm[j], wanted_z_mm[at(i, j)] + e};
}

SurfaceGrid surface_grid(const Feature &feature, const Chart &chart, std::size_t cells) {
  SurfaceGrid grid;
  grid.name = name_of(feature);
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    grid.is_wall = true;
    grid.is_inside = wall->inside;
    grid.chart_columns = wall->columns();
    grid.chart_rows = wall->rows();
    if (grid.chart_columns > 0 && grid.chart_rows > 0)
      thin_wall(grid, *wall, cells);
  } else {
    const auto &floor = std::get<FloorChart>(chart);
    grid.chart_columns = floor.nx;
    grid.chart_rows = floor.ny;
    if (floor.nx > 0 && floor.ny > 0)
      thin_floor(grid, floor, cells);
  }
  return grid;
}

} // namespace asperity
