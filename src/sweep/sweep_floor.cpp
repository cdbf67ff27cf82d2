// Shares a floor chart's tiles out over threads and lowers each under the strokes that reach it.
#include "asperity/sweep/sweep_floor.h"

#include "asperity/base/parallel.h"

#include "floor_flank.h"
#include "floor_stroke.h"
#include "floor_tile.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <memory>
#include <thread>
#include <tuple>
#include <utility>

namespace asperity {
namespace {

/// Which strokes may reach which tile.
class TileLists {
public:
  TileLists(const FloorChart &chart, const std::vector<FloorStroke> &strokes,
            const std::vector<Flank> &flanks)
      : across_((chart.nx + FloorTile::kSide - 1) / FloorTile::kSide),
        down_((chart.ny + FloorTile::kSide - 1) / FloorTile::kSide), lists_(across_ * down_) {
    for (std::size_t i = 0; i < strokes.size(); ++i)
      enter(chart, strokes[i], flanks[strokes[i].cutter].reach, static_cast<std::uint32_t>(i));
  }
  std::size_t tiles() const { return lists_.size(); }
  std::size_t column(std::size_t tile) const { return tile % across_ * FloorTile::kSide; }
  std::size_t row(std::size_t tile) const { return tile / across_ * FloorTile::kSide; }
  const std::vector<std::uint32_t> &strokes(std::size_t tile) const { return lists_[tile]; }

private:
  void enter(const FloorChart &chart, const FloorStroke &stroke, double reach_mm, std::uint32_t index) {
    Vec2 low, high;
    stroke.box(reach_mm, low, high);
    const double side = chart.spacing_mm * double(FloorTile::kSide);
    const Vec2 corner = chart.origin_mm - Vec2(0.5 * chart.spacing_mm);
    const auto first = [&](double mm) { return std::floor(mm / side); };
    const double i0 = first(low.x - corner.x), i1 = first(high.x - corner.x), j0 = first(low.y - corner.y),
                 j1 = first(high.y - corner.y);
    if (!(i1 >= 0.0 && j1 >= 0.0 && i0 < double(across_) && j0 < double(down_)))
      return;
    const double half = 0.5 * side;
    for (auto j = std::size_t(std::max(j0, 0.0)); j <= std::size_t(std::min(j1, double(down_ - 1))); ++j)
      for (auto i = std::size_t(std::max(i0, 0.0)); i <= std::size_t(std::min(i1, double(across_ - 1)));
           ++i) {
        const Vec2 middle = corner + side * Vec2(double(i) + 0.5, double(j) + 0.5);
        if (stroke.distance_mm(middle) <= reach_mm + half * std::sqrt(2.0))
          lists_[j * across_ + i].push_back(index);
      }
  }

  std::size_t across_, down_;
  std::vector<std::vector<std::uint32_t>> lists_;
};

/// Lowest strokes first, so that most of the others are seen to change nothing; earliest owner first among
/// equals.
void lower_tile(FloorTile &tile, const std::vector<std::uint32_t> &list,
                const std::vector<FloorStroke> &strokes, const std::vector<Flank> &flanks) {
  struct Place {
    double bound_mm;
    std::uint32_t owner, stroke;
  };
  std::vector<Place> order;
  order.reserve(list.size());
  for (const std::uint32_t i : list)
    order.push_back({tile.bound_mm(strokes[i], flanks[strokes[i].cutter]), strokes[i].owner, i});
  std::sort(order.begin(), order.end(), [](const Place &a, const Place &b) {
    return std::tie(a.bound_mm, a.owner, a.stroke) < std::tie(b.bound_mm, b.owner, b.stroke);
  });
  for (const Place &place : order) {
    if (tile.is_beyond(place.bound_mm))
      break;
    tile.lower(strokes[place.stroke], flanks[strokes[place.stroke].cutter]);
  }
}

} // namespace

bool sweep_floor(FloorChart &chart, const SweptPath &path, int threads, const Progress &progress) {
  std::vector<Flank> flanks;
  for (const SweptCutter &cutter : path.cutters)
    flanks.emplace_back(cutter.profile);
  const std::vector<FloorStroke> strokes = floor_strokes(path);
  const TileLists lists(chart, strokes, flanks);

  std::atomic<std::size_t> done{0};
  const std::thread::id caller = std::this_thread::get_id();
  constexpr std::size_t kBand = 2;
  for_each_band(lists.tiles(), kBand, threads, [&](std::size_t begin, std::size_t end) {
    const auto tile = std::make_unique<FloorTile>(); // too large for a small stack
    for (std::size_t t = begin; t < end && !progress.cancelled(); ++t) {
      if (!lists.strokes(t).empty()) {
        tile->load(chart, lists.column(t), lists.row(t));
        lower_tile(*tile, lists.strokes(t), strokes, flanks);
        tile->store(chart);
      }
      const std::size_t finished = done.fetch_add(1) + 1;
      if (std::this_thread::get_id() == caller)
        progress.at("floor", double(finished) / double(lists.tiles()));
    }
  });
  return !progress.cancelled();
}

} // namespace asperity
