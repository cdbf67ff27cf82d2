// The part's surfaces that matter, with the size and finish wanted. Part frame, mm.
#pragma once

#include "asperity/shape/mesh.h"
#include "asperity/shape/outline.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace asperity {

struct SizeWanted {
  double nominal_mm = 0;
  double lower_mm = 0; ///< smallest allowed size
  double upper_mm = 0; ///< largest allowed size
};

struct FinishWanted {
  std::optional<double> ra_um;
  std::optional<double> lip_mm;           ///< highest lip allowed at the base
  std::optional<double> witness_depth_um; ///< deepest witness line or level step allowed
};

enum class Side { outside, inside };
enum class OutlineKind { circle, rounded_rectangle, free_form };

struct WallFeature {
  std::string name;
  OutlineKind kind = OutlineKind::circle;
  Outline outline;
  Vec2 centre{0.0};
  double diameter_mm = 0; ///< circle
  Vec2 width_mm{0.0};     ///< rounded rectangle: along x, along y
  Side side = Side::outside;
  double z_bottom_mm = 0, z_top_mm = 0;
  /// Circle: diameter. Rounded rectangle: [0] width along x, [1] width along y. Free form: offset, nominal 0.
  std::optional<SizeWanted> size[2];
  FinishWanted finish;
};

struct FloorFeature {
  std::string name;
  Outline outline;
  std::vector<Outline> islands; ///< not part of the floor
  double z_mm = 0;
  double measured_from_z_mm = 0; ///< the face the height is measured from
  std::optional<SizeWanted> height;
  FinishWanted finish;
};

struct DomeFeature {
  std::string name;
  Vec2 centre{0.0};
  double sphere_radius_mm = 0; ///< cap: apex at apex_z_mm, rim at rim_radius_mm
  double apex_z_mm = 0;
  double rim_radius_mm = 0;
  std::optional<MeshRays> surface;  ///< sculpted: seen from above, inside outline
  Outline outline;                  ///< plan limit (a circle for the cap)
  std::optional<SizeWanted> height; ///< of the highest point, from measured_from_z_mm
  double measured_from_z_mm = 0;
  FinishWanted finish;
};

using Feature = std::variant<WallFeature, FloorFeature, DomeFeature>;

const std::string &name_of(const Feature &feature);
const FinishWanted &finish_of(const Feature &feature);
const Outline &outline_of(const Feature &feature);

} // namespace asperity
