// A chart of either kind as one rectangular grid of cells.
#include "surface_grid.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A wall's columns close round the outline when the gap between last and first is no wider than this many
/// mean spacings.
constexpr double kWidestGap = 2.5;

const WallChart *wall_of(const Chart &chart) { return std::get_if<WallChart>(&chart); }
const FloorChart &floor_of(const Chart &chart) { return std::get<FloorChart>(chart); }

} // namespace

SurfaceKind surface_kind(const Chart &chart, std::size_t cell) {
  const bool is_cut = std::visit([cell](const auto &c) { return c.is_cut(cell); }, chart);
  if (!wall_of(chart) && !floor_of(chart).in_feature(cell))
    return SurfaceKind::absent;
  if (is_cut)
    return SurfaceKind::cut;
  const float e = residual_mm(chart, cell);
  if (!std::isfinite(e)) // a floor without blank over it
    return SurfaceKind::absent;
  return e > 0.0f ? SurfaceKind::standing : SurfaceKind::skin;
}

float residual_mm(const Chart &chart, std::size_t cell) {
  return std::visit([cell](const auto &c) { return c.residual_mm(cell); }, chart);
}

std::uint32_t owner_of(const Chart &chart, std::size_t cell) {
  return std::visit([cell](const auto &c) { return c.is_cut(cell) ? c.owner[cell] : kNobody; }, chart);
}

SurfaceGrid::SurfaceGrid(const Chart &chart, double seam_mm) : chart_(chart) {
  const WallChart *wall = wall_of(chart);
  if (!wall) {
    const FloorChart &floor = floor_of(chart);
    for (std::size_t i = 0; i < floor.nx; ++i) {
      order_.push_back(i);
      u_mm_.push_back(floor.x_mm(i));
    }
    for (std::size_t j = 0; j < floor.ny; ++j)
      v_mm_.push_back(floor.y_mm(j));
    return;
  }
  v_mm_ = wall->z_mm;
  length_mm_ = wall->outline.length_mm();
  mirrored_ = wall->inside;
  const std::size_t n = wall->columns();
  if (n == 0)
    return;
  const double gap = length_mm_ - (wall->s_mm.back() - wall->s_mm.front());
  closes_ = n > 2 && gap <= kWidestGap * (length_mm_ - gap) / static_cast<double>(n - 1);
  const auto first = std::lower_bound(wall->s_mm.begin(), wall->s_mm.end(), seam_mm);
  const std::size_t start = closes_ ? static_cast<std::size_t>(first - wall->s_mm.begin()) % n : 0;
  for (std::size_t k = 0; k < n + (closes_ ? 1 : 0); ++k) {
    const std::size_t column = (start + k) % n;
    double u = std::fmod(wall->s_mm[column] - seam_mm + 2.0 * length_mm_, length_mm_);
    if (!u_mm_.empty() && u < u_mm_.back())
      u += length_mm_;
    order_.push_back(column);
    u_mm_.push_back(u);
  }
}

std::size_t SurfaceGrid::cell(std::size_t i, std::size_t j) const {
  return std::visit([&](const auto &c) { return c.at(order_[i], j); }, chart_);
}

double SurfaceGrid::wanted_height(std::size_t i, std::size_t j) const {
  const FloorChart &floor = floor_of(chart_);
  const auto wanted = [&](std::size_t ii, std::size_t jj) {
    return static_cast<double>(floor.wanted_mm[floor.at(ii, jj)]);
  };
  double w = wanted(i, j);
  // Just outside the feature the nearest cell's height goes on.
  if (!std::isfinite(w) && i > 0)
    w = wanted(i - 1, j);
  if (!std::isfinite(w) && i + 1 < floor.nx)
    w = wanted(i + 1, j);
  if (!std::isfinite(w) && j > 0)
    w = wanted(i, j - 1);
  if (!std::isfinite(w) && j + 1 < floor.ny)
    w = wanted(i, j + 1);
  return floor.base_mm + (std::isfinite(w) ? w : 0.0);
}

Vec3 SurfaceGrid::place(std::size_t i, std::size_t j) const {
  if (const WallChart *wall = wall_of(chart_))
    return {wall->foot[order_[i]], v_mm_[j]};
  return {u_mm_[i], v_mm_[j], wanted_height(i, j)};
}

Vec3 SurfaceGrid::ray(std::size_t i, std::size_t) const {
  if (const WallChart *wall = wall_of(chart_))
    return {wall->normal[order_[i]], 0.0};
  return {0.0, 0.0, 1.0};
}

Vec3 SurfaceGrid::along_u(std::size_t i, std::size_t j) const {
  if (const WallChart *wall = wall_of(chart_)) {
    const Vec2 outward = wall->inside ? -wall->normal[order_[i]] : wall->normal[order_[i]];
    return {left_of(outward), 0.0};
  }
  const std::size_t before = i > 0 ? i - 1 : i, after = i + 1 < across() ? i + 1 : i;
  return after == before ? Vec3(1, 0, 0) : glm::normalize(place(after, j) - place(before, j));
}

Vec3 SurfaceGrid::along_v(std::size_t i, std::size_t j) const {
  if (wall_of(chart_))
    return {0.0, 0.0, 1.0};
  const std::size_t before = j > 0 ? j - 1 : j, after = j + 1 < up() ? j + 1 : j;
  return after == before ? Vec3(0, 1, 0) : glm::normalize(place(i, after) - place(i, before));
}

double SurfaceGrid::slope_between(std::size_t i0, std::size_t j0, std::size_t i1, std::size_t j1) const {
  const double run = i0 != i1 ? u_mm_[i1] - u_mm_[i0] : v_mm_[j1] - v_mm_[j0];
  return run > 0.0 ? static_cast<double>(residual(i1, j1) - residual(i0, j0)) / run : 0.0;
}

Vec2 SurfaceGrid::slope(std::size_t i, std::size_t j) const {
  if (!is_cut(i, j))
    return Vec2(0.0);
  // Across the seam of a closed wall the neighbour stands at the other end.
  if (closes_ && (i == 0 || i + 1 == across())) {
    const std::size_t last = across() - 1;
    const double du = (u_mm_[1] - u_mm_[0]) + (u_mm_[last] - u_mm_[last - 1]);
    const bool both = is_cut(1, j) && is_cut(last - 1, j);
    const double su =
        both && du > 0.0 ? static_cast<double>(residual(1, j) - residual(last - 1, j)) / du : 0.0;
    const std::size_t j0 = j > 0 && is_cut(i, j - 1) ? j - 1 : j;
    const std::size_t j1 = j + 1 < up() && is_cut(i, j + 1) ? j + 1 : j;
    return {su, slope_between(i, j0, i, j1)};
  }
  const std::size_t i0 = i > 0 && is_cut(i - 1, j) ? i - 1 : i;
  const std::size_t i1 = i + 1 < across() && is_cut(i + 1, j) ? i + 1 : i;
  const std::size_t j0 = j > 0 && is_cut(i, j - 1) ? j - 1 : j;
  const std::size_t j1 = j + 1 < up() && is_cut(i, j + 1) ? j + 1 : j;
  return {slope_between(i0, j, i1, j), slope_between(i, j0, i, j1)};
}

} // namespace asperity
