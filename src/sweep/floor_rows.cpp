// Bins strokes into tiles: by height on the chart first, then along each row.
#include "floor_rows.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>

namespace asperity {
namespace {

/// Wider than the rounding of floats over any chart of tiles [tiles].
constexpr float kSlack = 1e-3f;

struct Range {
  double low, high;
};

/// Where along x the cells lie that a stroke may lower between two heights on the chart.
Range reach_along(const FloorStroke &stroke, double reach, double y_low, double y_high) {
  Vec2 low, high;
  stroke.box(reach, low, high);
  Range range{low.x, high.x};
  const Vec2 t = stroke.low_along;
  // A slanting strip is narrower in one row than its box.
  if (!stroke.is_arc && std::abs(t.y) > 1e-3 && std::abs(t.x) > 1e-3) {
    const double aside = reach * std::abs(t.x);
    const double a = (y_low - aside - stroke.low.y) / t.y, b = (y_high + aside - stroke.low.y) / t.y;
    const double first = std::max(std::min(a, b), -std::min(stroke.clip_low_mm, reach));
    const double last = std::min(std::max(a, b), stroke.length_mm + std::min(stroke.clip_high_mm, reach));
    const double wide = reach * std::abs(t.y);
    range.low = std::max(range.low, stroke.low.x + std::min(first * t.x, last * t.x) - wide);
    range.high = std::min(range.high, stroke.low.x + std::max(first * t.x, last * t.x) + wide);
  }
  return range;
}

} // namespace

FloorRows::FloorRows(const FloorChart &chart, const FloorPath &path, std::size_t tile_side, int threads)
    : chart_(chart), path_(path), tile_side_(tile_side), rows_((chart.ny + tile_side - 1) / tile_side),
      columns_((chart.nx + tile_side - 1) / tile_side), low_(path.strokes.size()),
      high_(path.strokes.size()) {
  constexpr std::size_t kBand = 8192;
  const double side = chart.spacing_mm * double(tile_side), edge = chart.origin_mm.y - 0.5 * chart.spacing_mm;
  const auto clamped = [&](double tiles) { return std::clamp(tiles, -2.0, double(rows_) + 2.0); };
  for_each_band(path.strokes.size(), kBand, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      Vec2 low, high;
      path.strokes[i].box(path.flanks[path.strokes[i].cutter].reach, low, high);
      low_[i] = static_cast<float>(clamped((low.y - edge) / side)) - kSlack;
      high_[i] = static_cast<float>(clamped((high.y - edge) / side)) + kSlack;
    }
  });
}

void FloorRowLists::enter(std::int32_t index, double y_low, double y_high) {
  const FloorChart &chart = rows_.chart_;
  const FloorStroke &stroke = rows_.path_.strokes[std::size_t(index)];
  const Range x = reach_along(stroke, rows_.path_.flanks[stroke.cutter].reach, y_low, y_high);
  const double side = chart.spacing_mm * double(rows_.tile_side_);
  const double edge = chart.origin_mm.x - 0.5 * chart.spacing_mm;
  const double first = std::floor((x.low - edge) / side - double(kSlack));
  const double last = std::floor((x.high - edge) / side + double(kSlack));
  if (!(x.low <= x.high) || last < 0.0 || first >= double(rows_.columns_))
    return;
  const auto begin = static_cast<std::uint32_t>(std::max(first, 0.0));
  const auto end = static_cast<std::uint32_t>(std::min(last + 1.0, double(rows_.columns_)));
  entries_.push_back({index, begin, end});
}

void FloorRowLists::find(std::size_t row) {
  const FloorChart &chart = rows_.chart_;
  const double side = chart.spacing_mm * double(rows_.tile_side_);
  const double y_low = chart.origin_mm.y - 0.5 * chart.spacing_mm + side * double(row);
  const auto low = static_cast<float>(row), high = static_cast<float>(row + 1);
  entries_.clear();
  for (std::size_t i = 0; i < rows_.low_.size(); ++i)
    if (rows_.low_[i] < high && rows_.high_[i] > low)
      enter(static_cast<std::int32_t>(i), y_low, y_low + side);

  first_.assign(rows_.columns_ + 2, 0);
  for (const Entry &entry : entries_)
    for (std::uint32_t tile = entry.begin; tile < entry.end; ++tile)
      ++first_[tile + 2];
  for (std::size_t tile = 2; tile < first_.size(); ++tile)
    first_[tile] += first_[tile - 1];
  list_.resize(first_.back());
  for (const Entry &entry : entries_)
    for (std::uint32_t tile = entry.begin; tile < entry.end; ++tile)
      list_[first_[tile + 1]++] = entry.stroke;
}

} // namespace asperity
