// What the cut wall looks like away from flaws: the level from which a lip stands out.
#include "wall_reference.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// A lip proud of the wall by less than this is left to the taper [mm].
constexpr double kLeastProud_mm = 0.05;
/// Where no pass reaches, the edge is sharp: this much is already a lip [mm].
constexpr double kLeastEdge_mm = 0.005;
/// Rows used for the line over height, and cells for the spread: enough for a median.
constexpr std::size_t kMostRows = 200;
constexpr std::size_t kMostCells = 100000;

/// Of the cut cells; NaN where there are next to none.
double row_middle(const WallChart &chart, std::size_t row, std::vector<float> &room) {
  constexpr std::size_t kLeastShare = 20; // one of so many
  room.clear();
  for (std::size_t i = 0; i < chart.columns(); ++i)
    if (chart.is_cut(chart.at(i, row)))
      room.push_back(chart.envelope_mm[chart.at(i, row)]);
  return room.size() * kLeastShare < chart.columns() ? std::numeric_limits<double>::quiet_NaN()
                                                     : median_of(room);
}

StraightLine line_over_height(const WallChart &chart, int threads) {
  const std::size_t step = std::max<std::size_t>(1, chart.rows() / kMostRows);
  std::vector<double> middles(band_count(chart.rows(), step));
  for_each_band(middles.size(), 8, threads, [&](std::size_t begin, std::size_t end) {
    std::vector<float> room;
    for (std::size_t k = begin; k < end; ++k)
      middles[k] = row_middle(chart, k * step, room);
  });
  std::vector<double> z, e;
  for (std::size_t k = 0; k < middles.size(); ++k) {
    if (std::isnan(middles[k]))
      continue;
    z.push_back(chart.z_mm[k * step]);
    e.push_back(middles[k]);
  }
  return repeated_median_line(z, e);
}

/// Several columns at a time, since neighbours lie side by side in memory.
std::vector<double> column_offsets(const WallChart &chart, const StraightLine &line, int threads) {
  constexpr std::size_t kTogether = 16;
  std::vector<double> offsets(chart.columns());
  for_each_band(chart.columns(), kTogether, threads, [&](std::size_t begin, std::size_t end) {
    std::array<std::vector<double>, kTogether> columns;
    for (std::vector<double> &column : columns)
      column.reserve(chart.rows());
    for (std::size_t j = 0; j < chart.rows(); ++j) {
      const double level = line.at(chart.z_mm[j]);
      for (std::size_t i = begin; i < end; ++i)
        if (const std::size_t cell = chart.at(i, j); chart.is_cut(cell))
          columns[i - begin].push_back(chart.envelope_mm[cell] - level);
    }
    for (std::size_t i = begin; i < end; ++i)
      offsets[i] = median_of(columns[i - begin]);
  });
  return offsets;
}

BaseRows base_rows(const WallChart &chart, const WallReference &reference) {
  BaseRows base;
  base.least_proud_mm = std::max(kLeastProud_mm, 4.0 * reference.spread_mm);
  base.least_edge_mm = std::max(kLeastEdge_mm, 4.0 * reference.spread_mm);
  base.first_clean.assign(chart.columns(), BaseRows::kNone);
  for (std::size_t i = 0; i < chart.columns(); ++i) {
    if (std::isnan(reference.column_offset_mm[i]))
      continue;
    for (std::size_t j = 0; j < chart.rows(); ++j) {
      const std::size_t cell = chart.at(i, j);
      const double proud = chart.residual_mm(cell) - reference.at(i, chart.z_mm[j]);
      const bool reached = std::isfinite(chart.envelope_mm[cell]);
      if (proud <= (reached ? base.least_proud_mm : base.least_edge_mm)) {
        base.first_clean[i] = j;
        break;
      }
    }
  }
  return base;
}

} // namespace

WallReference wall_reference(const WallChart &chart, int threads) {
  WallReference reference;
  reference.line = line_over_height(chart, threads);
  reference.column_offset_mm = column_offsets(chart, reference.line, threads);
  std::vector<double> rest;
  const std::size_t cells = chart.columns() * chart.rows();
  // A step that shares no factor with the row length would be best; odd is near enough.
  const std::size_t step = std::max<std::size_t>(1, cells / kMostCells) | 1;
  for (std::size_t cell = 0; cell < cells; cell += step)
    if (chart.is_cut(cell))
      rest.push_back(chart.envelope_mm[cell] -
                     reference.at(cell % chart.columns(), chart.z_mm[cell / chart.columns()]));
  reference.usable = !rest.empty();
  reference.spread_mm = robust_deviation(std::move(rest));
  reference.base = base_rows(chart, reference);
  return reference;
}

WallReferences::WallReferences(const std::vector<Chart> &charts, int threads) : each_(charts.size()) {
  for_each_band(charts.size(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      if (const auto *wall = std::get_if<WallChart>(&charts[i]))
        each_[i] = wall_reference(*wall, threads);
  });
}

WallReferences::~WallReferences() = default;

const WallReference &WallReferences::of(std::size_t feature) const { return each_[feature]; }

WallReference reference_on(const Evidence &evidence, int feature, const WallChart &chart) {
  return evidence.references ? evidence.references->of(static_cast<std::size_t>(feature))
                             : wall_reference(chart, evidence.threads);
}

double row_bottom_mm(const WallChart &chart, std::size_t row) {
  if (row > 0)
    return 0.5 * (chart.z_mm[row - 1] + chart.z_mm[row]);
  return chart.rows() > 1 ? chart.z_mm[0] - 0.5 * (chart.z_mm[1] - chart.z_mm[0]) : chart.z_mm[0];
}

double row_top_mm(const WallChart &chart, std::size_t row) {
  if (row + 1 < chart.rows())
    return row_bottom_mm(chart, row + 1);
  return chart.rows() > 1 ? chart.z_mm[row] + 0.5 * (chart.z_mm[row] - chart.z_mm[row - 1]) : chart.z_mm[row];
}

} // namespace asperity
