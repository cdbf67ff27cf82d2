#include "carving.h"

#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <limits>

namespace asperity {

namespace {

RowPart points_between(double low_mm, double high_mm, double cell_mm, int count) {
  return {static_cast<int>(std::ceil(std::clamp(low_mm / cell_mm, 0.0, double(count)))),
          static_cast<int>(std::floor(std::clamp(high_mm / cell_mm, -1.0, count - 1.0)))};
}

/// A straight way with all that is near it, counted from its begin.
struct Reached {
  Vec2 begin_mm{0.0}; ///< from grid point (0, 0)
  Vec2 ab_mm{0.0}, low_mm{0.0}, high_mm{0.0};
  double reach_mm = 0;
  double behind_mm2 = std::numeric_limits<double>::infinity(); ///< p ab > minus this
};

ASPERITY_WIDE void find_rows(const Stock::Grid &grid, const Reached &reached, int first_row, int count,
                             RowPart *rows) {
  const Vec2 ab = reached.ab_mm;
  const double infinity = std::numeric_limits<double>::infinity();
  for (int k = 0; k < count; ++k) {
    const double y = (first_row + k) * grid.cell_mm - reached.begin_mm.y;
    const double beside = std::max(std::max(0.0, reached.low_mm.y - y), y - reached.high_mm.y);
    const double half = std::sqrt(std::max(0.0, reached.reach_mm * reached.reach_mm - beside * beside));
    // x ab.x + y ab.y > -behind; beside a way along y a row is either all or not at all.
    const double room = -reached.behind_mm2 - y * ab.y;
    const double bound = room / (ab.x == 0.0 ? 1.0 : ab.x);
    const double least_x = ab.x > 0.0 ? bound : -infinity;
    const double most_x = ab.x < 0.0 ? bound : ab.x == 0.0 && room > 0.0 ? -infinity : infinity;
    const double from = std::max(reached.low_mm.x - half, least_x);
    const double to = std::min(reached.high_mm.x + half, most_x);
    rows[k] = points_between(reached.begin_mm.x + from, reached.begin_mm.x + to, grid.cell_mm, grid.nx);
  }
}

} // namespace

void find_swath(const Stock::Grid &grid, Vec2 a, Vec2 ab, double reach_mm, std::optional<double> behind_mm,
                Swath &swath) {
  Reached reached{a - grid.origin_mm, ab, glm::min(ab, Vec2(0.0)), glm::max(ab, Vec2(0.0)), reach_mm};
  if (behind_mm)
    reached.behind_mm2 = *behind_mm * glm::length(ab);
  const RowPart rows =
      points_between(reached.begin_mm.y + reached.low_mm.y - reach_mm,
                     reached.begin_mm.y + reached.high_mm.y + reach_mm, grid.cell_mm, grid.ny);
  swath.first_row = rows.first;
  swath.rows.resize(static_cast<std::size_t>(std::max(0, rows.last - rows.first + 1)));
  find_rows(grid, reached, rows.first, static_cast<int>(swath.rows.size()), swath.rows.data());
}

namespace {

/// A capsule in float, and where one row begins.
struct CapsuleRow {
  float per_x, per_y, ab_x, ab_y; ///< ab over its square, and ab
  float cell_mm;
  float x_mm = 0, y_mm = 0; ///< of the row's first point

  CapsuleRow(Vec2 ab_mm, double cell) : ab_x(static_cast<float>(ab_mm.x)), ab_y(static_cast<float>(ab_mm.y)) {
    const double length2 = glm::dot(ab_mm, ab_mm);
    const Vec2 per = length2 > 0.0 ? ab_mm / length2 : Vec2(0.0);
    per_x = static_cast<float>(per.x), per_y = static_cast<float>(per.y);
    cell_mm = static_cast<float>(cell);
  }

  /// Squared distance of the row's point `i` to the capsule's axis.
  ASPERITY_INTO_WIDE float distance2_mm2(int i) const {
    const float px = x_mm + static_cast<float>(i) * cell_mm;
    const float along = px * per_x + y_mm * per_y;
    const float u = std::min(std::max(0.0F, along), 1.0F);
    const float dx = px - u * ab_x, dy = y_mm - u * ab_y;
    return dx * dx + dy * dy;
  }
};

} // namespace

ASPERITY_INTO_WIDE bool are_deep(const float *cells, float deep_mm) {
  std::int32_t above = 0;
#pragma omp simd reduction(| : above)
  for (int i = 0; i < kCarvedAtOnce; ++i)
    above |= cells[i] > deep_mm ? 1 : 0;
  return above == 0;
}

ASPERITY_WIDE void carve_rows(float *layer, const Stock::Grid &grid, const Swath &swath,
                              const Capsule &capsule, float deep_mm) {
  CapsuleRow c(capsule.ab_mm, grid.cell_mm);
  const float radius = static_cast<float>(capsule.radius_mm);
  for (std::size_t k = 0; k < swath.rows.size(); ++k) {
    const int j = swath.first_row + static_cast<int>(k), first = swath.rows[k].first;
    const int count = swath.rows[k].last - first + 1;
    float *row = layer + static_cast<std::ptrdiff_t>(j) * grid.nx + first;
    c.x_mm = static_cast<float>(capsule.begin_mm.x + first * grid.cell_mm);
    c.y_mm = static_cast<float>(capsule.begin_mm.y + j * grid.cell_mm);
    // Whole vectors only: points beyond the part are written as they were.
    for (int at = 0; at < count; at += kCarvedAtOnce) {
      float *cells = row + at;
      if (are_deep(cells, deep_mm))
        continue;
#pragma omp simd
      for (int i = 0; i < kCarvedAtOnce; ++i) {
        const float d = std::sqrt(c.distance2_mm2(at + i)) - radius;
        const float before = cells[i], after = d < before ? d : before;
        cells[i] = at + i < count ? after : before;
      }
    }
  }
}

namespace {

/// A stroke as the upper surface sees it.
struct SurfaceStroke {
  Vec2 axis_mm{0.0}, ab_mm{0.0};
  double length2_mm2 = 0, radius_mm = 0;
  double from_tip_mm = 0, rise_mm = 0, deepest_mm = 0;
  const CutterProfile *profile = nullptr;
};

/// One grid point, p from the stroke's begin.
void lower_point(float &surface_mm, Vec2 p, const SurfaceStroke &s) {
  const double u = s.length2_mm2 > 0.0 ? std::clamp(glm::dot(p, s.ab_mm) / s.length2_mm2, 0.0, 1.0) : 1.0;
  const double rho = glm::length(p - u * s.ab_mm);
  if (rho > s.radius_mm)
    return;
  const double tip = s.length2_mm2 > 0.0 ? s.from_tip_mm + u * s.rise_mm : s.deepest_mm;
  surface_mm = std::min(surface_mm, static_cast<float>(tip + s.profile->height_at(rho)));
}

/// The largest float that is not above x.
float float_below(double x) {
  const float nearest = static_cast<float>(x);
  return static_cast<double>(nearest) <= x ? nearest
                                           : std::nextafter(nearest, -std::numeric_limits<float>::infinity());
}

using Marks = std::array<std::int32_t, kCarvedAtOnce>;

/// Marks the points above the deepest tip; true if there is any.
ASPERITY_INTO_WIDE bool find_above(const float *surface_mm, float deepest_mm, int count, Marks &is_above) {
  std::int32_t any = 0;
#pragma omp simd reduction(| : any)
  for (int i = 0; i < kCarvedAtOnce; ++i) {
    const std::int32_t is = (surface_mm[i] > deepest_mm ? 1 : 0) & (i < count ? 1 : 0);
    is_above[static_cast<std::size_t>(i)] = is;
    any |= is;
  }
  return any != 0;
}

ASPERITY_WIDE void lower_rows(float *surface_mm, const Stock::Grid &grid, const Swath &swath,
                              const SurfaceStroke &s) {
  constexpr double kRounding_mm = 1e-3;
  CapsuleRow c(s.ab_mm, grid.cell_mm);
  const float reach2 = static_cast<float>((s.radius_mm + kRounding_mm) * (s.radius_mm + kRounding_mm));
  const float deepest = float_below(s.deepest_mm);
  Marks is_above;
  for (std::size_t k = 0; k < swath.rows.size(); ++k) {
    const int j = swath.first_row + static_cast<int>(k), last = swath.rows[k].last;
    float *row = surface_mm + static_cast<std::ptrdiff_t>(j) * grid.nx;
    for (int first = swath.rows[k].first; first <= last; first += kCarvedAtOnce) {
      if (!find_above(row + first, deepest, last - first + 1, is_above))
        continue;
      const Vec2 p = grid.origin_mm + Vec2(first, j) * grid.cell_mm - s.axis_mm;
      c.x_mm = static_cast<float>(p.x), c.y_mm = static_cast<float>(p.y);
      for (int i = 0; i < kCarvedAtOnce; ++i)
        if (is_above[static_cast<std::size_t>(i)] && c.distance2_mm2(i) <= reach2)
          lower_point(row[first + i], grid.origin_mm + Vec2(first + i, j) * grid.cell_mm - s.axis_mm, s);
    }
  }
}

} // namespace

void lower_surface(float *surface_mm, const Stock::Grid &grid, const Swath &swath, const Stock::Stroke &from,
                   const Stock::Stroke &to, const CutterProfile &profile) {
  SurfaceStroke stroke;
  stroke.axis_mm = from.axis_mm;
  stroke.ab_mm = to.axis_mm - from.axis_mm;
  stroke.length2_mm2 = glm::dot(stroke.ab_mm, stroke.ab_mm);
  stroke.radius_mm = profile.radius_mm();
  stroke.from_tip_mm = from.tip_mm;
  stroke.rise_mm = to.tip_mm - from.tip_mm;
  stroke.deepest_mm = std::min(from.tip_mm, to.tip_mm);
  stroke.profile = &profile;
  lower_rows(surface_mm, grid, swath, stroke);
}

} // namespace asperity
