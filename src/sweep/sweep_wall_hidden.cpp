// Bounds strokes from below and cells from above.
#include "sweep_wall_hidden.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr std::size_t kBlock = 64; ///< columns

struct Range {
  double low = 0, high = 0;
  /// How far a value is from being in it.
  double gap(double value) const { return std::max({0.0, low - value, value - high}); }
};

/// Distances from p along the stroke.
Range distances_from(Vec2 p, const Stroke &stroke) {
  const Vec2 begin = stroke.plan_point(0.0), end = stroke.plan_point(1.0);
  if (!stroke.is_arc)
    return {distance_to_segment_mm(p, begin, end), std::max(glm::length(begin - p), glm::length(end - p))};
  const double apart = glm::length(stroke.centre - p);
  const double middle = glm::length(stroke.plan_point(0.5) - p), half = 0.5 * stroke.plan_length_mm();
  return {std::max(std::abs(apart - stroke.radius_mm), middle - half),
          std::min(apart + stroke.radius_mm, middle + half)};
}

/// Of a coordinate along the stroke; `of` gives it for a point. Between samples an arc bulges by no more than
/// its sagitta.
template <class Coordinate> Range range_of(const Stroke &stroke, const Coordinate &of) {
  const double begin = of(stroke.plan_point(0.0)), end = of(stroke.plan_point(1.0));
  if (!stroke.is_arc)
    return {std::min(begin, end), std::max(begin, end)};
  const double middle = of(stroke.plan_point(0.5));
  const double bulge = stroke.radius_mm * (1.0 - std::cos(0.5 * stroke.half_sweep_rad));
  return {std::min({begin, middle, end}) - bulge, std::max({begin, middle, end}) + bulge};
}

/// The stroke is nowhere nearer to the element.
double least_distance_mm(const WallElement &element, const Stroke &stroke) {
  if (element.is_arc)
    return distances_from(element.middle, stroke).gap(element.radius_mm);
  const Range along = range_of(stroke, [&](Vec2 p) { return element.position_mm(p); });
  const Range above = range_of(stroke, [&](Vec2 p) { return element.height_mm(p); });
  const double half = element.half_length_mm;
  return std::hypot(std::max({0.0, along.low - half, -half - along.high}), above.gap(0.0));
}

template <class Visit> void for_blocks(const ColumnSpan &span, const Visit &visit) {
  for (std::size_t block = span.begin / kBlock; block * kBlock < span.end; ++block)
    visit(block);
}

} // namespace

double least_entry_mm(const WallElement &element, const Stroke &stroke, double radius_mm) {
  constexpr double kRounding_mm = 1e-6; // heights are kept as floats
  return least_distance_mm(element, stroke) - radius_mm - stroke.offset_max_mm - kRounding_mm;
}

void choose_first(WallPlan &plan) {
  constexpr double kNear_mm = 0.1; // what bending and errors leave on a finished wall; roughing leaves more
  for (std::size_t i = 0; i < plan.reaches.size(); ++i)
    for (const WallSide side : kWallSides) {
      if (plan.spans_of(i, side).empty())
        continue;
      if (plan.reaches[i].least_mm > kNear_mm) {
        plan.others_wait = true;
      } else {
        plan.reaches[i].goes_first[static_cast<std::size_t>(side)] = true;
        plan.first.push_back({static_cast<std::uint32_t>(i), side});
      }
    }
}

void WallTops::find(const LaneCells &cells, std::size_t lanes) {
  const std::size_t columns = cells.envelope_mm.size() / kLanes;
  highest_mm_.assign(band_count(columns, kBlock), -std::numeric_limits<float>::infinity());
  for (std::size_t column = 0; column < columns; ++column) {
    float &highest = highest_mm_[column / kBlock];
    for (std::size_t lane = 0; lane < lanes; ++lane)
      highest = std::max(highest, cells.envelope_mm[column * kLanes + lane]);
  }
}

bool WallTops::hide(const ColumnSpan &span, double least_mm) const {
  bool hidden = !highest_mm_.empty() && least_mm > 0.0;
  for_blocks(span, [&](std::size_t block) {
    hidden = hidden && static_cast<double>(highest_mm_[block]) < least_mm;
  });
  return hidden;
}

} // namespace asperity
