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

/// Where along x the cells lie that a slanting stroke may lower between two heights on the chart: its strip
/// is narrower there than its box.
Range reach_along(const FloorStroke &stroke, double reach, double y_low, double y_high) {
  const Vec2 t = stroke.low_along;
  const double aside = reach * std::abs(t.x), wide = reach * std::abs(t.y);
  const double a = (y_low - aside - stroke.low.y) / t.y, b = (y_high + aside - stroke.low.y) / t.y;
  const double first = std::max(std::min(a, b), -std::min(stroke.clip_low_mm, reach));
  const double last = std::min(std::max(a, b), stroke.length_mm + std::min(stroke.clip_high_mm, reach));
  return {stroke.low.x + std::min(first * t.x, last * t.x) - wide,
          stroke.low.x + std::max(first * t.x, last * t.x) + wide};
}

/// Long enough for that to matter.
bool is_slanting(const FloorStroke &stroke, double reach) {
  const Vec2 t = glm::abs(stroke.low_along);
  return !stroke.is_arc && stroke.length_mm > reach && t.x > 1e-3 && t.y > 1e-3;
}

} // namespace

FloorRows::FloorRows(const FloorChart &chart, const FloorPath &path, std::size_t tile_side, int threads)
    : chart_(chart), path_(path), tile_side_(tile_side), rows_((chart.ny + tile_side - 1) / tile_side),
      columns_((chart.nx + tile_side - 1) / tile_side), along_x_(path.outlines().size()),
      along_y_(path.outlines().size()), slants_(path.outlines().size()),
      group_y_((path.outlines().size() + kGroup - 1) / kGroup) {
  const std::span<const FloorStroke> strokes = path.outlines();
  const double per_tile = 1.0 / (chart.spacing_mm * double(tile_side));
  const Vec2 corner = chart.origin_mm - Vec2(0.5 * chart.spacing_mm);
  const auto extent = [per_tile](double low, double high, std::size_t tiles) {
    const auto clamped = [tiles](double at) {
      return static_cast<float>(std::clamp(at, -2.0, double(tiles) + 2.0));
    };
    return Extent{clamped(low * per_tile) - kSlack, clamped(high * per_tile) + kSlack};
  };
  for_each_band(group_y_.size(), kGroup, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t group = begin; group < end; ++group) {
      Extent all{std::numeric_limits<float>::infinity(), -std::numeric_limits<float>::infinity()};
      for (std::size_t i = group * kGroup; i < std::min((group + 1) * kGroup, along_y_.size()); ++i) {
        Vec2 low, high;
        strokes[i].box(path.flanks[strokes[i].cutter].reach + strokes[i].slack_mm, low, high);
        slants_[i] = is_slanting(strokes[i], path.flanks[strokes[i].cutter].reach);
        along_x_[i] = extent(low.x - corner.x, high.x - corner.x, columns_);
        along_y_[i] = extent(low.y - corner.y, high.y - corner.y, rows_);
        all = {std::min(all.low, along_y_[i].low), std::max(all.high, along_y_[i].high)};
      }
      group_y_[group] = all;
    }
  });
}

void FloorRowLists::enter(std::size_t index, double y_low, double y_high) {
  FloorRows::Extent x = rows_.along_x_[index];
  if (rows_.slants_[index]) {
    const FloorStroke &stroke = rows_.path_.outlines()[index];
    const double reach = rows_.path_.flanks[stroke.cutter].reach;
    const FloorChart &chart = rows_.chart_;
    const double side = chart.spacing_mm * double(rows_.tile_side_);
    const double edge = chart.origin_mm.x - 0.5 * chart.spacing_mm;
    const Range in_row = reach_along(stroke, reach, y_low, y_high);
    const auto clamped = [&](double at) {
      return static_cast<float>(std::clamp(at, -2.0, double(rows_.columns_) + 2.0));
    };
    x.low = std::max(x.low, clamped((in_row.low - edge) / side) - kSlack);
    x.high = std::min(x.high, clamped((in_row.high - edge) / side) + kSlack);
  }
  const auto columns = static_cast<float>(rows_.columns_);
  if (!(x.low <= x.high) || !x.meets(0.0f, columns))
    return;
  const auto begin = static_cast<std::uint32_t>(std::max(x.low, 0.0f));
  const auto end = static_cast<std::uint32_t>(std::min(x.high + 1.0f, columns));
  entries_.push_back({static_cast<std::int32_t>(index), begin, end});
}

void FloorRowLists::find(std::size_t row) {
  const FloorChart &chart = rows_.chart_;
  const double side = chart.spacing_mm * double(rows_.tile_side_);
  const double y_low = chart.origin_mm.y - 0.5 * chart.spacing_mm + side * double(row);
  const auto low = static_cast<float>(row), high = static_cast<float>(row + 1);
  entries_.clear();
  for (std::size_t group = 0; group < rows_.group_y_.size(); ++group)
    if (rows_.group_y_[group].meets(low, high))
      for (std::size_t i = group * FloorRows::kGroup;
           i < std::min((group + 1) * FloorRows::kGroup, rows_.along_y_.size()); ++i)
        if (rows_.along_y_[i].meets(low, high))
          enter(i, y_low, y_low + side);

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
