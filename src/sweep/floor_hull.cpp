// Hulls are chords, merged within a tolerance that matters to bounds only.
#include "floor_hull.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <array>

namespace asperity {
namespace {

/// Bounds over squares of cells lie some micrometres apart.
constexpr double kWithin_mm = 1e-3;
/// Part of a radius: bounds by the circle's parabola hide it near the rim.
constexpr double kWithinShare = 1.0 / 200.0;
/// Nearer than a half chord of half the radius a path's shift moves the ball's surface by up to twice as
/// much.
constexpr double kSlack = 2.1;
/// More than places along a hull are rounded by.
constexpr double kRounding_mm = 1e-5;
constexpr std::size_t kPortion = 1024; ///< strokes
constexpr std::size_t kWorthWhile = 3; ///< strokes to a hull

/// Widens the hull's pads so that cells beyond them belong to none of its members, however these turn; the
/// largest pads between members are returned.
FloorHulls::Pads pad(FloorStroke &hull, const FloorRuns &runs, std::span<const FloorStroke> strokes,
                     double reach_mm) {
  double low = 0.0, high = 0.0, lag = 1.0, lag_pad = 0.0;
  FloorHulls::Pads inner;
  for (std::size_t k = 0; k < hull.run_count; ++k) {
    const FloorStroke &member = strokes[runs.owner[hull.run_first + k]];
    const auto place = [&](Vec2 p) { return glm::dot(p - hull.low, hull.low_along); };
    std::array<double, 2> end{place(member.low), place(member.high)},
        beyond{member.clip_low_mm, member.clip_high_mm};
    if (end[0] > end[1]) {
      std::swap(end[0], end[1]);
      std::swap(beyond[0], beyond[1]);
    }
    const Vec2 along =
        glm::dot(member.low_along, hull.low_along) < 0.0 ? -member.low_along : member.low_along;
    // A cell in reach is seen this much farther along the member than along the hull.
    const double turned = (reach_mm + member.length_mm) * glm::distance(along, hull.low_along) + kRounding_mm;
    low = std::max(low, beyond[0] + turned - end[0]);
    high = std::max(high, beyond[1] + turned - (hull.length_mm - end[1]));
    // Half chords by distance from the hull and from the member differ by no more than this (derived: their
    // squares differ by (q + q') (q - q')).
    const double chord = std::sqrt(2.0 * reach_mm * (hull.slack_mm + turned));
    lag = std::min(lag, member.descends == hull.descends ? member.low_lag : 0.0);
    lag_pad = std::max(lag_pad, member.low_lag * chord);
    if (k > 0)
      inner.before_mm = std::max(inner.before_mm, beyond[0] + turned);
    if (k + 1 < hull.run_count)
      inner.beyond_mm = std::max(inner.beyond_mm, beyond[1] + turned);
  }
  hull.low_lag = lag;
  if (lag > 0.0) {
    low += lag_pad;
    inner.before_mm += lag_pad;
  }
  hull.clip_low_mm = low;
  hull.clip_high_mm = high;
  return inner;
}

bool can_be_hidden(const FloorStroke &stroke, const std::vector<Flank> &flanks) {
  return stroke.length_mm > 0.0 && has_short_form(stroke, flanks[stroke.cutter]);
}

/// A stroke as its own hull.
FloorStroke alone(const FloorStroke &single, std::uint32_t index) {
  FloorStroke stroke = single;
  stroke.owner = index;
  stroke.run_count = 0;
  return stroke;
}

/// Hulls of the strokes from `begin` to `end`.
FloorHulls hulls_of(std::span<const FloorStroke> strokes, const std::vector<Flank> &flanks, double within,
                    std::size_t begin, std::size_t end) {
  FloorHulls found;
  FloorMerger merger({within, true, false}, found.hulls, found.runs);
  for (std::size_t i = begin; i < end; ++i) {
    const FloorStroke &stroke = strokes[i];
    const auto index = static_cast<std::uint32_t>(i);
    if (can_be_hidden(stroke, flanks)) {
      const Vec3 low(stroke.low, stroke.z_mm),
          high(stroke.high, stroke.z_mm + stroke.slope * stroke.length_mm);
      merger.add({stroke.descends ? high : low, stroke.descends ? low : high, index, stroke.cutter,
                  stroke.joins_previous});
    } else {
      merger.finish();
      found.hulls.push_back(alone(stroke, index));
    }
  }
  merger.finish();
  for (FloorStroke &hull : found.hulls) {
    const bool is_alone = hull.run_count == 0;
    if (is_alone)
      hull = alone(strokes[hull.owner], hull.owner);
    else
      hull.slack_mm = kSlack * within;
    found.pads.push_back(is_alone ? FloorHulls::Pads{}
                                  : pad(hull, found.runs, strokes, flanks[hull.cutter].reach));
  }
  return found;
}

void append(FloorHulls &whole, const FloorHulls &part) {
  const auto shift = static_cast<std::uint32_t>(whole.runs.owner.size());
  for (FloorStroke hull : part.hulls) {
    hull.run_first += shift;
    whole.hulls.push_back(hull);
  }
  whole.pads.insert(whole.pads.end(), part.pads.begin(), part.pads.end());
  whole.runs.joint_mm.insert(whole.runs.joint_mm.end(), part.runs.joint_mm.begin(), part.runs.joint_mm.end());
  whole.runs.owner.insert(whole.runs.owner.end(), part.runs.owner.begin(), part.runs.owner.end());
}

} // namespace

FloorHulls floor_hulls(std::span<const FloorStroke> strokes, const std::vector<Flank> &flanks, int threads) {
  double within = kWithin_mm;
  for (const Flank &flank : flanks)
    if (flank.is_nearly_ball)
      within = std::min(within, kWithinShare * flank.corner);
  std::vector<FloorHulls> parts(band_count(strokes.size(), kPortion));
  for_each_band(strokes.size(), kPortion, threads, [&](std::size_t begin, std::size_t end) {
    parts[begin / kPortion] = hulls_of(strokes, flanks, within, begin, end);
  });
  std::size_t hulls = 0;
  for (const FloorHulls &part : parts)
    hulls += part.hulls.size();
  FloorHulls whole;
  if (hulls > strokes.size() / kWorthWhile)
    return whole;
  whole.hulls.reserve(hulls);
  for (const FloorHulls &part : parts)
    append(whole, part);
  return whole;
}

} // namespace asperity
