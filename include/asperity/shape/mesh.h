// A triangle mesh read from STL, and what is asked of it: rays and plan slices.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/base/vec.h"

#include <array>
#include <filesystem>
#include <memory>
#include <optional>
#include <vector>

namespace asperity {

struct Mesh {
  std::vector<std::array<Vec3, 3>> triangles;
  Vec3 low{0.0}, high{0.0};
};

/// Binary or ASCII STL [file unit taken as mm]. Problems: not STL, truncated, no triangle, not finite.
std::optional<Mesh> read_stl(const std::filesystem::path &path, Problems &problems);

/// Ray queries through a mesh, sped up by a grid. Keeps a reference-counted copy; cheap to copy.
class MeshRays {
public:
  MeshRays() = default;
  explicit MeshRays(Mesh mesh);
  const Mesh &mesh() const;
  /// Highest crossing of the vertical line through p, or nothing.
  std::optional<double> top_mm(Vec2 p) const;
  /// Signed distance in the plan slice at height z, positive inside (even-odd rule) [mm]; -infinity where the
  /// mesh has nothing at z. Slices are kept by z, so ask many points at the same heights.
  double plan_depth_mm(Vec2 p, double z_mm) const;

private:
  struct Grid;
  std::shared_ptr<const Grid> grid_;
};

} // namespace asperity
