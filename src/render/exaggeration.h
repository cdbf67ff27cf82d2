// How many times larger residuals are drawn when the caller leaves the choice to us.
#pragma once

#include "asperity/render/draw_request.h"
#include "surface_pass.h"

#include <vector>

namespace asperity {

struct Exaggeration {
  double times = 1.0, farthest_mm = 1.0;
};

/// Space and strip: so that the steepest marks stand at about 40 degrees. Section: so that the surface's
/// unevenness is about 0.3 mm wide.
Exaggeration exaggeration_of(const DrawRequest &request, const SurfacePass &surfaces,
                             const std::vector<std::size_t> &features, double radius_mm);

} // namespace asperity
