// Coefficient sets and the small cutter that the force checks share.
#pragma once

#include "asperity/base/units.h"
#include "asperity/cut/force.h"

namespace asperity {

/// Linear-edge coefficients like those of a wrought aluminium [published range, Chin. J. Mech. Eng. 2021,
/// table 5].
inline constexpr ForceCoefficients kAluminiumLike{
    .ktc = 700, .krc = 250, .kac = 150, .kte = 10, .kre = 10, .kae = 2};
/// Like PETG [derived from tensile strength after Patel, Blackman & Williams 2009].
inline constexpr ForceCoefficients kPetgLike{
    .ktc = 110, .krc = 30, .kac = 16.5, .kte = 3, .kre = 3, .kae = 0.6};

/// D 6 mm, two flutes, 30 degrees.
inline constexpr ToothGeometry kSixMillimetreCutter{.radius_mm = 3, .flutes = 2, .helix_rad = kPi / 6};

} // namespace asperity
