// Deals each stroke to the rows together, or to each row alone.
#include "sweep_wall_band.h"

#include <algorithm>
#include <limits>

namespace asperity {

WallBand::WallBand(const WallPlan &plan, const ColumnFinder &columns, WallChart &chart, std::size_t begin,
                   std::size_t end)
    : plan_(plan), chart_(chart), begin_(begin) {
  cells_.envelope_mm.resize(chart.columns() * kLanes);
  cells_.owner.resize(chart.columns() * kLanes);
  rows_.reserve(end - begin);
  for (std::size_t i = 0; i < kLanes; ++i) {
    const std::size_t row = std::min(begin + i, end - 1); // lanes beyond the last row repeat it unseen
    z_mm_[i] = chart.z_mm[row];
    if (begin + i < end)
      rows_.emplace_back(plan, columns, chart, z_mm_[i], cells_, i, sections_);
  }
}

void WallBand::cut() {
  load();
  cut_first();
  for (const WallSide side : kWallSides) {
    for (WallRow &row : rows_)
      row.start(side);
    for (std::size_t i = 0; i < plan_.strokes.size(); ++i)
      pass(i, side);
    close_all();
  }
  store();
}

void WallBand::load() {
  for (std::size_t lane = 0; lane < rows_.size(); ++lane) {
    const std::size_t first = chart_.at(0, begin_ + lane);
    for (std::size_t i = 0; i < chart_.columns(); ++i) {
      cells_.envelope_mm[i * kLanes + lane] = chart_.envelope_mm[first + i];
      cells_.owner[i * kLanes + lane] = chart_.owner[first + i];
    }
  }
}

void WallBand::store() const {
  for (std::size_t lane = 0; lane < rows_.size(); ++lane) {
    const std::size_t first = chart_.at(0, begin_ + lane);
    for (std::size_t i = 0; i < chart_.columns(); ++i) {
      chart_.envelope_mm[first + i] = cells_.envelope_mm[i * kLanes + lane];
      chart_.owner[first + i] = cells_.owner[i * kLanes + lane];
    }
  }
}

void WallBand::cut_first() {
  most_mm_.fill(chart_.band_mm);
  if (plan_.others_wait)
    tops_.find(cells_, rows_.size()); // what earlier portions of the path have left
  for (const auto &[stroke, side] : plan_.first)
    if (is_alike(stroke, plan_.reaches[stroke].passing[static_cast<std::size_t>(side)], z_mm_.front(),
                 z_mm_.back()))
      cut_spans(stroke, side);
  if (plan_.others_wait)
    tops_.find(cells_, rows_.size());
}

void WallBand::close_all() {
  if (any_open_)
    for (WallRow &row : rows_)
      row.close();
  any_open_ = false;
}

void WallBand::pass(std::size_t i, WallSide side) {
  const Reach &reach = plan_.reaches[i];
  if (reach.count == 0 || reach.low_mm > z_mm_.back() || reach.high_mm < z_mm_.front())
    return close_all();
  const auto at = static_cast<std::size_t>(side);
  const Passing passing = reach.passing[at];
  const bool together = passing != Passing::any && is_alike(i, passing, z_mm_.front(), z_mm_.back());
  if (together)
    join();
  else
    part(i, passing);
  if (passing == Passing::any || passing == Passing::idle)
    return;
  if (!(together && reach.goes_first[at]))
    cut_spans(i, side);
  leave(i);
}

/// Between two heights, does the cutter pass all along the stroke with nothing that changes its law?
bool WallBand::is_alike(std::size_t i, Passing passing, double z_low_mm, double z_high_mm) const {
  const Stroke &stroke = plan_.strokes[i];
  const WallCutter &cutter = plan_.cutters[stroke.cutter];
  const double low = z_low_mm - stroke.z_begin_mm - std::max(0.0, stroke.z_rise_mm);
  const double high = z_high_mm - stroke.z_begin_mm - std::min(0.0, stroke.z_rise_mm);
  if (!(low > cutter.lowest_mm && high < cutter.highest_mm))
    return false;
  return passing == Passing::idle ||
         (low > cutter.profile.shoulder_mm() &&
          node_interval(cutter.node_height_mm, low) == node_interval(cutter.node_height_mm, high));
}

void WallBand::join() {
  if (any_open_)
    for (WallRow &row : rows_)
      row.forget();
  any_open_ = false;
  most_mm_.fill(chart_.band_mm);
}

void WallBand::part(std::size_t i, Passing passing) {
  const Reach &reach = plan_.reaches[i];
  most_mm_.fill(-std::numeric_limits<double>::infinity());
  for (std::size_t lane = 0; lane < rows_.size(); ++lane) {
    const double z = z_mm_[lane];
    if (reach.low_mm > z || reach.high_mm < z) {
      rows_[lane].close();
    } else if (passing != Passing::any && is_alike(i, passing, z, z)) {
      rows_[lane].forget();
      most_mm_[lane] = chart_.band_mm;
    } else {
      rows_[lane].follow(i);
    }
  }
  any_open_ = true;
}

void WallBand::leave(std::size_t i) {
  if (plan_.reaches[i].ends_smoothly)
    return;
  for (std::size_t lane = 0; lane < rows_.size(); ++lane)
    if (most_mm_[lane] > 0.0)
      rows_[lane].recall(i);
  any_open_ = true;
}

void WallBand::cut_spans(std::size_t i, WallSide side) {
  seen_.clear();
  for (const ColumnSpan &span : plan_.spans_of(i, side))
    if (!tops_.hide(span, plan_.reaches[i].least_mm))
      seen_.push_back(span);
  if (seen_.empty())
    return;
  if (plan_.reaches[i].passing[static_cast<std::size_t>(side)] == Passing::straight)
    cut_straight(i, side, seen_);
  else
    cut_curved(i, side, seen_);
}

/// Its first disc is also the last of the stroke before.
StrokeOwners WallBand::owners_of(std::size_t i) const {
  return {std::min(plan_.strokes[i - 1].owner, plan_.strokes[i].owner), plan_.strokes[i].owner};
}

Lanes WallBand::heights_above(double z_mm) const {
  Lanes heights;
  for (std::size_t i = 0; i < kLanes; ++i)
    heights[i] = z_mm_[i] - z_mm;
  return heights;
}

void WallBand::cut_straight(std::size_t i, WallSide side, std::span<const ColumnSpan> spans) {
  const auto at = static_cast<std::size_t>(side);
  const Stroke &stroke = plan_.strokes[i];
  const WallCutter &cutter = plan_.cutters[stroke.cutter];
  LaneDiscs discs;
  add_bend(stroke.begin[at], cutter, stroke.from, heights_above(stroke.z_begin_mm), discs.x_mm, discs.y_mm);
  add_bend(stroke.end[at], cutter, stroke.from + stroke.along,
           heights_above(stroke.z_begin_mm + stroke.z_rise_mm), discs.end_x_mm, discs.end_y_mm);
  discs.most_mm = most_mm_;
  discs.radius_mm = cutter.profile.radius_mm();
  discs.count = rows_.size();
  set_contacts(discs, side);
  for (const ColumnSpan &span : spans)
    lower_span(discs, chart_, span, owners_of(i), cells_);
}

void WallBand::cut_curved(std::size_t i, WallSide side, std::span<const ColumnSpan> spans) {
  const Stroke &stroke = plan_.strokes[i];
  const StrokeOwners owners = owners_of(i);
  LaneCurves curves;
  place_curves(stroke, plan_.cutters[stroke.cutter], side, heights_above(stroke.z_begin_mm), curves);
  curves.most_mm = most_mm_;
  curves.count = rows_.size();
  for (const ColumnSpan &span : spans)
    for (std::size_t column = span.begin; column < span.end; ++column) {
      const double u_near = span.u_near(chart_.s_mm[column]);
      const LaneBits left = lower_under_curves(curves, chart_, column, u_near, owners, cells_);
      for (std::size_t lane = 0; left != 0 && lane < rows_.size(); ++lane)
        if ((left >> lane & 1u) != 0 && most_mm_[lane] > 0.0)
          rows_[lane].cut_ray(i, column, u_near, owners);
    }
}

} // namespace asperity
