// Turns pieces into strokes, portion by portion, and merges what runs on.
#include "floor_path.h"

#include "asperity/base/parallel.h"
#include "asperity/chart/wall_chart.h"

#include <algorithm>

namespace asperity {
namespace {

constexpr std::size_t kPortion = 1024; ///< pieces, few enough to stay near the processor
constexpr std::size_t kAtOnce =
    64 * kPortion; ///< pieces whose strokes are held twice, in portions and in the whole

struct Portion {
  std::vector<FloorStroke> strokes;
  FloorRuns runs;
  bool owners_rise = true;
};

/// Owners of the pieces from `begin` to `end`, and of the one before.
bool owners_rise(const SweptPath &path, std::size_t begin, std::size_t end) {
  return std::is_sorted(path.pieces.begin() + std::ptrdiff_t(begin > 0 ? begin - 1 : 0),
                        path.pieces.begin() + std::ptrdiff_t(end),
                        [](const SweptPiece &a, const SweptPiece &b) { return a.owner < b.owner; });
}

/// Of the pieces from `first` to `last`.
std::vector<Portion> portions_of(const SweptPath &path, std::size_t first, std::size_t last,
                                 const MergeRule &rule, int threads) {
  std::vector<Portion> portions((last - first + kPortion - 1) / kPortion);
  for_each_band(last - first, kPortion, threads, [&](std::size_t begin, std::size_t end) {
    Portion &portion = portions[begin / kPortion];
    portion.owners_rise = owners_rise(path, first + begin, first + end);
    portion.strokes = floor_strokes(path, first + begin, first + end, rule, portion.runs);
  });
  return portions;
}

/// Where a portion's strokes and members go.
struct Place {
  std::size_t stroke = 0, member = 0;
};

/// Behind what the whole holds already.
std::vector<Place> places_of(const std::vector<Portion> &portions, const FloorPath &whole) {
  std::vector<Place> places{{whole.strokes.size(), whole.runs.owner.size()}};
  for (const Portion &portion : portions)
    places.push_back(
        {places.back().stroke + portion.strokes.size(), places.back().member + portion.runs.owner.size()});
  return places;
}

void put(FloorPath &whole, const Portion &portion, const Place &place) {
  for (std::size_t i = 0; i < portion.strokes.size(); ++i) {
    FloorStroke &stroke = whole.strokes[place.stroke + i];
    stroke = portion.strokes[i];
    stroke.run_first += static_cast<std::uint32_t>(place.member);
  }
  std::copy(portion.runs.joint_mm.begin(), portion.runs.joint_mm.end(),
            whole.runs.joint_mm.begin() + std::ptrdiff_t(place.member));
  std::copy(portion.runs.owner.begin(), portion.runs.owner.end(),
            whole.runs.owner.begin() + std::ptrdiff_t(place.member));
}

void append(FloorPath &whole, const std::vector<Portion> &portions, int threads) {
  const std::vector<Place> places = places_of(portions, whole);
  whole.strokes.resize(places.back().stroke);
  whole.runs.joint_mm.resize(places.back().member);
  whole.runs.owner.resize(places.back().member);
  for_each_band(portions.size(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      put(whole, portions[i], places[i]);
  });
}

/// The strokes of all pieces; false if their owners do not rise.
bool lay_out(FloorPath &whole, const SweptPath &path, const MergeRule &rule, int threads) {
  const std::size_t count = path.pieces.size();
  bool rise = true;
  whole.strokes.reserve(count);
  for (std::size_t first = 0; first < count; first += kAtOnce) {
    const std::vector<Portion> portions =
        portions_of(path, first, std::min(first + kAtOnce, count), rule, threads);
    rise =
        rise && std::all_of(portions.begin(), portions.end(), [](const Portion &p) { return p.owners_rise; });
    append(whole, portions, threads);
  }
  return rise;
}

void clip_at_joints(FloorPath &whole, int threads) {
  // Every end of a stroke is written at its own joint only.
  for_each_band(whole.strokes.size(), kPortion, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = std::max<std::size_t>(begin, 1); i < end; ++i)
      if (whole.strokes[i].joins_previous)
        clip_at_joint(whole.strokes[i - 1], whole.strokes[i], whole.flanks[whole.strokes[i].cutter]);
  });
}

} // namespace

FloorPath floor_path(const SweptPath &path, double merge_within_mm, int threads) {
  FloorPath whole;
  for (const SweptCutter &cutter : path.cutters)
    whole.flanks.emplace_back(cutter.profile);
  const bool rise = lay_out(whole, path, {merge_within_mm, true, true}, threads);
  if (!rise && merge_within_mm > 0.0) {
    whole.strokes.clear();
    whole.runs = {};
    lay_out(whole, path, {merge_within_mm, false, true}, threads);
  }
  clip_at_joints(whole, threads);
  if (!rise)
    std::stable_sort(whole.strokes.begin(), whole.strokes.end(),
                     [](const FloorStroke &a, const FloorStroke &b) { return a.owner < b.owner; });
  else
    whole.hulls = floor_hulls(whole.strokes, whole.flanks, threads);
  whole.stroke_owner.resize(whole.strokes.size() + 1);
  for_each_band(whole.strokes.size(), kPortion, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      whole.stroke_owner[i] = whole.strokes[i].owner;
  });
  whole.stroke_owner.back() = kNobody;
  return whole;
}

} // namespace asperity
