// Loops over one row of rays: how far each stands from the nearest pass of a tooth.
#pragma once

#include <cstddef>
#include <span>

namespace asperity {

struct ToothBow {
  float base, bow, bow4; ///< e = base + x (bow + bow4 x), x the square of the distance
};

/// Steady feed: where in the turn each ray stands, and where passes of several laps do [turns]. square: least
/// square of the distance to a pass.
void nearest_passes(std::span<const float> place, std::span<const float> pass, std::span<float> square);
/// Lowers e to the hollows at these squares of distance in turns.
void lower_to_bow(std::span<const float> square, const ToothBow &per_turn, std::span<float> e_mm);

/// Feed that varies: turns at each ray, length of a turn there [mm], and half its change from turn to turn.
struct VaryingTurns {
  std::span<const float> turns, length_mm, half_change_mm;
};
void lower_to_passes(const VaryingTurns &at, float offset, const ToothBow &bow, std::span<float> e_mm);

} // namespace asperity
