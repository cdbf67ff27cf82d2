// The lowest height at which a cutter's tip can stand over a place without cutting into a surface.
#pragma once

#include "asperity/job/feature.h"
#include "asperity/shape/cutter_profile.h"

#include <memory>
#include <optional>

namespace asperity {

/// Part frame [mm]. A cap in closed form; a mesh by vertices, edges and facets.
class CutterDrop {
public:
  CutterDrop(const DomeFeature &dome, const CutterProfile &profile);
  ~CutterDrop();
  CutterDrop(CutterDrop &&) noexcept;

  /// Tip height over p; nothing where the cutter meets no part of the surface. Beyond a cap's rim: as at the
  /// rim.
  std::optional<double> tip_mm(Vec2 p) const;

private:
  struct Surface;
  std::unique_ptr<const Surface> surface_;
};

/// Plan distance of the cutter's axis from a cap's middle when it touches the cap at its rim. The tip flat's
/// edge and the corner arc touch a sphere of radius R as a ball of the corner's radius c beside a flat f
/// would: distance f + (R + c) sin(theta), tip height apex + (R + c)(cos(theta) - 1), theta the contact's
/// slope.
double axis_at_rim_mm(const DomeFeature &cap, const CutterProfile &profile);

} // namespace asperity
