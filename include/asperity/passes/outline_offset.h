// Outlines moved sideways: where a cutter's centre runs so that its edge keeps a distance from a wall.
#pragma once

#include "asperity/shape/outline.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// All points at one distance from an outline, on one side of it. Lines and arcs stay lines and arcs; arcs
/// join them at outside corners, inside corners are trimmed, what is too narrow for the distance goes away.
struct OffsetOutline {
  std::optional<Outline> path; ///< counter-clockwise; nothing where the distance does not fit
  bool is_trimmed = false;     ///< an inside corner cannot be reached
  Vec2 tightest{0.0};          ///< without a path: about where it does not fit
};

/// outward_mm > 0: outside the outline; < 0: inside. The path is checked to keep the distance everywhere.
OffsetOutline offset_outline(const Outline &outline, double outward_mm);

/// Radius of the tightest arc that bulges away from the given side [mm], or nothing: the largest cutter that
/// can follow it from that side has this radius.
std::optional<double> smallest_hollow_mm(const Outline &outline, bool from_outside);

} // namespace asperity
