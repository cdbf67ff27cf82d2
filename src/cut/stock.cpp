#include "asperity/cut/stock.h"

#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kMarginCells = 2.0; // grid beyond the blank, so that its sides can be interpolated

struct CellRange {
  int x0, x1, y0, y1; // inclusive
  bool empty() const { return x0 > x1 || y0 > y1; }
};

CellRange cells_around(const Stock::Grid &grid, Vec2 a, Vec2 b, double reach_mm) {
  const Vec2 low = (glm::min(a, b) - Vec2(reach_mm) - grid.origin_mm) / grid.cell_mm;
  const Vec2 high = (glm::max(a, b) + Vec2(reach_mm) - grid.origin_mm) / grid.cell_mm;
  return {std::max(0, static_cast<int>(std::ceil(std::max(low.x, -1.0)))),
          std::min(grid.nx - 1, static_cast<int>(std::floor(std::min(high.x, 1e9)))),
          std::max(0, static_cast<int>(std::ceil(std::max(low.y, -1.0)))),
          std::min(grid.ny - 1, static_cast<int>(std::floor(std::min(high.y, 1e9))))};
}

/// What a stroke takes out of one layer, seen from where it begins.
struct Capsule {
  Vec2 ab{0.0}, per_length{0.0};
  double radius_mm = 0;
};

/// Grid points first..last of a row; x counted from begin_mm.
struct RowPart {
  int first = 0, last = -1;
  double origin_mm = 0, cell_mm = 0, begin_mm = 0;
};

ASPERITY_WIDE void carve_row(float *row, const RowPart &part, double py, const Capsule &capsule) {
  const double origin = part.origin_mm, cell = part.cell_mm, begin = part.begin_mm;
  const double abx = capsule.ab.x, aby = capsule.ab.y, radius = capsule.radius_mm;
  const double perx = capsule.per_length.x, py_part = py * capsule.per_length.y;
  const int last = part.last;
#pragma GCC ivdep
  for (int i = part.first; i <= last; ++i) {
    const double px = origin + i * cell - begin;
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
  for (std::size_t l = 0; l < layers(); ++l) {
    if (bounds_mm_[l] < deepest - 1e-9 || bounds_mm_[l] > tip + flute_length_mm)
      continue;
    const double height = std::max(0.0, 0.5 * (bounds_mm_[l] + bounds_mm_[l + 1]) - tip);
    carve_layer(l, from.axis_mm + from.lean * height, to.axis_mm + to.lean * height,
                profile.radius_at(height));
  }
  lower_surface(from, to, profile);
}

void Stock::carve_layer(std::size_t l, Vec2 a, Vec2 b, double radius_mm) {
  if (radius_mm <= 0.0)
    return;
  const CellRange cells = cells_around(grid_, a, b, radius_mm + 1.5 * grid_.cell_mm);
  if (cells.empty())
    return;
  const Vec2 ab = b - a;
  const double length2 = glm::dot(ab, ab);
  Capsule capsule{ab, length2 > 0.0 ? ab / length2 : Vec2(0.0), radius_mm};
  for (int j = cells.y0; j <= cells.y1; ++j) {
    float *row = layer(l) + static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx);
    const double py = grid_.origin_mm.y + j * grid_.cell_mm - a.y;
    carve_row(row, {cells.x0, cells.x1, grid_.origin_mm.x, grid_.cell_mm, a.x}, py, capsule);
  }
}

void Stock::lower_surface(const Stroke &from, const Stroke &to, const CutterProfile &profile) {
  const Vec2 a = from.axis_mm, ab = to.axis_mm - from.axis_mm;
  const double radius = profile.radius_mm(), length2 = glm::dot(ab, ab);
  const CellRange cells = cells_around(grid_, a, to.axis_mm, radius);
  for (int j = cells.y0; j <= cells.y1; ++j) {
    for (int i = cells.x0; i <= cells.x1; ++i) {
      const Vec2 p = grid_.origin_mm + Vec2(i, j) * grid_.cell_mm - a;
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
