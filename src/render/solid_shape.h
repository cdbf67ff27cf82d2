// Triangles of plain solids: prisms over outlines, turned profiles, level caps with holes.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/shape/mesh.h"
#include "asperity/shape/outline.h"

#include <array>
#include <vector>

namespace asperity {

struct SolidVertex {
  std::array<float, 3> place, normal;
};

using Loop = std::vector<Vec2>; ///< closed, without its first point again

/// Points on the outline moved out by offset_mm, close enough together that a chord is not seen.
Loop loop_of(const Outline &outline, double offset_mm = 0.0);
Loop circle_loop(Vec2 centre, double diameter_mm);
Loop box_loop(Vec2 centre, Vec2 size_mm);

class SolidShape {
public:
  /// Upright sides; normals point away from the loop's inside, or into it.
  void add_sides(const Loop &loop, double z_bottom_mm, double z_top_mm, bool points_outwards = true);
  /// A level face: inside an odd number of the loops.
  void add_cap(const std::vector<Loop> &loops, double z_mm, bool faces_up = true);
  void add_prism(const std::vector<Loop> &loops, double z_bottom_mm, double z_top_mm);
  /// Points (radius, height) turned round the upright axis through centre.
  void add_turned(const std::vector<Vec2> &profile_mm, Vec3 centre);
  void add_mesh(const Mesh &mesh);
  /// Four corners in turn, in the plane z = 0, facing up.
  void add_flat(Vec2 a, Vec2 b, Vec2 c, Vec2 d);

  const std::vector<SolidVertex> &vertices() const { return vertices_; }
  bool is_empty() const { return vertices_.empty(); }

private:
  void triangle(Vec3 a, Vec3 b, Vec3 c, Vec3 na, Vec3 nb, Vec3 nc);
  void quad(const std::array<Vec3, 4> &corners, const std::array<Vec3, 4> &normals);
  std::vector<SolidVertex> vertices_;
};

} // namespace asperity
