// Vertical rays through a mesh, sped up by a grid over its plan, and cached slices.
#include "asperity/shape/mesh.h"

#include "plan_slice.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <mutex>
#include <shared_mutex>
#include <utility>

namespace asperity {
namespace {

constexpr double kMostCellsAcross = 2048.0;
/// Slices kept before the cache is emptied: more than the rows of any wall chart.
constexpr std::size_t kMostSlices = 4096;

/// Side of p on the line a -> b. Ends in a fixed order, so that neighbours agree about a point on their edge.
double side_of(Vec2 a, Vec2 b, Vec2 p) {
  const bool swapped = b.x < a.x || (b.x == a.x && b.y < a.y);
  return swapped ? -cross(a - b, p - b) : cross(b - a, p - a);
}

/// Height of the triangle above p, its rim included; nothing when p is outside or the triangle stands
/// upright.
std::optional<double> height_over(const std::array<Vec3, 3> &t, Vec2 p) {
  const double w0 = side_of(plan(t[1]), plan(t[2]), p), w1 = side_of(plan(t[2]), plan(t[0]), p),
               w2 = side_of(plan(t[0]), plan(t[1]), p);
  const bool inside = (w0 >= 0.0 && w1 >= 0.0 && w2 >= 0.0) || (w0 <= 0.0 && w1 <= 0.0 && w2 <= 0.0);
  const double sum = w0 + w1 + w2;
  if (!inside || sum == 0.0)
    return std::nullopt;
  // Differences from one corner, so that a level triangle gives exactly its own height.
  return t[0].z + (w1 * (t[1].z - t[0].z) + w2 * (t[2].z - t[0].z)) / sum;
}

} // namespace

struct MeshRays::Grid {
  Mesh mesh;
  double cell_mm = 1.0;
  std::size_t nx = 1, ny = 1;
  std::vector<std::uint32_t> begin, list; ///< triangles by cell: begin[c]..begin[c + 1] of list
  mutable std::shared_mutex slices_lock;
  mutable std::map<double, std::shared_ptr<const PlanSlice>> slices;

  explicit Grid(Mesh from);
  std::size_t column_of(double x) const { return index_of(x - mesh.low.x, nx); }
  std::size_t row_of(double y) const { return index_of(y - mesh.low.y, ny); }
  std::shared_ptr<const PlanSlice> slice_at(double z_mm) const;

private:
  std::size_t index_of(double distance, std::size_t count) const {
    const double i = std::floor(distance / cell_mm);
    return static_cast<std::size_t>(std::clamp(i, 0.0, static_cast<double>(count - 1)));
  }
  template <class Take> void for_cells_of(const std::array<Vec3, 3> &t, Take take) const {
    const Vec3 low = glm::min(glm::min(t[0], t[1]), t[2]), high = glm::max(glm::max(t[0], t[1]), t[2]);
    for (std::size_t j = row_of(low.y); j <= row_of(high.y); ++j)
      for (std::size_t i = column_of(low.x); i <= column_of(high.x); ++i)
        take(j * nx + i);
  }
};

MeshRays::Grid::Grid(Mesh from) : mesh(std::move(from)) {
  const Vec2 extent = plan(mesh.high) - plan(mesh.low);
  const double across =
      std::clamp(std::sqrt(static_cast<double>(mesh.triangles.size())), 1.0, kMostCellsAcross);
  cell_mm = std::max(std::max(extent.x, extent.y) / across, 1e-9);
  nx = static_cast<std::size_t>(extent.x / cell_mm) + 1;
  ny = static_cast<std::size_t>(extent.y / cell_mm) + 1;
  begin.assign(nx * ny + 1, 0);
  for (const auto &t : mesh.triangles)
    for_cells_of(t, [&](std::size_t cell) { ++begin[cell + 1]; });
  for (std::size_t cell = 0; cell < nx * ny; ++cell)
    begin[cell + 1] += begin[cell];
  list.resize(begin.back());
  std::vector<std::uint32_t> next(begin.begin(), begin.end() - 1);
  for (std::size_t i = 0; i < mesh.triangles.size(); ++i)
    for_cells_of(mesh.triangles[i],
                 [&](std::size_t cell) { list[next[cell]++] = static_cast<std::uint32_t>(i); });
}

std::shared_ptr<const PlanSlice> MeshRays::Grid::slice_at(double z_mm) const {
  {
    const std::shared_lock reading(slices_lock);
    if (const auto found = slices.find(z_mm); found != slices.end())
      return found->second;
  }
  // Sliced outside the lock: two threads may do the same work once, none waits for the other.
  auto slice = std::make_shared<const PlanSlice>(edges_at(mesh.triangles, z_mm));
  const std::unique_lock writing(slices_lock);
  if (slices.size() >= kMostSlices)
    slices.clear();
  return slices.emplace(z_mm, std::move(slice)).first->second;
}

MeshRays::MeshRays(Mesh mesh) : grid_(std::make_shared<const Grid>(std::move(mesh))) {}

const Mesh &MeshRays::mesh() const {
  assert(grid_);
  return grid_->mesh;
}

std::optional<double> MeshRays::top_mm(Vec2 p) const {
  if (!grid_)
    return std::nullopt;
  const Grid &grid = *grid_;
  const Vec2 low = plan(grid.mesh.low), high = plan(grid.mesh.high);
  if (!(p.x >= low.x && p.x <= high.x && p.y >= low.y && p.y <= high.y))
    return std::nullopt;
  const std::size_t cell = grid.row_of(p.y) * grid.nx + grid.column_of(p.x);
  std::optional<double> top;
  for (std::uint32_t k = grid.begin[cell]; k < grid.begin[cell + 1]; ++k)
    if (const auto height = height_over(grid.mesh.triangles[grid.list[k]], p);
        height && (!top || *height > *top))
      top = height;
  return top;
}

double MeshRays::plan_depth_mm(Vec2 p, double z_mm) const {
  return grid_ ? grid_->slice_at(z_mm)->depth_mm(p) : -std::numeric_limits<double>::infinity();
}

} // namespace asperity
