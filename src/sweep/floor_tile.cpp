// Best-first over the strokes of every block: the lowest is cut first, so that most others change nothing.
#include "floor_tile.h"

#include "floor_contact.h"
#include "floor_heights.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <tuple>

namespace asperity {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// Bounds are taken lower by this, more than their rounding [mm].
constexpr double kRounding_mm = 1e-11;
/// Heights above the plane are rounded to floats; bounds in double must not overlook that [mm].
constexpr double kShort_mm = 1e-6;

/// How far from a line short floats keep 0.5 nm: the circle's height and slope grow with distance.
double short_reach_mm(double radius_mm) { return std::min(0.8 * radius_mm, std::sqrt(1.6 * radius_mm)); }

/// Least height a stroke can leave within `half` (square's half side) of `middle`.
double bound_over(const FloorStroke &stroke, const Flank &flank, Vec2 middle, double half) {
  const double away = std::max(0.0, stroke.distance_mm(middle) - half * std::sqrt(2.0) - kRounding_mm);
  if (away > flank.reach)
    return kInfinity;
  if (stroke.slope == 0.0) // exact over the disc, so that equal depths compare equal
    return stroke.z_mm + (away > flank.flat ? flank.height(away) - kRounding_mm : 0.0);
  double lowest = stroke.z_mm;
  if (!stroke.is_arc) {
    const double s = glm::dot(middle - stroke.low, stroke.low_along);
    const double spread = half * (std::abs(stroke.low_along.x) + std::abs(stroke.low_along.y));
    const double first = s - spread - flank.farthest_shift(stroke.slope);
    lowest += stroke.slope * std::clamp(first, 0.0, stroke.length_mm);
  }
  return lowest + flank.height(away) - kRounding_mm;
}

/// True when every cell of the square belongs to a neighbour of the stroke.
bool is_clipped(const FloorStroke &stroke, Vec2 middle, double half) {
  const auto spread = [half](Vec2 along) { return half * (std::abs(along.x) + std::abs(along.y)); };
  return -glm::dot(middle - stroke.low, stroke.low_along) - spread(stroke.low_along) > stroke.clip_low_mm ||
         glm::dot(middle - stroke.high, stroke.high_along) - spread(stroke.high_along) > stroke.clip_high_mm;
}

void send_for(const FloorStroke &stroke) {
#if defined(__GNUC__)
  __builtin_prefetch(&stroke, 0, 3);
  __builtin_prefetch(&stroke.clip_low_mm, 0, 3);
#endif
}

} // namespace

void FloorTile::cut(std::size_t i0, std::size_t j0, std::span<const std::int32_t> strokes) {
  i0_ = i0;
  j0_ = j0;
  const double half = 0.5 * chart_.spacing_mm * double(kSide - 1);
  plane_ = {Vec2(chart_.x_mm(i0), chart_.y_mm(j0)) + Vec2(half), chart_.base_mm, Vec2(0.0)};
  if (!find_level())
    return;
  ceiling_.find(chart_, i0, j0, plane_.z_mm);
  rows_sent_for_ = 0;
  gather(strokes);
  if (lines_[0].size() == 0 && others_.empty())
    return;
  halve(0, 0, 0, kSide);
  store();
}

/// The plane near the wanted surface, exactly at base where that is level. False where no cell is in the
/// feature.
bool FloorTile::find_level() {
  const std::size_t rows = std::min(chart_.ny, j0_ + kSide), columns = std::min(chart_.nx, i0_ + kSide);
  for (std::size_t j = j0_; j < rows; ++j)
    for (std::size_t i = i0_; i < columns; ++i)
      if (chart_.in_feature(chart_.at(i, j))) {
        plane_.z_mm += double(chart_.wanted_mm[chart_.at(i, j)]);
        return true;
      }
  return false;
}

/// The chart's cells are far away in memory and wanted only at the end: sent for a row a block, as memory
/// gives no more at a time, they are near by then.
void FloorTile::fetch_next_row() {
  if (rows_sent_for_ < std::min(chart_.ny - j0_, kSide))
    fetch_row<2>(rows_sent_for_++);
}

/// `kNear`: 2 into the second cache, 3 into the first.
template <int kNear> void FloorTile::fetch_row(std::size_t row) const {
#if defined(__GNUC__)
  constexpr std::size_t kCellsPerLine = 16;
  const std::size_t columns = std::min(chart_.nx, i0_ + kSide);
  for (std::size_t i = i0_; i < columns; i += kCellsPerLine) {
    const std::size_t cell = chart_.at(i, j0_ + row);
    __builtin_prefetch(&chart_.wanted_mm[cell], 0, kNear);
    __builtin_prefetch(&chart_.envelope_mm[cell], 1, kNear);
    __builtin_prefetch(&chart_.owner[cell], 1, kNear);
  }
#endif
}

void FloorTile::gather(std::span<const std::int32_t> strokes) {
  BallLines &all = lines_[1], &kept = lines_[0];
  all.clear();
  others_.clear();
  const double half = 0.5 * chart_.spacing_mm * double(kSide - 1);
  const float ceiling = ceiling_.above(0, 0, kSide, Vec2(0.0));
  const std::span<const FloorStroke> outlines = path_.outlines();
  for (std::size_t i = 0; i < strokes.size(); ++i) {
    const std::int32_t index = strokes[i];
    const FloorStroke &stroke = outlines[std::size_t(index)];
    const Flank &flank = path_.flanks[stroke.cutter];
    send_for(outlines[std::size_t(strokes[std::min(i + 16, strokes.size() - 1)])]);
    if (stroke.slack_mm > 0.0 || has_short_form(stroke, flank))
      all.add(stroke, flank, plane_, index);
    else if (const double bound = bound_over(stroke, flank, plane_.middle, half);
             bound < kInfinity && bound - plane_.z_mm <= double(ceiling))
      others_.push_back({bound, has_hulls() ? static_cast<std::int32_t>(stroke.owner) : index});
  }
  all.measure({0.0f, 0.0f, static_cast<float>(half)});
  plane_.gradient = all.likely_gradient();
  kept.keep_lowest(all, ceiling);
  kept.lean(plane_.gradient);
  std::sort(others_.begin(), others_.end(), [](const Other &a, const Other &b) {
    return std::tie(a.bound_mm, a.stroke) < std::tie(b.bound_mm, b.stroke);
  });
}

/// Quarters the square from column i, row j of the tile on; lines_[depth] were kept for it.
void FloorTile::halve(std::size_t depth, std::size_t i, std::size_t j, std::size_t side) {
  const std::size_t part = side / 2;
  const double spacing = chart_.spacing_mm, centre = 0.5 * double(kSide - 1);
  const double in_part = 0.5 * double(part - 1);
  for (const std::size_t pj : {j, j + part})
    for (const std::size_t pi : {i, i + part}) {
      if (i0_ + pi >= chart_.nx || j0_ + pj >= chart_.ny)
        continue;
      const CellSquare square{static_cast<float>(spacing * (double(pi) + in_part - centre)),
                              static_cast<float>(spacing * (double(pj) + in_part - centre)),
                              static_cast<float>(spacing * in_part)};
      lines_[depth].measure(square);
      const float ceiling = ceiling_.above(pi, pj, part, plane_.gradient);
      if (part == FloorBlock::kSide) {
        cut_block(lines_[depth], ceiling, pi, pj);
        continue;
      }
      if (has_hulls() && part == kHullSide)
        unwrap(lines_[depth + 1], lines_[depth], ceiling, square);
      else
        lines_[depth + 1].keep_lowest(lines_[depth], ceiling);
      halve(depth + 1, pi, pj, part);
    }
}

/// Takes the strokes out of the hulls that may be lowest somewhere in the square.
void FloorTile::unwrap(BallLines &lines, const BallLines &hulls, float ceiling,
                       const CellSquare &square) const {
  const float least = std::min(hulls.least_upper(), ceiling);
  const Vec2 middle = plane_.middle + Vec2(square.x, square.y);
  lines.clear();
  for (std::size_t i = 0; i < hulls.size(); ++i) {
    if (!(hulls.lower(i) <= least) || hulls.lower(i) == std::numeric_limits<float>::infinity())
      continue;
    const auto index = static_cast<std::size_t>(hulls.stroke(i));
    const FloorStroke &hull = path_.hulls.hulls[index];
    const Flank &flank = path_.flanks[hull.cutter];
    const Vec2 t = hull.low_along, d = middle - hull.low;
    const double along = glm::dot(d, t);
    const double side = double(square.half) * (std::abs(t.x) + std::abs(t.y));
    const double across = std::min(flank.corner, std::abs(cross(t, d)) + side);
    const double lag = flank.flat >= 0.0 ? hull.low_lag : 0.0;
    const double ahead = along + side - lag * std::sqrt((flank.corner - across) * (flank.corner + across));
    path_.hulls.for_members(index, along - side, ahead, [&](std::uint32_t stroke) {
      lines.add(path_.strokes[stroke], flank, plane_, static_cast<std::int32_t>(stroke));
    });
  }
  lines.lean(plane_.gradient);
}

void FloorTile::cut_block(BallLines &lines, float ceiling, std::size_t i, std::size_t j) {
  const double half = 0.5 * double(FloorBlock::kSide - 1);
  block_middle_ = Vec2(chart_.x_mm(i0_ + i), chart_.y_mm(j0_ + j)) + Vec2(half * chart_.spacing_mm);
  block_.clear(path_.none());
  fetch_next_row();
  lower_under_lines(lines, ceiling);
  lower_under_others();
  keep_block(i, j);
}

void FloorTile::lower_under_lines(const BallLines &lines, float ceiling) {
  const float least = std::min(lines.least_upper(), ceiling);
  order_.clear();
  for (std::uint32_t i = 0; i < lines.size(); ++i)
    if (lines.lower(i) <= least && lines.lower(i) < std::numeric_limits<float>::infinity())
      order_.push_back(i);
  while (!order_.empty()) {
    // What lies above all cells by now is dropped; the lowest of the rest comes next.
    std::size_t left = 0, lowest = 0;
    for (const std::uint32_t i : order_)
      if (lines.lower(i) <= block_.highest) {
        if (lines.lower(i) < lines.lower(order_[lowest]) || left == 0)
          lowest = left;
        order_[left++] = i;
      }
    order_.resize(left);
    if (left == 0)
      return;
    const std::int32_t index = lines.stroke(order_[lowest]);
    lower_under_line(path_.strokes[std::size_t(index)], index);
    order_[lowest] = order_.back();
    order_.pop_back();
  }
}

void FloorTile::lower_under_line(const FloorStroke &stroke, std::int32_t index) {
  const Flank &flank = path_.flanks[stroke.cutter];
  const double h = chart_.spacing_mm, radius = flank.corner, m = stroke.slope, g = stroke.stretch;
  const Vec2 d = block_middle_ - stroke.low, t = stroke.low_along;
  const double s = glm::dot(d, t), q = cross(t, d), lag = m / g;
  const double side = 0.5 * h * double(FloorBlock::kSide - 1) * (std::abs(t.x) + std::abs(t.y));
  const double most = std::abs(q) + side, tip = stroke.z_mm + m * s - plane_.height_mm(block_middle_);
  const double short_reach = short_reach_mm(radius);
  const Vec2 lean = h * (m * t - plane_.gradient);
  BallLineOverBlock line{float(q),      float(-h * t.y), float(h * t.x), 0.0f,
                         float(lean.x), float(lean.y),   float(g),       float(radius)};
  if (flank.flat == 0.0 && s - side >= lag * radius && s + side <= stroke.length_mm && most <= short_reach) {
    line.base = float(tip - radius * m * m / (1.0 + g));
    if (most <= double(kNearShare) * radius)
      lower_block_close_under(block_, line, index);
    else
      lower_block_under(block_, line, index);
    return;
  }
  const double past = std::max({side - s, s + side - stroke.length_mm, lag * radius + flank.flat});
  if (most * most + past * past > short_reach * short_reach)
    return lower_exactly(stroke, flank, index);
  line.base = float(tip);
  const BallSpanOverBlock span{
      line,    0.0f, float(h * t.x), float(h * t.y), float(lag), float(-s), float(stroke.length_mm - s),
      float(m)};
  if (flank.flat == 0.0)
    lower_block_under(block_, span, index);
  else
    lower_block_under(block_, GrownSpanOverBlock{span, flank.flat, m}, index);
}

/// True when a stroke that stays this high above the plane changes no cell. Above a level plane rounding to
/// floats keeps order, so that equal depths compare equal and only smaller strokes take them.
bool FloorTile::is_beyond(double lowest_mm, std::int32_t stroke) const {
  if (plane_.gradient != Vec2(0.0))
    return lowest_mm - kShort_mm > double(block_.highest);
  const auto lowest = static_cast<float>(lowest_mm);
  return lowest > block_.highest || (lowest == block_.highest && stroke > latest_);
}

void FloorTile::lower_under_others() {
  if (others_.empty())
    return;
  const double half = 0.5 * chart_.spacing_mm * double(FloorBlock::kSide - 1);
  const double tile_half = 0.5 * chart_.spacing_mm * double(kSide - 1);
  const double leaning = std::abs(plane_.gradient.x) + std::abs(plane_.gradient.y);
  latest_ = *std::max_element(block_.winner.begin(), block_.winner.end());
  for (const Other &other : others_) {
    if (is_beyond(other.bound_mm - plane_.z_mm - leaning * tile_half, other.stroke))
      continue;
    const FloorStroke &stroke = path_.strokes[std::size_t(other.stroke)];
    const Flank &flank = path_.flanks[stroke.cutter];
    if (is_clipped(stroke, block_middle_, half))
      continue;
    const double bound = bound_over(stroke, flank, block_middle_, half);
    if (bound == kInfinity ||
        is_beyond(bound - plane_.height_mm(block_middle_) - leaning * half, other.stroke))
      continue;
    lower_exactly(stroke, flank, other.stroke);
    latest_ = *std::max_element(block_.winner.begin(), block_.winner.end());
  }
}

void FloorTile::lower_exactly(const FloorStroke &stroke, const Flank &flank, std::int32_t index) {
  std::array<float, FloorBlock::kCells> found;
  exact_heights(stroke, flank, {block_middle_, chart_.spacing_mm, plane_}, found);
  lower_block_to(block_, found, index);
}

void FloorTile::keep_block(std::size_t i, std::size_t j) {
  std::array<std::uint32_t, FloorBlock::kCells> owner;
  path_.find_owners(block_, block_middle_, chart_.spacing_mm, owner);
  for (std::size_t row = 0; row < FloorBlock::kSide; ++row) {
    const std::size_t from = row * FloorBlock::kSide, to = (j + row) * kSide + i;
    std::copy_n(&block_.height[from], FloorBlock::kSide, &height_[to]);
    std::copy_n(&owner[from], FloorBlock::kSide, &owner_[to]);
  }
}

/// Row by row, as the chart lies in memory.
void FloorTile::store() {
  const std::size_t cells = std::min(kSide, chart_.nx - i0_), rows = std::min(kSide, chart_.ny - j0_);
  constexpr std::size_t kAhead = 4;
  for (std::size_t row = 0; row < rows; ++row) {
    if (row + kAhead < rows)
      fetch_row<3>(row + kAhead);
    const std::size_t first = chart_.at(i0_, j0_ + row);
    const Vec2 p(chart_.x_mm(i0_), chart_.y_mm(j0_ + row));
    store_row({&chart_.wanted_mm[first], &chart_.envelope_mm[first], &chart_.owner[first],
               plane_.height_mm(p) - chart_.base_mm, plane_.gradient.x * chart_.spacing_mm},
              &height_[row * kSide], &owner_[row * kSide], cells);
  }
}

} // namespace asperity
