#include "asperity/cut/stock.h"

#include "asperity/base/parallel.h"
#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace asperity {

namespace {

constexpr double kLevel_mm = 1e-3; // the little that cutter and machine yield along the axis leaves it level
constexpr double kMarginCells = 2.0; // grid beyond the blank, so that its sides can be interpolated

/// Grid points of one row; inclusive, empty if first > last.
struct RowPart {
  int first = 0, last = -1;
};

RowPart points_between(double low_mm, double high_mm, double cell_mm, int count) {
  return {static_cast<int>(std::ceil(std::clamp(low_mm / cell_mm, 0.0, double(count)))),
          static_cast<int>(std::floor(std::clamp(high_mm / cell_mm, -1.0, count - 1.0)))};
}

/// The grid points within reach of the way from a to a + ab, row by row.
struct Swath {
  int first_row = 0;
  std::vector<RowPart> rows;
};

/// With `behind_mm` only those less than so far behind a.
Swath swath_of(const Stock::Grid &grid, Vec2 a, Vec2 ab, double reach_mm, std::optional<double> behind_mm) {
  const Vec2 begin = a - grid.origin_mm, low = glm::min(ab, Vec2(0.0)), high = glm::max(ab, Vec2(0.0));
  const RowPart rows =
      points_between(begin.y + low.y - reach_mm, begin.y + high.y + reach_mm, grid.cell_mm, grid.ny);
  Swath swath{rows.first, {}};
  const double room = behind_mm.value_or(0.0) * glm::length(ab);
  for (int j = rows.first; j <= rows.last; ++j) {
    const double y = j * grid.cell_mm - begin.y;
    const double beside = std::max({0.0, low.y - y, y - high.y});
    const double half = std::sqrt(std::max(0.0, reach_mm * reach_mm - beside * beside));
    double from = low.x - half, to = high.x + half;
    if (behind_mm) { // x ab.x + y ab.y > -room
      if (ab.x > 0.0)
        from = std::max(from, (-room - y * ab.y) / ab.x);
      else if (ab.x < 0.0)
        to = std::min(to, (-room - y * ab.y) / ab.x);
      else if (y * ab.y < -room)
        to = from - grid.cell_mm;
    }
    swath.rows.push_back(points_between(begin.x + from, begin.x + to, grid.cell_mm, grid.nx));
  }
  return swath;
}

/// What a stroke takes out of one layer.
struct Capsule {
  Vec2 begin_mm{0.0}; ///< from the stroke's begin to grid point (0, 0)
  Vec2 ab_mm{0.0};
  double radius_mm = 0;
};

/// In float, counted from the stroke's begin: off by less than a ten-millionth of stroke and cutter.
ASPERITY_WIDE void carve_rows(float *layer, const Stock::Grid &grid, const Swath &swath,
                              const Capsule &capsule) {
  const double length2 = glm::dot(capsule.ab_mm, capsule.ab_mm);
  const Vec2 per = length2 > 0.0 ? capsule.ab_mm / length2 : Vec2(0.0);
  const float per_x = static_cast<float>(per.x), per_y = static_cast<float>(per.y);
  const float ab_x = static_cast<float>(capsule.ab_mm.x), ab_y = static_cast<float>(capsule.ab_mm.y);
  const float radius = static_cast<float>(capsule.radius_mm), cell = static_cast<float>(grid.cell_mm);
  for (std::size_t k = 0; k < swath.rows.size(); ++k) {
    const int j = swath.first_row + static_cast<int>(k), first = swath.rows[k].first;
    const int count = swath.rows[k].last - first + 1;
    float *row = layer + static_cast<std::ptrdiff_t>(j) * grid.nx + first;
    const float x = static_cast<float>(capsule.begin_mm.x + first * grid.cell_mm);
    const float py = static_cast<float>(capsule.begin_mm.y + j * grid.cell_mm), py_part = py * per_y;
#pragma GCC ivdep
    for (int i = 0; i < count; ++i) {
      const float px = x + static_cast<float>(i) * cell;
      const float along = px * per_x + py_part;
      float u = along < 0.0f ? 0.0f : along;
      u = u > 1.0f ? 1.0f : u;
      const float dx = px - u * ab_x, dy = py - u * ab_y;
      const float d = std::sqrt(dx * dx + dy * dy) - radius;
      row[i] = d < row[i] ? d : row[i];
    }
  }
}

} // namespace

Stock::Stock(const Blank &blank, std::vector<double> bounds_mm, double cell_mm, int threads)
    : bounds_mm_(std::move(bounds_mm)) {
  const Vec2 low = blank.low_mm() - Vec2(kMarginCells * cell_mm);
  const Vec2 extent = blank.high_mm() + Vec2(kMarginCells * cell_mm) - low;
  grid_ = {low, cell_mm, static_cast<int>(std::ceil(extent.x / cell_mm)) + 1,
           static_cast<int>(std::ceil(extent.y / cell_mm)) + 1};
  const std::size_t per_layer = static_cast<std::size_t>(grid_.nx) * static_cast<std::size_t>(grid_.ny);
  depth_.resize(per_layer * layers());
  surface_.resize(per_layer);
  const auto middle_mm = [&](std::size_t l) { return 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]); };
  std::vector<char> is_like_below(layers(), 0);
  for (std::size_t l = 1; l < layers(); ++l)
    is_like_below[l] = blank.has_same_slice(middle_mm(l - 1), middle_mm(l));
  const auto fill_row = [&](int j) {
    for (int i = 0; i < grid_.nx; ++i) {
      const Vec2 p = grid_.origin_mm + Vec2(i, j) * cell_mm;
      const std::size_t cell =
          static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx) + static_cast<std::size_t>(i);
      surface_[cell] = static_cast<float>(blank.top_mm(p).value_or(-std::numeric_limits<double>::infinity()));
      for (std::size_t l = 0; l < layers(); ++l)
        layer(l)[cell] =
            is_like_below[l] ? layer(l - 1)[cell] : static_cast<float>(blank.plan_depth_mm(p, middle_mm(l)));
    }
  };
  constexpr std::size_t kRows = 16;
  for_each_band(static_cast<std::size_t>(grid_.ny), kRows, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t j = begin; j < end; ++j)
      fill_row(static_cast<int>(j));
  });
}

double Stock::surface_mm(Vec2 p) const {
  const Vec2 g = (p - grid_.origin_mm) / grid_.cell_mm + Vec2(0.5);
  if (!(g.x >= 0.0 && g.y >= 0.0 && g.x < grid_.nx && g.y < grid_.ny))
    return -std::numeric_limits<double>::infinity();
  return surface_[static_cast<std::size_t>(g.y) * static_cast<std::size_t>(grid_.nx) +
                  static_cast<std::size_t>(g.x)];
}

void Stock::carve(const Stroke &from, const Stroke &to, const CutterProfile &profile,
                  double flute_length_mm) {
  const double tip = 0.5 * (from.tip_mm + to.tip_mm);
  const double deepest = std::min(from.tip_mm, to.tip_mm);
  std::size_t lowest = 0;
  while (lowest < layers() && bounds_mm_[lowest] < deepest - 1e-9)
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
  const Swath swath = swath_of(grid_, from.axis_mm, ab, profile.radius_mm() + 1.5 * grid_.cell_mm + leant,
                               only_ahead ? std::optional(leant) : std::nullopt);
  for (std::size_t l = lowest; l < layers() && bounds_mm_[l] <= tip + flute_length_mm; ++l) {
    const double height = std::max(0.0, 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]) - tip);
    const Vec2 a = from.axis_mm + from.lean * height, b = to.axis_mm + to.lean * height;
    const double radius = profile.radius_at(height);
    if (radius > 0.0)
      carve_rows(layer(l), grid_, swath, {grid_.origin_mm - a, b - a, radius});
  }

  for (std::size_t k = 0; k < swath.rows.size(); ++k)
    lower_surface(swath.first_row + static_cast<int>(k), swath.rows[k].first, swath.rows[k].last, from, to,
                  profile);
}

void Stock::lower_surface(int row, int first, int last, const Stroke &from, const Stroke &to,
                          const CutterProfile &profile) {
  const Vec2 ab = to.axis_mm - from.axis_mm;
  const double radius = profile.radius_mm(), length2 = glm::dot(ab, ab);
  const double deepest = std::min(from.tip_mm, to.tip_mm);
  for (int i = first; i <= last; ++i) {
    float &surface = surface_[static_cast<std::size_t>(row) * static_cast<std::size_t>(grid_.nx) +
                              static_cast<std::size_t>(i)];
    if (static_cast<double>(surface) <= deepest)
      continue;
    const Vec2 p = grid_.origin_mm + Vec2(i, row) * grid_.cell_mm - from.axis_mm;
    const double u = length2 > 0.0 ? std::clamp(glm::dot(p, ab) / length2, 0.0, 1.0) : 1.0;
    const double rho = glm::length(p - u * ab);
    if (rho > radius)
      continue;
    const double tip = length2 > 0.0 ? from.tip_mm + u * (to.tip_mm - from.tip_mm) : deepest;
    surface = std::min(surface, static_cast<float>(tip + profile.height_at(rho)));
  }
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
