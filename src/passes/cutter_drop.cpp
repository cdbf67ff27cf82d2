// Cutters set down on caps and meshes.
#include "asperity/passes/cutter_drop.h"

#include "mesh_drop.h"

#include <algorithm>
#include <cmath>

namespace asperity {

struct CutterDrop::Surface {
  bool is_cap = true;
  Vec2 centre{0.0};
  double sphere_mm = 0, apex_mm = 0, flat_mm = 0, corner_mm = 0, axis_at_rim_mm = 0;
  std::optional<MeshDrop> mesh;
};

double axis_at_rim_mm(const DomeFeature &cap, const CutterProfile &profile) {
  return profile.tip_flat_mm() +
         (cap.sphere_radius_mm + profile.corner_mm()) * cap.rim_radius_mm / cap.sphere_radius_mm;
}

CutterDrop::CutterDrop(const DomeFeature &dome, const CutterProfile &profile) {
  auto surface = std::make_unique<Surface>();
  surface->is_cap = !dome.surface;
  surface->centre = dome.centre;
  surface->sphere_mm = dome.sphere_radius_mm;
  surface->apex_mm = dome.apex_z_mm;
  surface->flat_mm = profile.tip_flat_mm();
  surface->corner_mm = profile.corner_mm();
  if (dome.surface)
    surface->mesh.emplace(dome.surface->mesh(), profile);
  else
    surface->axis_at_rim_mm = asperity::axis_at_rim_mm(dome, profile);
  surface_ = std::move(surface);
}

CutterDrop::~CutterDrop() = default;
CutterDrop::CutterDrop(CutterDrop &&) noexcept = default;

std::optional<double> CutterDrop::tip_mm(Vec2 p) const {
  if (!surface_->is_cap)
    return surface_->mesh->tip_mm(p);
  const double d_mm = std::min(glm::distance(p, surface_->centre), surface_->axis_at_rim_mm);
  const double beside_mm = std::max(0.0, d_mm - surface_->flat_mm);
  const double reach_mm = surface_->sphere_mm + surface_->corner_mm;
  return surface_->apex_mm - reach_mm + std::sqrt(std::max(0.0, reach_mm * reach_mm - beside_mm * beside_mm));
}

} // namespace asperity
