// The areal Gaussian filter: weighted heights and weights are filtered along both axes, then divided.
#include "asperity/surface/areal_filter.h"

#include "asperity/base/parallel.h"
#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Sums of weight x height and of weight over the valid cells; both rows of the same grid.
struct WeightedGrid {
  std::vector<float> height, weight;
};

bool is_even(const std::vector<double> &places) {
  constexpr double kEvenShare = 1e-6; // of a spacing; rounding of chart places stays far below
  if (places.size() < 2)
    return false;
  const double spacing = places[1] - places[0];
  for (std::size_t i = 1; i < places.size(); ++i)
    if (std::abs(places[i] - places[i - 1] - spacing) > kEvenShare * spacing)
      return false;
  return true;
}

/// So many cells at a time.
constexpr std::size_t kCells = std::size_t{1} << 16;

constexpr float kGap = std::numeric_limits<float>::infinity();

/// A pass has cut it, and it is the feature's.
float residual_or_gap(const WallChart &chart, std::size_t cell) {
  return chart.is_cut(cell) ? chart.residual_mm(cell) : kGap;
}

float residual_or_gap(const FloorChart &chart, std::size_t cell) {
  return chart.in_feature(cell) && chart.is_cut(cell) ? chart.residual_mm(cell) : kGap;
}

void put(HeightGrid &grid, std::size_t at, float residual_mm) {
  const bool usable = std::isfinite(residual_mm);
  grid.heights_mm[at] = usable ? residual_mm : 0.0f;
  grid.valid[at] = usable ? 1 : 0;
}

HeightGrid empty_grid(const GridShape &shape) {
  HeightGrid grid{shape, {}, {}};
  grid.heights_mm.resize(shape.columns * shape.rows);
  grid.valid.resize(shape.columns * shape.rows);
  return grid;
}

template <class AnyChart> HeightGrid whole_grid(const AnyChart &chart, const GridShape &shape, int threads) {
  HeightGrid grid = empty_grid(shape);
  for_each_band(grid.valid.size(), kCells, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t cell = begin; cell < end; ++cell)
      put(grid, cell, residual_or_gap(chart, cell));
  });
  return grid;
}

/// Which of the chart's `count` columns or rows is the block's at `at`, counted from a margin before the
/// chart's first; none beyond open ends.
std::optional<std::size_t> in_chart(std::size_t at, std::size_t margin, std::size_t count, ProfileEnds ends) {
  if (ends == ProfileEnds::closed)
    return (at + band_count(margin, count) * count - margin) % count;
  return at >= margin && at - margin < count ? std::optional(at - margin) : std::nullopt;
}

template <class AnyChart>
HeightGrid block_grid(const AnyChart &chart, const GridShape &shape, const CellBlock &block,
                      std::size_t margin) {
  HeightGrid grid = empty_grid({block.columns + 2 * margin, block.rows + 2 * margin, shape.spacing_x_mm,
                                shape.spacing_y_mm, ProfileEnds::open});
  std::vector<std::optional<std::size_t>> columns;
  for (std::size_t i = 0; i < grid.columns; ++i)
    columns.push_back(in_chart(block.column + i, margin, shape.columns, shape.x_ends));
  for (std::size_t j = 0; j < grid.rows; ++j) {
    const auto row = in_chart(block.row + j, margin, shape.rows, ProfileEnds::open);
    for (std::size_t i = 0; i < grid.columns && row; ++i)
      if (columns[i])
        put(grid, grid.at(i, j), residual_or_gap(chart, chart.at(*columns[i], *row)));
  }
  return grid;
}

/// Filter without end scaling: zeros beyond open ends count as gaps, which the division repairs.
std::vector<double> smooth_line(const GaussianFilter &filter, const std::vector<float> &line,
                                ProfileEnds ends) {
  if (ends == ProfileEnds::closed)
    return filter.mean_line(line, ends);
  std::vector<float> padded(line.size() + filter.reach(), 0.0f);
  std::copy(line.begin(), line.end(), padded.begin());
  // Followed by a kernel's reach of zeros, the line may as well be closed.
  std::vector<double> smooth = filter.mean_line(padded, ProfileEnds::closed);
  smooth.resize(line.size());
  return smooth;
}

/// Weights are often the same in neighbouring rows: then so is what becomes of them.
void smooth_rows(const HeightGrid &grid, const GaussianFilter &filter, int threads,
                 std::vector<float> &field) {
  constexpr std::size_t kBand = 8;
  for_each_band(grid.rows, kBand, threads, [&](std::size_t begin, std::size_t end) {
    std::vector<float> line;
    std::vector<double> smooth;
    for (std::size_t row = begin; row < end; ++row) {
      const auto first = field.begin() + static_cast<std::ptrdiff_t>(grid.at(0, row));
      const auto last = first + static_cast<std::ptrdiff_t>(grid.columns);
      if (line.empty() || !std::equal(first, last, line.begin())) {
        line.assign(first, last);
        smooth = smooth_line(filter, line, grid.x_ends);
      }
      std::transform(smooth.begin(), smooth.end(), first, [](double v) { return static_cast<float>(v); });
    }
  });
}

/// Side by side, as they lie in memory; of columns that are all the same, as those of weights often are, one.
void smooth_columns(const HeightGrid &grid, const GaussianFilter &filter, int threads,
                    std::vector<float> &field) {
  constexpr std::size_t kBand = 32;
  for_each_band(grid.columns, kBand, threads, [&](std::size_t begin, std::size_t end) {
    const auto row_of = [&](std::size_t row) { return field.data() + grid.at(begin, row); };
    const std::size_t width = end - begin;
    bool is_same = true;
    for (std::size_t row = 0; row < grid.rows && is_same; ++row)
      is_same = std::equal(row_of(row) + 1, row_of(row) + width, row_of(row));
    const std::size_t lines = is_same ? 1 : width;

    std::vector<double> padded((grid.rows + 2 * filter.reach()) * lines, 0.0), smooth(grid.rows * lines);
    for (std::size_t row = 0; row < grid.rows; ++row)
      std::copy_n(row_of(row), lines, padded.data() + (filter.reach() + row) * lines);
    filter.mean_lines(padded, lines, smooth);
    for (std::size_t row = 0; row < grid.rows; ++row)
      for (std::size_t i = 0; i < width; ++i)
        row_of(row)[i] = static_cast<float>(smooth[row * lines + (is_same ? 0 : i)]);
  });
}

} // namespace

std::optional<GridShape> grid_shape(const WallChart &chart) {
  if (!is_even(chart.s_mm) || !is_even(chart.z_mm))
    return std::nullopt;
  GridShape shape{.columns = chart.columns(),
                  .rows = chart.rows(),
                  .spacing_x_mm = chart.s_mm[1] - chart.s_mm[0],
                  .spacing_y_mm = chart.z_mm[1] - chart.z_mm[0]};
  // The columns go all the way round when one more spacing closes the outline.
  constexpr double kClosesWithin = 1e-3; // of a spacing
  const double gap_mm = chart.outline.length_mm() - shape.spacing_x_mm * static_cast<double>(shape.columns);
  if (std::abs(gap_mm) < kClosesWithin * shape.spacing_x_mm)
    shape.x_ends = ProfileEnds::closed;
  return shape;
}

GridShape grid_shape(const FloorChart &chart) {
  return {.columns = chart.nx,
          .rows = chart.ny,
          .spacing_x_mm = chart.spacing_mm,
          .spacing_y_mm = chart.spacing_mm};
}

std::optional<HeightGrid> height_grid(const WallChart &chart, int threads) {
  const std::optional<GridShape> shape = grid_shape(chart);
  return shape ? std::optional(whole_grid(chart, *shape, threads)) : std::nullopt;
}

HeightGrid height_grid(const FloorChart &chart, int threads) {
  return whole_grid(chart, grid_shape(chart), threads);
}

HeightGrid height_grid(const WallChart &chart, const CellBlock &block, std::size_t margin_cells) {
  const std::optional<GridShape> shape = grid_shape(chart);
  assert(shape);
  return block_grid(chart, *shape, block, margin_cells);
}

HeightGrid height_grid(const FloorChart &chart, const CellBlock &block, std::size_t margin_cells) {
  return block_grid(chart, grid_shape(chart), block, margin_cells);
}

std::size_t mean_reach_cells(double cutoff_mm, const GridShape &grid) {
  return GaussianFilter(cutoff_mm, std::min(grid.spacing_x_mm, grid.spacing_y_mm)).reach();
}

std::vector<float> mean_surface_mm(const HeightGrid &grid, double cutoff_mm, int threads) {
  const GaussianFilter along(cutoff_mm, grid.spacing_x_mm), across(cutoff_mm, grid.spacing_y_mm);
  WeightedGrid sums;
  const std::size_t cells = grid.heights_mm.size();
  sums.weight.resize(cells);
  sums.height.resize(cells);
  for_each_band(cells, kCells, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t cell = begin; cell < end; ++cell) {
      sums.weight[cell] = grid.valid[cell] ? 1.0f : 0.0f;
      sums.height[cell] = grid.valid[cell] ? grid.heights_mm[cell] : 0.0f;
    }
  });
  for (std::vector<float> *field : {&sums.height, &sums.weight}) {
    smooth_rows(grid, along, threads, *field);
    smooth_columns(grid, across, threads, *field);
  }

  // Below a millionth of a kernel nothing but the far tail is in reach.
  constexpr float kLeastWeight = 1e-6f;
  for_each_band(cells, kCells, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t cell = begin; cell < end; ++cell)
      sums.height[cell] = sums.weight[cell] > kLeastWeight ? sums.height[cell] / sums.weight[cell] : 0.0f;
  });
  return std::move(sums.height);
}

HeightGrid rough_surface(HeightGrid grid, const Bandwidth &band, int threads) {
  if (band.short_mm >= std::min(grid.spacing_x_mm, grid.spacing_y_mm))
    grid.heights_mm = mean_surface_mm(grid, band.short_mm, threads);
  const std::vector<float> mean = mean_surface_mm(grid, band.cutoff_mm, threads);
  for_each_band(mean.size(), kCells, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t cell = begin; cell < end; ++cell)
      grid.heights_mm[cell] = grid.valid[cell] ? grid.heights_mm[cell] - mean[cell] : 0.0f;
  });
  return grid;
}

} // namespace asperity
