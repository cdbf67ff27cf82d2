// The areal Gaussian filter: weighted heights and weights are filtered along both axes, then divided.
#include "asperity/surface/areal_filter.h"

#include "asperity/base/parallel.h"
#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"

#include <algorithm>
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

/// residual_of(cell) of the chart's cells from `first` on; gaps are not finite.
template <class ResidualOf>
void put_cells(std::size_t first, int threads, HeightGrid &grid, ResidualOf residual_of) {
  grid.heights_mm.resize(grid.columns * grid.rows);
  grid.valid.resize(grid.columns * grid.rows);
  for_each_band(grid.valid.size(), kCells, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t at = begin; at < end; ++at) {
      const float residual_mm = residual_of(first + at);
      const bool usable = std::isfinite(residual_mm);
      grid.heights_mm[at] = usable ? residual_mm : 0.0f;
      grid.valid[at] = usable ? 1 : 0;
    }
  });
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

std::optional<HeightGrid> height_grid(const WallChart &chart, RowRange rows, int threads) {
  if (!is_even(chart.s_mm) || !is_even(chart.z_mm))
    return std::nullopt;
  HeightGrid grid;
  grid.columns = chart.columns();
  const std::size_t end = std::min(rows.end, chart.rows());
  grid.rows = end - rows.begin;
  grid.spacing_x_mm = chart.s_mm[1] - chart.s_mm[0];
  grid.spacing_y_mm = chart.z_mm[1] - chart.z_mm[0];
  // The columns go all the way round when one more spacing closes the outline.
  constexpr double kClosesWithin = 1e-3; // of a spacing
  const double gap_mm = chart.outline.length_mm() - grid.spacing_x_mm * static_cast<double>(grid.columns);
  if (std::abs(gap_mm) < kClosesWithin * grid.spacing_x_mm)
    grid.x_ends = ProfileEnds::closed;
  put_cells(chart.at(0, rows.begin), threads, grid,
            [&chart](std::size_t cell) { return chart.is_cut(cell) ? chart.residual_mm(cell) : kGap; });
  return grid;
}

HeightGrid height_grid(const FloorChart &chart, RowRange rows, int threads) {
  HeightGrid grid;
  grid.columns = chart.nx;
  const std::size_t end = std::min(rows.end, chart.ny);
  grid.rows = end - rows.begin;
  grid.spacing_x_mm = grid.spacing_y_mm = chart.spacing_mm;
  put_cells(chart.at(0, rows.begin), threads, grid, [&chart](std::size_t cell) {
    return chart.in_feature(cell) && chart.is_cut(cell) ? chart.residual_mm(cell) : kGap;
  });
  return grid;
}

std::size_t mean_reach_rows(double cutoff_mm, double spacing_y_mm) {
  return GaussianFilter(cutoff_mm, spacing_y_mm).reach();
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
