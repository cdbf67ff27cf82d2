// Turns pieces into strokes, part by part, and merges what runs on.
#include "floor_path.h"

#include "asperity/base/parallel.h"
#include "asperity/chart/wall_chart.h"

#include <algorithm>

namespace asperity {
namespace {

constexpr std::size_t kPart = 1024; ///< pieces, few enough to stay near the processor

struct Part {
  std::vector<FloorStroke> strokes;
  FloorRuns runs;
  bool owners_rise = true;
};

bool owners_rise(const SweptPath &path, std::size_t begin, std::size_t end) {
  return std::is_sorted(path.pieces.begin() + std::ptrdiff_t(begin),
                        path.pieces.begin() + std::ptrdiff_t(end),
                        [](const SweptPiece &a, const SweptPiece &b) { return a.owner < b.owner; });
}

/// Of the pieces from `first` to `last`, some of the portion's.
std::vector<Part> parts_of(const SweptPath &path, std::size_t portion_begin, std::size_t first,
                           std::size_t last, const MergeRule &rule, int threads) {
  std::vector<Part> parts(band_count(last - first, kPart));
  for_each_band(last - first, kPart, threads, [&](std::size_t begin, std::size_t end) {
    Part &part = parts[begin / kPart];
    // The piece before is looked at too: owners of neighbouring parts must rise.
    part.owners_rise = owners_rise(path, std::max(portion_begin + 1, first + begin) - 1, first + end);
    part.strokes = floor_strokes(path, first + begin, first + end, rule, part.runs);
  });
  return parts;
}

/// Where a part's strokes and members go.
struct Place {
  std::size_t stroke = 0, member = 0;
};

/// Behind what the whole holds already.
std::vector<Place> places_of(const std::vector<Part> &parts, const FloorPath &whole) {
  std::vector<Place> places{{whole.strokes.size(), whole.runs.owner.size()}};
  for (const Part &part : parts)
    places.push_back(
        {places.back().stroke + part.strokes.size(), places.back().member + part.runs.owner.size()});
  return places;
}

void put(FloorPath &whole, const Part &part, const Place &place) {
  for (std::size_t i = 0; i < part.strokes.size(); ++i) {
    FloorStroke &stroke = whole.strokes[place.stroke + i];
    stroke = part.strokes[i];
    stroke.run_first += static_cast<std::uint32_t>(place.member);
  }
  std::copy(part.runs.joint_mm.begin(), part.runs.joint_mm.end(),
            whole.runs.joint_mm.begin() + std::ptrdiff_t(place.member));
  std::copy(part.runs.owner.begin(), part.runs.owner.end(),
            whole.runs.owner.begin() + std::ptrdiff_t(place.member));
}

void append(FloorPath &whole, const std::vector<Part> &parts, int threads) {
  const std::vector<Place> places = places_of(parts, whole);
  whole.strokes.resize(places.back().stroke);
  whole.runs.joint_mm.resize(places.back().member);
  whole.runs.owner.resize(places.back().member);
  for_each_band(parts.size(), 1, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      put(whole, parts[i], places[i]);
  });
}

/// The strokes from piece `begin` on, until there are enough; false if their owners do not rise. Those laid
/// out last are held twice, in parts and in the whole.
bool lay_out(FloorPath &whole, const SweptPath &path, std::size_t begin, const FloorPortions &portions,
             const MergeRule &rule, int threads) {
  const std::size_t most = std::min(path.pieces.size(), begin + portions.pieces);
  whole.strokes.reserve(std::min(most - begin, portions.strokes + portions.at_once));
  bool rise = true;
  whole.end = begin;
  while (whole.end < most && whole.strokes.size() < portions.strokes) {
    const std::size_t last = std::min(whole.end + portions.at_once, most);
    const std::vector<Part> parts = parts_of(path, begin, whole.end, last, rule, threads);
    rise = rise && std::all_of(parts.begin(), parts.end(), [](const Part &p) { return p.owners_rise; });
    append(whole, parts, threads);
    whole.end = last;
  }
  return rise;
}

void clip_at_joints(FloorPath &whole, int threads) {
  // Every end of a stroke is written at its own joint only.
  for_each_band(whole.strokes.size(), kPart, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = std::max<std::size_t>(begin, 1); i < end; ++i)
      if (whole.strokes[i].joins_previous)
        clip_at_joint(whole.strokes[i - 1], whole.strokes[i], whole.flanks[whole.strokes[i].cutter]);
  });
}

} // namespace

FloorPath floor_path(const SweptPath &path, std::size_t begin, const FloorPortions &portions, int threads) {
  FloorPath whole;
  for (const SweptCutter &cutter : path.cutters)
    whole.flanks.emplace_back(cutter.profile);
  const bool rise = lay_out(whole, path, begin, portions, {portions.merge_within_mm, true, true}, threads);
  if (!rise && portions.merge_within_mm > 0.0) {
    whole.strokes.clear();
    whole.runs = {};
    lay_out(whole, path, begin, portions, {portions.merge_within_mm, false, true}, threads);
  }
  clip_at_joints(whole, threads);
  if (!rise)
    std::stable_sort(whole.strokes.begin(), whole.strokes.end(),
                     [](const FloorStroke &a, const FloorStroke &b) { return a.owner < b.owner; });
  else
    whole.hulls = floor_hulls(whole.strokes, whole.flanks, threads);
  whole.stroke_owner.resize(whole.strokes.size() + 1);
  for_each_band(whole.strokes.size(), kPart, threads, [&](std::size_t from, std::size_t to) {
    for (std::size_t i = from; i < to; ++i)
      whole.stroke_owner[i] = whole.strokes[i].owner;
  });
  whole.stroke_owner.back() = kNobody;
  return whole;
}

} // namespace asperity
