// The blank's plan slice at one height, as the primitives it is made of.
#pragma once

#include "asperity/job/blank.h"
#include "line_spans.h"

#include <optional>

namespace asperity {

/// Returned as depth where a slice holds no blank at all: far outside, yet finite so that sums stay finite.
inline constexpr double kNowhere_mm = -1e6;

/// Heights this near to a face belong to it: z values arrive through sums of decimals.
inline constexpr double kFace_mm = 1e-9;

bool is_between(double z_mm, double bottom_mm, double top_mm);

/// Elephant foot at height z [mm]: foot at the bottom, fading linearly to 0.
double foot_mm(const Blank &blank, double z_mm);
/// Height at which the foot has shrunk to `extra_mm` (0 < extra <= foot).
double foot_height_mm(const Blank &blank, double extra_mm);

/// Radius of a revolved profile at height z, interpolated.
double profile_radius_mm(const Blank &blank, double z_mm);

/// Signed depth in the base shape (without holes and bosses) grown by `grown_mm`, whatever the height limits
/// say.
double base_depth_mm(const Blank &blank, Vec2 p, double z_mm, double grown_mm);

/// Radius of a hole or boss at height z: the foot makes holes narrower and bosses wider. <= 0: closed.
double round_radius_mm(const Blank &blank, const RoundFeature &round, double z_mm);

} // namespace asperity
