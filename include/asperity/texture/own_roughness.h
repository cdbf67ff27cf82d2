// The roughness a material adds by itself, laid on what geometry leaves.
#pragma once

#include "asperity/job/material.h"
#include "asperity/texture/feature_roughness.h"

namespace asperity {

/// Sets ra_band and its grades from ra_um and the material; what is not measured stays as it is.
void add_own_roughness(FeatureRoughness &roughness, const Material &material);

} // namespace asperity
