// Where a piece of path runs: its lowest tip height, its length.
#pragma once

#include "asperity/motion/timed_path.h"

namespace asperity {

/// Place on the piece, u 0..1, where the tip is lowest. Exact for lines and plan arcs; arcs in other planes
/// are sampled at kArcSamples places.
double lowest_u(const Curve &curve);
inline constexpr int kArcSamples = 256;

} // namespace asperity
