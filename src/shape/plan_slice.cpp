// Slices a mesh and answers distances in the slice by searching outward from the point's own grid cell.
#include "plan_slice.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <utility>

namespace asperity {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

/// Where an edge crosses z. The lower end first, so that both triangles of an edge get the same bits.
Vec2 crossing(Vec3 a, Vec3 b, double z) {
  if (b.z < a.z)
    std::swap(a, b);
  const double t = (z - a.z) / (b.z - a.z);
  return plan(a) + t * (plan(b) - plan(a));
}

double distance2(const PlanEdge &edge, Vec2 p) {
  const Vec2 along = edge[1] - edge[0], d = p - edge[0];
  const double length2 = glm::dot(along, along);
  const double t = length2 > 0.0 ? std::clamp(glm::dot(d, along) / length2, 0.0, 1.0) : 0.0;
  const Vec2 off = d - t * along;
  return glm::dot(off, off);
}

/// Lists of edges by key, packed: begin[k]..begin[k + 1] of `list`.
void pack(std::size_t keys, std::size_t edges,
          const std::function<void(std::size_t edge, const std::function<void(std::size_t key)> &)> &keys_of,
          std::vector<std::uint32_t> &begin, std::vector<std::uint32_t> &list) {
  begin.assign(keys + 1, 0);
  for (std::size_t e = 0; e < edges; ++e)
    keys_of(e, [&](std::size_t key) { ++begin[key + 1]; });
  for (std::size_t k = 0; k < keys; ++k)
    begin[k + 1] += begin[k];
  list.resize(begin[keys]);
  std::vector<std::uint32_t> next(begin.begin(), begin.end() - 1);
  for (std::size_t e = 0; e < edges; ++e)
    keys_of(e, [&](std::size_t key) { list[next[key]++] = static_cast<std::uint32_t>(e); });
}

} // namespace

std::vector<PlanEdge> edges_at(const std::vector<std::array<Vec3, 3>> &triangles, double z_mm) {
  std::vector<PlanEdge> edges;
  for (const auto &t : triangles) {
    const int above = (t[0].z >= z_mm) + (t[1].z >= z_mm) + (t[2].z >= z_mm);
    if (above == 0 || above == 3)
      continue;
    // The corner that stands alone on its side sees both crossings.
    const bool alone_is_above = above == 1;
    std::size_t alone = 0;
    while ((t[alone].z >= z_mm) != alone_is_above)
      ++alone;
    edges.push_back(
        {crossing(t[alone], t[(alone + 1) % 3], z_mm), crossing(t[alone], t[(alone + 2) % 3], z_mm)});
  }
  return edges;
}

PlanSlice::PlanSlice(std::vector<PlanEdge> edges) : edges_(std::move(edges)) {
  if (edges_.empty())
    return;
  low_ = Vec2(kInfinity), high_ = Vec2(-kInfinity);
  for (const PlanEdge &edge : edges_)
    for (const Vec2 p : edge) {
      low_ = glm::min(low_, p);
      high_ = glm::max(high_, p);
    }
  fill_cells();
}

void PlanSlice::fill_cells() {
  // About as many cells as edges along each side of the box, since a slice is a line and not an area.
  const double side = std::clamp(2.0 * std::sqrt(static_cast<double>(edges_.size())), 1.0, 512.0);
  cell_mm_ = std::max({(high_.x - low_.x) / side, (high_.y - low_.y) / side, 1e-9});
  nx_ = static_cast<std::size_t>((high_.x - low_.x) / cell_mm_) + 1;
  ny_ = static_cast<std::size_t>((high_.y - low_.y) / cell_mm_) + 1;
  const auto rows_of = [&](std::size_t e, const std::function<void(std::size_t)> &take) {
    const auto [bottom, top] = std::minmax(edges_[e][0].y, edges_[e][1].y);
    for (std::size_t j = row_of(bottom); j <= row_of(top); ++j)
      take(j);
  };
  const auto cells_of = [&](std::size_t e, const std::function<void(std::size_t)> &take) {
    const auto [left, right] = std::minmax(edges_[e][0].x, edges_[e][1].x);
    const double near2 = 0.5 * cell_mm_ * cell_mm_ * (1.0 + 1e-9); // half a cell's diagonal, squared
    rows_of(e, [&](std::size_t j) {
      for (std::size_t i = column_of(left); i <= column_of(right); ++i) {
        const Vec2 middle =
            low_ + cell_mm_ * Vec2(static_cast<double>(i) + 0.5, static_cast<double>(j) + 0.5);
        if (distance2(edges_[e], middle) <= near2)
          take(j * nx_ + i);
      }
    });
  };
  pack(ny_, edges_.size(), rows_of, row_begin_, row_edges_);
  pack(nx_ * ny_, edges_.size(), cells_of, cell_begin_, cell_edges_);
}

std::size_t PlanSlice::column_of(double x) const {
  const double i = std::floor((x - low_.x) / cell_mm_);
  return static_cast<std::size_t>(std::clamp(i, 0.0, static_cast<double>(nx_ - 1)));
}

std::size_t PlanSlice::row_of(double y) const {
  const double j = std::floor((y - low_.y) / cell_mm_);
  return static_cast<std::size_t>(std::clamp(j, 0.0, static_cast<double>(ny_ - 1)));
}

bool PlanSlice::is_inside(Vec2 p) const {
  if (p.x < low_.x || p.x > high_.x || p.y < low_.y || p.y > high_.y)
    return false;
  bool inside = false;
  const std::size_t row = row_of(p.y);
  for (std::uint32_t k = row_begin_[row]; k < row_begin_[row + 1]; ++k) {
    Vec2 a = edges_[row_edges_[k]][0], b = edges_[row_edges_[k]][1];
    if ((a.y > p.y) == (b.y > p.y))
      continue;
    if (b.y < a.y)
      std::swap(a, b);
    if (cross(b - a, p - a) > 0.0) // p lies to the left of the rising edge: a ray towards +x meets it
      inside = !inside;
  }
  return inside;
}

double PlanSlice::cell_distance2(std::size_t cell, Vec2 p) const {
  double least = kInfinity;
  for (std::uint32_t k = cell_begin_[cell]; k < cell_begin_[cell + 1]; ++k)
    least = std::min(least, distance2(edges_[cell_edges_[k]], p));
  return least;
}

double PlanSlice::depth_mm(Vec2 p) const {
  if (edges_.empty())
    return -kInfinity;
  const auto ci = static_cast<std::ptrdiff_t>(column_of(p.x)), cj = static_cast<std::ptrdiff_t>(row_of(p.y));
  const auto nx = static_cast<std::ptrdiff_t>(nx_), ny = static_cast<std::ptrdiff_t>(ny_);
  double best2 = kInfinity;
  // Cells k rings away are at least k - 1 cells distant, also from a point outside the box: moving it to the
  // nearest point of the box brings it no farther from any cell.
  for (std::ptrdiff_t k = 0; k < std::max(nx, ny); ++k) {
    const double ring_mm = cell_mm_ * static_cast<double>(std::max<std::ptrdiff_t>(k - 1, 0));
    if (k > 0 && best2 <= ring_mm * ring_mm)
      break;
    for (std::ptrdiff_t j = std::max<std::ptrdiff_t>(cj - k, 0); j <= std::min(cj + k, ny - 1); ++j) {
      const bool whole_row = j == cj - k || j == cj + k;
      const std::ptrdiff_t step = whole_row || k == 0 ? 1 : 2 * k;
      for (std::ptrdiff_t i = ci - k; i <= ci + k; i += step)
        if (i >= 0 && i < nx)
          best2 = std::min(best2, cell_distance2(static_cast<std::size_t>(j * nx + i), p));
    }
  }
  const double distance = std::sqrt(best2);
  return is_inside(p) ? distance : -distance;
}

} // namespace asperity
