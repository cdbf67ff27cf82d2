// A horizontal slice of a mesh: its edges in plan, gridded for quick distances.
#pragma once

#include "asperity/base/vec.h"

#include <array>
#include <cstdint>
#include <vector>

namespace asperity {

using PlanEdge = std::array<Vec2, 2>;

/// Edges in which the triangles cross height z. Corners exactly at z count as above it, so loops stay closed.
std::vector<PlanEdge> edges_at(const std::vector<std::array<Vec3, 3>> &triangles, double z_mm);

class PlanSlice {
public:
  explicit PlanSlice(std::vector<PlanEdge> edges);
  /// Signed distance to the nearest edge [mm], positive inside (even-odd rule); -infinity without edges.
  double depth_mm(Vec2 p) const;

private:
  std::size_t column_of(double x) const;
  std::size_t row_of(double y) const;
  void fill_cells();
  bool is_inside(Vec2 p) const;
  /// Least squared distance to the edges listed in a cell.
  double cell_distance2(std::size_t cell, Vec2 p) const;

  std::vector<PlanEdge> edges_;
  Vec2 low_{0.0}, high_{0.0};
  double cell_mm_ = 1.0;
  std::size_t nx_ = 0, ny_ = 0;
  std::vector<std::uint32_t> cell_begin_, cell_edges_; ///< edges by cell, row-major
  std::vector<std::uint32_t> row_begin_, row_edges_;   ///< edges by row, each once
};

} // namespace asperity
