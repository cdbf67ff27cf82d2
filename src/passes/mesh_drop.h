// A cutter set down on a triangle mesh.
#pragma once

#include "asperity/shape/cutter_profile.h"
#include "asperity/shape/mesh.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace asperity {

class MeshDrop {
public:
  /// Keeps a reference to the mesh.
  MeshDrop(const Mesh &mesh, const CutterProfile &profile);
  std::optional<double> tip_mm(Vec2 p) const;

private:
  using Triangle = std::array<Vec3, 3>;
  void raise(const Triangle &triangle, Vec2 p, double &tip_mm) const;
  void raise_by_edge(Vec3 a, Vec3 b, Vec2 p, double &tip_mm) const;
  void raise_by_facet(const Triangle &triangle, Vec2 p, double &tip_mm) const;

  const Mesh *mesh_;
  CutterProfile profile_;
  double cell_mm_ = 1;
  int columns_ = 1, rows_ = 1;
  /// Triangles by plan cell, each in every cell that it or the cutter's radius round it touches.
  std::vector<std::vector<std::uint32_t>> cells_;
};

} // namespace asperity
