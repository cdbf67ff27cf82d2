// A cutter in its holder.
#pragma once

#include "asperity/shape/cutter_profile.h"

#include <string>

namespace asperity {

enum class CutterKind { flat, ball, corner_radius, tapered, v };
enum class ToolMaterial { carbide, hss };

struct Cutter {
  int number = 1; ///< T word
  std::string name;
  CutterKind kind = CutterKind::flat;
  double diameter_mm = 0;
  double corner_radius_mm = 0; ///< corner_radius and tapered
  double tip_diameter_mm = 0;  ///< tapered (over the corner arcs) and v
  double half_angle_deg = 0;   ///< tapered and v: flank from the axis
  int flutes = 2;
  double helix_deg = 30; ///< right-hand, up-cut positive
  double flute_length_mm = 0;
  double shank_diameter_mm = 0;
  double stick_out_mm = 0; ///< tip to holder face
  ToolMaterial material = ToolMaterial::carbide;
  double runout_mm = 0.02;      ///< total indicator reading at the tip
  double diameter_error_mm = 0; ///< real minus nominal
  double edge_radius_um = 6;
  double length_offset_mm = 0; ///< G43 table value, H = number
  /// Fluted part bends like a round bar of this share of its diameter.
  double flute_core_ratio = 0.8;

  double elastic_modulus_MPa() const { return material == ToolMaterial::carbide ? 580e3 : 215e3; }
  /// Nominal silhouette (no runout, no diameter error).
  CutterProfile profile() const;
};

} // namespace asperity
