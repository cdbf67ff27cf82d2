#include "asperity/cut/stock.h"

#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kLevel_mm = 1e-3; // the little that cutter and machine yield along the axis leaves it level
constexpr double kMarginCells = 2.0; // grid beyond the blank, so that its sides can be interpolated

/// Grid points of one row; inclusive, empty if first > last.
struct RowPart {
  int first = 0, last = -1;
};

/// The grid points within reach of the way from a to a + ab; without those behind a where only what lies
/// ahead can change.
class Swath {
public:
  Swath(const Stock::Grid &grid, Vec2 a, Vec2 ab, double reach_mm, bool is_ahead_only)
      : grid_(grid), a_(a), ab_(ab), reach_mm_(reach_mm), is_ahead_only_(is_ahead_only) {
    const RowPart rows = points(a.y - grid.origin_mm.y + std::min(0.0, ab.y) - reach_mm,
                                a.y - grid.origin_mm.y + std::max(0.0, ab.y) + reach_mm, grid.ny);
    first_row_ = rows.first, last_row_ = rows.last;
  }

  int first_row() const { return first_row_; }
  int last_row() const { return last_row_; }
  double y_from_a_mm(int row) const { return grid_.origin_mm.y + row * grid_.cell_mm - a_.y; }
  RowPart row(int j) const {
    const double y = y_from_a_mm(j);
    const double beside = std::max({0.0, std::min(0.0, ab_.y) - y, y - std::max(0.0, ab_.y)});
    const double half = std::sqrt(std::max(0.0, reach_mm_ * reach_mm_ - beside * beside));
    double low = std::min(0.0, ab_.x) - half, high = std::max(0.0, ab_.x) + half;
    if (is_ahead_only_) { // x ab.x + y ab.y >= 0
      if (ab_.x > 0.0)
        low = std::max(low, -y * ab_.y / ab_.x);
      else if (ab_.x < 0.0)
        high = std::min(high, -y * ab_.y / ab_.x);
      else if (y * ab_.y < 0.0)
        return {};
    }
    const double begin = a_.x - grid_.origin_mm.x;
    return points(begin + low, begin + high, grid_.nx);
  }

private:
  RowPart points(double low_mm, double high_mm, int count) const {
    return {static_cast<int>(std::ceil(std::clamp(low_mm / grid_.cell_mm, 0.0, double(count)))),
            static_cast<int>(std::floor(std::clamp(high_mm / grid_.cell_mm, -1.0, count - 1.0)))};
  }

  const Stock::Grid &grid_;
  Vec2 a_, ab_;
  double reach_mm_;
  bool is_ahead_only_;
  int first_row_ = 0, last_row_ = -1;
};

/// What a stroke takes out of one layer, seen from where it begins.
struct Capsule {
  Vec2 ab{0.0}, per_length{0.0};
  double radius_mm = 0;
};

/// First grid point of a row, its distance from where the stroke begins, and how far apart they lie.
struct RowPlaces {
  double x_mm = 0, y_mm = 0, cell_mm = 0;
};

ASPERITY_WIDE void carve_row(float *row, RowPart part, const RowPlaces &places, const Capsule &capsule) {
  const double origin = places.x_mm, cell = places.cell_mm, py = places.y_mm;
  const double abx = capsule.ab.x, aby = capsule.ab.y, radius = capsule.radius_mm;
  const double perx = capsule.per_length.x, py_part = py * capsule.per_length.y;
  const int last = part.last;
#pragma GCC ivdep
  for (int i = part.first; i <= last; ++i) {
    const double px = origin + i * cell;
    const double along = px * perx + py_part;
    double u = along < 0.0 ? 0.0 : along;
    u = u > 1.0 ? 1.0 : u;
    const double dx = px - u * abx, dy = py - u * aby;
    const float d = static_cast<float>(std::sqrt(dx * dx + dy * dy) - radius);
    row[i] = d < row[i] ? d : row[i];
  }
}

} // namespace

Stock::Stock(const Blank &blank, std::vector<double> bounds_mm, double cell_mm)
    : bounds_mm_(std::move(bounds_mm)) {
  const Vec2 low = blank.low_mm() - Vec2(kMarginCells * cell_mm);
  const Vec2 extent = blank.high_mm() + Vec2(kMarginCells * cell_mm) - low;
  grid_ = {low, cell_mm, static_cast<int>(std::ceil(extent.x / cell_mm)) + 1,
           static_cast<int>(std::ceil(extent.y / cell_mm)) + 1};
  const std::size_t per_layer = static_cast<std::size_t>(grid_.nx) * static_cast<std::size_t>(grid_.ny);
  depth_.resize(per_layer * layers());
  surface_.resize(per_layer);
  for (int j = 0; j < grid_.ny; ++j) {
    for (int i = 0; i < grid_.nx; ++i) {
      const Vec2 p = grid_.origin_mm + Vec2(i, j) * cell_mm;
      const std::size_t cell =
          static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx) + static_cast<std::size_t>(i);
      surface_[cell] = static_cast<float>(blank.top_mm(p).value_or(-std::numeric_limits<double>::infinity()));
      for (std::size_t l = 0; l < layers(); ++l)
        layer(l)[cell] =
            static_cast<float>(blank.plan_depth_mm(p, 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1])));
    }
  }
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

  for (std::size_t l = lowest; l < layers() && bounds_mm_[l] <= tip + flute_length_mm; ++l) {
    const double height = std::max(0.0, 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]) - tip);
    carve_layer(l, from.axis_mm + from.lean * height, to.axis_mm + to.lean * height,
                profile.radius_at(height), goes_on);
  }
  lower_surface(from, to, profile, goes_on);
}

void Stock::carve_layer(std::size_t l, Vec2 a, Vec2 b, double radius_mm, bool goes_on) {
  if (radius_mm <= 0.0)
    return;
  const Vec2 ab = b - a;
  const double length2 = glm::dot(ab, ab);
  const Capsule capsule{ab, length2 > 0.0 ? ab / length2 : Vec2(0.0), radius_mm};
  const Swath swath(grid_, a, ab, radius_mm + 1.5 * grid_.cell_mm, goes_on && length2 > 0.0);
  for (int j = swath.first_row(); j <= swath.last_row(); ++j) {
    float *row = layer(l) + static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx);
    carve_row(row, swath.row(j), {grid_.origin_mm.x - a.x, swath.y_from_a_mm(j), grid_.cell_mm}, capsule);
  }
}

void Stock::lower_surface(const Stroke &from, const Stroke &to, const CutterProfile &profile, bool goes_on) {
  const Vec2 a = from.axis_mm, ab = to.axis_mm - from.axis_mm;
  const double radius = profile.radius_mm(), length2 = glm::dot(ab, ab);
  const Swath swath(grid_, a, ab, radius, goes_on && length2 > 0.0);
  for (int j = swath.first_row(); j <= swath.last_row(); ++j) {
    const RowPart part = swath.row(j);
    for (int i = part.first; i <= part.last; ++i) {
      const Vec2 p(grid_.origin_mm.x + i * grid_.cell_mm - a.x, swath.y_from_a_mm(j));
      const double u = length2 > 0.0 ? std::clamp(glm::dot(p, ab) / length2, 0.0, 1.0) : 1.0;
      const double rho = glm::length(p - u * ab);
      if (rho > radius)
        continue;
      const double tip =
          length2 > 0.0 ? from.tip_mm + u * (to.tip_mm - from.tip_mm) : std::min(from.tip_mm, to.tip_mm);
      float &surface = surface_[static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx) +
                                static_cast<std::size_t>(i)];
      surface = std::min(surface, static_cast<float>(tip + profile.height_at(rho)));
    }
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
