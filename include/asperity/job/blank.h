// The piece of material before cutting, and where its surface lies.
#pragma once

#include "asperity/base/vec.h"
#include "asperity/shape/mesh.h"
#include "asperity/shape/outline.h"

#include <optional>
#include <vector>

namespace asperity {

enum class BlankShape { cylinder, box, revolved, grown, mesh };

/// A round hole through the blank, or a round boss added to it.
struct RoundFeature {
  Vec2 centre{0.0};
  double diameter_mm = 0;
  double z_bottom_mm = 0, z_top_mm = 0;
  bool is_hole = true;
};

/// A plan slice as the cross-section of an upright beam, bending in its weakest direction.
struct BlankSection {
  double area_mm2 = 0;
  double second_moment_mm4 = 0;
  double section_modulus_mm3 = 0;
};

/// Part frame [mm]. plan_depth_mm and wall_stock_mm are what the engine asks.
struct Blank {
  BlankShape shape = BlankShape::cylinder;
  Vec2 centre{0.0};
  double z_bottom_mm = 0, z_top_mm = 0;
  double diameter_mm = 0;       ///< cylinder
  Vec2 size_mm{0.0};            ///< box
  std::vector<Vec2> profile_mm; ///< revolved: (radius, z), z rising
  Outline grown_from;           ///< grown: a wall's outline, moved out by allowance_mm
  double allowance_mm = 0;      ///< added all round in plan to any shape
  std::vector<RoundFeature> rounds;
  MeshRays mesh;
  double layer_height_mm = 0;         ///< 0 = not printed
  double elephant_foot_mm = 0;        ///< extra per side at the very bottom, fading to 0 ...
  double elephant_foot_height_mm = 0; ///< ... at this height above z_bottom

  /// Signed distance [mm] to the blank's side surface in the plan slice at height z; positive inside the
  /// blank; negative everywhere if z is outside the blank. Exact for round and straight sides; where a hole
  /// or boss meets another side it is the nearer one's, at most the true distance.
  double plan_depth_mm(Vec2 p, double z_mm) const;
  /// True if plan_depth_mm and wall_stock_mm are surely the same at both heights, wherever in plan.
  bool has_same_slice(double z_mm, double other_z_mm) const;
  /// Height of the blank's upper surface over p, or nothing where there is no blank.
  std::optional<double> top_mm(Vec2 p) const;
  /// Distance [mm] from wall point p (height z) along its outward unit normal to the blank's surface:
  /// positive = stock outside the wall, negative = blank too small there. Clamped to [-reach_mm, reach_mm].
  /// It is the end of the stretch of blank that holds p, else of the last stretch behind p; -reach_mm if
  /// there is none behind, even if blank floats in front.
  double wall_stock_mm(Vec2 p, Vec2 normal, double z_mm, double reach_mm) const;
  /// Plan box that holds the blank.
  Vec2 low_mm() const;
  Vec2 high_mm() const;
  /// The slice at height z. Closed form for a plain cylinder, box or revolved blank, else summed over a grid.
  BlankSection section_at(double z_mm) const;
  /// The weakest slice of the lower half: what bends and breaks when the blank is gripped below.
  BlankSection weakest_section() const;
  /// Second moment of area of the blank as an upright beam [mm^4] and section modulus [mm^3], weakest
  /// direction.
  double second_moment_mm4() const;
  double section_modulus_mm3() const;
  double section_area_mm2() const;
};

} // namespace asperity
