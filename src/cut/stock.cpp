#include "asperity/cut/stock.h"

#include "asperity/base/parallel.h"
#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"
#include "carving.h"
#include "turn.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <limits>
#include <optional>

namespace asperity {

namespace {

constexpr double kLevel_mm = 1e-3; // the little that cutter and machine yield along the axis leaves it level
/// A layer of which the tip leaves less than this share is passed: the cutter yields a little along its axis,
/// and levels are told apart to a micrometre only.
constexpr double kLeftOfLayer = 0.05;
constexpr double kMarginCells = 2.0; // grid beyond the blank, so that its sides can be interpolated

/// A crossing of the side is looked for between two marks of a circle: the outer one lies within a mark's
/// distance of the side, and the four points about it within a cell and a half more. Half as much again, to
/// be safe.
constexpr double kMarkShare = 1.5 * kPi / kMarksPerPi, kDeepCells = 4.0;

/// In which cells so many places lie and where there, and what the cells' corners hold.
template <std::size_t Count> struct alignas(64) CellsRead {
  std::array<double, Count> x, y;   ///< shares of a cell
  std::array<double, Count> beyond; ///< 0 on the grid, else positive
  std::array<std::int32_t, Count> index;
  std::array<float, 2 * Count> low, high; ///< of the cells' lower and upper sides
};

/// `place(k)` is where; into x, y, beyond and index.
template <std::size_t Count, class Place>
ASPERITY_INTO_WIDE void find_cells(const Stock::Grid &grid, const Place &place, CellsRead<Count> &cells) {
  const double last_x = grid.nx - 1, last_y = grid.ny - 1;
#pragma omp simd
  for (std::size_t k = 0; k < Count; ++k) {
    const Vec2 p = place(k);
    const double gx = (p.x - grid.origin_mm.x) / grid.cell_mm, gy = (p.y - grid.origin_mm.y) / grid.cell_mm;
    const auto i = static_cast<std::int32_t>(std::min(std::max(0.0, gx), last_x - 0.5));
    const auto j = static_cast<std::int32_t>(std::min(std::max(0.0, gy), last_y - 0.5));
    cells.x[k] = gx - i;
    cells.y[k] = gy - j;
    cells.index[k] = j * grid.nx + i;
    cells.beyond[k] =
        std::max(std::max(0.0, -gx), -gy) + (gx < last_x ? 0.0 : 1.0) + (gy < last_y ? 0.0 : 1.0);
  }
}

/// `layer(k)` is what the place's cell is counted from.
template <std::size_t Count, class Layer>
ASPERITY_INTO_WIDE void read_cells(const Stock::Grid &grid, const Layer &layer, double outside_mm,
                                   CellsRead<Count> &cells, std::array<double, Count> &depths) {
  for (std::size_t k = 0; k < Count; ++k) {
    const float *corner = layer(k) + cells.index[k];
    std::memcpy(cells.low.data() + 2 * k, corner, 2 * sizeof(float));
    std::memcpy(cells.high.data() + 2 * k, corner + grid.nx, 2 * sizeof(float));
  }
#pragma omp simd
  for (std::size_t k = 0; k < Count; ++k) {
    const double x = cells.x[k], y = cells.y[k];
    const double low =
        (1 - x) * static_cast<double>(cells.low[2 * k]) + x * static_cast<double>(cells.low[2 * k + 1]);
    const double high =
        (1 - x) * static_cast<double>(cells.high[2 * k]) + x * static_cast<double>(cells.high[2 * k + 1]);
    const double depth = (1 - y) * low + y * high;
    depths[k] = cells.beyond[k] > 0.0 ? outside_mm : depth;
  }
}

ASPERITY_WIDE void read_circle(const Stock::Grid &grid, const float *layer, Vec2 centre_mm, double radius_mm,
                               const Stock::Places &places, double outside_mm, Stock::Depths &depths) {
  CellsRead<Stock::kPlaces> cells;
  find_cells(
      grid, [&](std::size_t k) { return centre_mm + radius_mm * Vec2(places.x[k], places.y[k]); }, cells);
  read_cells(
      grid, [&](std::size_t) { return layer; }, outside_mm, cells, depths);
}

ASPERITY_WIDE void read_eight(const Stock::Grid &grid, const std::array<const float *, kEight> &layers,
                              const Eight &x_mm, const Eight &y_mm, double outside_mm, Eight &depths) {
  CellsRead<kEight> cells;
  find_cells(
      grid, [&](std::size_t k) { return Vec2(x_mm[k], y_mm[k]); }, cells);
  read_cells(
      grid, [&](std::size_t k) { return layers[k]; }, outside_mm, cells, depths);
}

} // namespace

Stock::Stock(const Blank &blank, std::vector<double> bounds_mm, double cell_mm, int threads,
             double widest_radius_mm)
    : bounds_mm_(std::move(bounds_mm)),
      deep_mm_(static_cast<float>(-(kMarkShare * widest_radius_mm + kDeepCells * cell_mm))) {
  const Vec2 low = blank.low_mm() - Vec2(kMarginCells * cell_mm);
  const Vec2 extent = blank.high_mm() + Vec2(kMarginCells * cell_mm) - low;
  grid_ = {low, cell_mm, static_cast<int>(std::ceil(extent.x / cell_mm)) + 1,
           static_cast<int>(std::ceil(extent.y / cell_mm)) + 1};
  const std::size_t per_layer = static_cast<std::size_t>(grid_.nx) * static_cast<std::size_t>(grid_.ny);
  depth_.resize(per_layer * layers() + kCarvedAtOnce); // first touched by those who fill it
  surface_.resize(per_layer + kCarvedAtOnce);
  for (LargeArray<float> *list : {&depth_, &surface_})
    std::fill(list->end() - kCarvedAtOnce, list->end(), 0.0f);
  const auto middle_mm = [&](std::size_t l) { return 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]); };
  std::vector<char> is_like_below(layers(), 0);
  for (std::size_t l = 1; l < layers(); ++l)
    is_like_below[l] = blank.has_same_slice(middle_mm(l - 1), middle_mm(l));
  const auto fill_row = [&](int j) {
    const std::ptrdiff_t first = static_cast<std::ptrdiff_t>(j) * grid_.nx;
    const auto place = [&](int i) { return grid_.origin_mm + Vec2(i, j) * cell_mm; };
    for (int i = 0; i < grid_.nx; ++i)
      surface_.data()[first + i] =
          static_cast<float>(blank.top_mm(place(i)).value_or(-std::numeric_limits<double>::infinity()));
    for (std::size_t l = 0; l < layers(); ++l) {
      float *const row = layer(l) + first;
      if (is_like_below[l])
        std::copy_n(layer(l - 1) + first, grid_.nx, row);
      else
        for (int i = 0; i < grid_.nx; ++i)
          row[i] = static_cast<float>(blank.plan_depth_mm(place(i), middle_mm(l)));
    }
  };
  constexpr std::size_t kRows = 16;
  for_each_band(static_cast<std::size_t>(grid_.ny), kRows, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t j = begin; j < end; ++j)
      fill_row(static_cast<int>(j));
  });
}

void Stock::depths_mm(std::size_t l, Vec2 centre_mm, double radius_mm, const Places &places,
                      Depths &depths) const {
  read_circle(grid_, layer(l), centre_mm, radius_mm, places, kFarOutside, depths);
}

void Stock::depths_mm(const std::array<std::size_t, kEight> &layers, const Eight &x_mm, const Eight &y_mm,
                      Eight &depths) const {
  std::array<const float *, kEight> starts;
  for (std::size_t k = 0; k < starts.size(); ++k)
    starts[k] = layer(layers[k]);
  read_eight(grid_, starts, x_mm, y_mm, kFarOutside, depths);
}

double Stock::surface_mm(Vec2 p) const {
  const Vec2 g = (p - grid_.origin_mm) / grid_.cell_mm;
  if (!(g.x >= 0.0 && g.y >= 0.0 && g.x < grid_.nx - 1 && g.y < grid_.ny - 1))
    return -std::numeric_limits<double>::infinity();
  const float *corner = surface_.data() + static_cast<std::size_t>(g.y) * static_cast<std::size_t>(grid_.nx) +
                        static_cast<std::size_t>(g.x);
  return std::max(std::max(corner[0], corner[1]), std::max(corner[grid_.nx], corner[grid_.nx + 1]));
}

void Stock::carve(const Stroke &from, const Stroke &to, const CutterProfile &profile,
                  double flute_length_mm) {
  const double tip = 0.5 * (from.tip_mm + to.tip_mm);
  const double deepest = std::min(from.tip_mm, to.tip_mm);
  std::size_t lowest = 0;
  while (lowest < layers() &&
         deepest > bounds_mm_[lowest] + kLeftOfLayer * (bounds_mm_[lowest + 1] - bounds_mm_[lowest]))
    ++lowest;
  // A level stroke that goes on where a level one ended leaves all behind it as it is.
  const bool is_level = std::abs(from.tip_mm - to.tip_mm) <= kLevel_mm;
  const bool goes_on =
      is_level && last_level_ && *last_level_ == Stroked{from, lowest, profile, flute_length_mm};
  last_level_ = is_level ? std::optional(Stroked{to, lowest, profile, flute_length_mm}) : std::nullopt;

  // The same rows for all layers: wide enough for the leaning axis.
  const double leant = std::max(glm::length(from.lean), glm::length(to.lean)) * (bounds_mm_.back() - deepest);
  const Vec2 ab = to.axis_mm - from.axis_mm;
  const bool only_ahead = goes_on && ab != Vec2(0.0);
  Swath swath;
  find_swath(grid_, from.axis_mm, ab, profile.radius_mm() + 1.5 * grid_.cell_mm + leant,
             only_ahead ? std::optional(leant) : std::nullopt, swath);
  for (std::size_t l = lowest; l < layers() && bounds_mm_[l] <= tip + flute_length_mm; ++l) {
    const double height = std::max(0.0, 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]) - tip);
    const Vec2 a = from.axis_mm + from.lean * height, b = to.axis_mm + to.lean * height;
    const double radius = profile.radius_at(height);
    if (radius > 0.0)
      carve_rows(layer(l), grid_, swath, {grid_.origin_mm - a, b - a, radius}, deep_mm_);
  }

  lower_surface(surface_.data(), grid_, swath, from, to, profile);
}

std::size_t Stock::bytes() const { return (depth_.size() + surface_.size()) * sizeof(float); }

std::vector<double> layer_bounds(double bottom_mm, double top_mm, std::vector<double> levels_mm,
                                 double thickest_mm, std::size_t most_layers) {
  constexpr double kSame_mm = 1e-3;
  levels_mm.push_back(bottom_mm);
  levels_mm.push_back(top_mm);
  std::sort(levels_mm.begin(), levels_mm.end());
  std::vector<double> bounds;
  for (const double z : levels_mm) {
    if (z < bottom_mm - kSame_mm || z > top_mm + kSame_mm ||
        (!bounds.empty() && z - bounds.back() < kSame_mm))
      continue;
    // Fill the gap below z with evenly thick layers.
    if (!bounds.empty()) {
      const double low = bounds.back();
      const int pieces = static_cast<int>(std::ceil((z - low) / thickest_mm - 1e-9));
      for (int i = 1; i < pieces; ++i)
        bounds.push_back(low + (z - low) * i / pieces);
    }
    bounds.push_back(z);
  }
  // Too many: leave out the bound whose neighbours lie closest together.
  while (bounds.size() > most_layers + 1) {
    std::size_t thinnest = 1;
    for (std::size_t i = 1; i + 1 < bounds.size(); ++i)
      if (bounds[i + 1] - bounds[i - 1] < bounds[thinnest + 1] - bounds[thinnest - 1])
        thinnest = i;
    bounds.erase(bounds.begin() + static_cast<std::ptrdiff_t>(thinnest));
  }
  return bounds;
}

} // namespace asperity
