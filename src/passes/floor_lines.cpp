// Parallel lines over a floor, one way or both ways, interrupted by islands.
#include "asperity/base/units.h"
#include "crossings.h"
#include "floor_run.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace asperity {

namespace {

/// Shorter pieces of a line are touches, not cuts [mm].
constexpr double kShortest_mm = 1e-4;
constexpr int kLooks = 4000;

/// Extent of an outline across a direction.
std::pair<double, double> extent_across(const Outline &outline, Vec2 across) {
  double low = 1e300, high = -1e300;
  for (int i = 0; i < kLooks; ++i) {
    const double v = glm::dot(outline.point(outline.length_mm() * i / kLooks), across);
    low = std::min(low, v);
    high = std::max(high, v);
  }
  for (const OutlineElement &element : outline.elements()) {
    const double v = glm::dot(element.begin, across);
    low = std::min(low, v);
    high = std::max(high, v);
  }
  return {low, high};
}

struct Piece {
  double from = 0, to = 0;
};

/// The stretches of the line inside the outer path and outside all islands.
std::vector<Piece> pieces_of(const FloorRegion &region, Vec2 origin, Vec2 along) {
  std::vector<double> places = line_crossings(region.outer(), origin, along);
  for (const Outline &island : region.islands())
    for (const double t : line_crossings(island, origin, along))
      places.push_back(t);
  std::sort(places.begin(), places.end());
  std::vector<Piece> pieces;
  for (std::size_t i = 0; i + 1 < places.size(); ++i) {
    const double from = places[i], to = places[i + 1];
    const Vec2 middle = origin + 0.5 * (from + to) * along;
    if (to - from < kShortest_mm || region.outer().depth_mm(middle) < 0.0 || !region.clears_islands(middle))
      continue;
    if (!pieces.empty() && from - pieces.back().to < kShortest_mm)
      pieces.back().to = to;
    else
      pieces.push_back({from, to});
  }
  return pieces;
}

} // namespace

void FloorRun::line(Vec2 from, Vec2 to, double z_mm, bool is_first, bool may_link) {
  if (is_first) {
    begin_at(from, glm::normalize(from - to), z_mm);
    // Back and forth, so that the ramp ends where the line begins.
    const int legs = is_ramped() ? 2 * ramp_runs(2.0 * glm::distance(from, to), z_mm) : 0;
    for (int i = 1; i <= legs; ++i)
      route_.line_to({i % 2 == 1 ? to : from, from_mm_ + (z_mm - from_mm_) * i / legs},
                     pass_.ramp_feed_mm_per_min);
  } else if (may_link) {
    link_to(from, z_mm);
  } else {
    planning_.go_up();
    planning_.come_down(from);
    planning_.plunge_to(z_mm);
  }
  route_.line_to({to, z_mm}, pass_.feed_mm_per_min);
}

bool FloorRun::lines(double z_mm) {
  const double angle = rad_from_deg(pass_.angle_deg);
  const Vec2 along{std::cos(angle), std::sin(angle)}, across = left_of(along);
  const auto [low, high] = extent_across(region_.outer(), across);
  const int count = std::max(1, static_cast<int>(std::ceil((high - low) / pass_.stepover_mm - 1e-9)));
  const double step_mm = (high - low) / count;
  const bool is_both = pass_.direction == CutDirection::both;
  bool is_first = true, is_back = false;
  for (int i = 0; i < count; ++i) {
    // One way and climb: uncut floor to the right of the feed, so the lines move on to the right.
    const int place = pass_.direction == CutDirection::climb ? count - 1 - i : i;
    const Vec2 origin = (low + (place + 0.5) * step_mm) * across;
    std::vector<Piece> pieces = pieces_of(region_, origin, along);
    if (is_back)
      std::reverse(pieces.begin(), pieces.end());
    for (const Piece &piece : pieces) {
      const Vec2 from = origin + (is_back ? piece.to : piece.from) * along;
      const Vec2 to = origin + (is_back ? piece.from : piece.to) * along;
      line(from, to, z_mm, is_first, is_both);
      is_first = false;
    }
    is_back = is_both && !is_back;
  }
  edge_laps(z_mm, pass_.edge == FloorEdge::wall, {});
  return true;
}

} // namespace asperity
