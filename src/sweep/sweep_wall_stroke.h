// The swept path cut into strokes: straight or round in plan, with steady rise, ready for any row of a wall
// chart.
#pragma once

#include "asperity/sweep/swept_path.h"

#include "left_alone.h"

#include <array>
#include <cstdint>
#include <span>
#include <vector>

namespace asperity {

/// Which side of the motion the wall lies on.
enum class WallSide : std::uint8_t { left = 0, right = 1 };
inline constexpr std::array kWallSides{WallSide::left, WallSide::right};
/// +1 for left, -1 for right.
constexpr double sign_of(WallSide side) { return side == WallSide::left ? 1.0 : -1.0; }

inline constexpr double kMostSweep_rad = 0.4; ///< keeps the series of cos_sin_of_small short

/// cos and sin of |x| <= kMostSweep_rad / 2: the Taylor terms left out are below 1e-16. Inline: the sweep's
/// hot spot.
inline Vec2 cos_sin_of_small(double x) {
  const double y = x * x;
  const double c =
      1.0 + y * (-1.0 / 2 + y * (1.0 / 24 + y * (-1.0 / 720 + y * (1.0 / 40320 + y * (-1.0 / 3628800)))));
  const double s =
      x * (1.0 +
           y * (-1.0 / 6 + y * (1.0 / 120 + y * (-1.0 / 5040 + y * (1.0 / 362880 + y * (-1.0 / 39916800))))));
  return {c, s};
}

/// A cutter with the heights at which its radius or bend changes law.
struct WallCutter {
  CutterProfile profile;
  double lowest_mm = 0;  ///< cuts from this height above the tip (> 0 only where a tip was shrunk away)
  double highest_mm = 0; ///< to this one
  double arc_end_mm = 0; ///< the corner arc reaches this high
  bool is_cylinder = false;
  std::array<double, kBendNodes> node_height_mm{};
  std::vector<double> break_mm; ///< rising; between two of them radius and offset are smooth in height
};

/// Plan: from + u·along, or centre + radius·(direction at angle (2u-1)·half_sweep from middle). Height (tip,
/// axial offset included): z_begin + u·z_rise. Offsets: linear in u from begin to end, per side and node.
struct Stroke {
  Vec2 from{0.0}, along{0.0};
  Vec2 centre{0.0}, middle{1.0, 0.0};
  double radius_mm = 0, half_sweep_rad = 0;
  double z_begin_mm = 0, z_rise_mm = 0;
  std::array<BendNodes, 2> begin{}, end{}; ///< by WallSide
  double offset_max_mm = 0;
  std::uint32_t owner = 0;
  std::uint16_t cutter = 0;
  bool is_arc = false;
  bool is_standing = false;   ///< no plan motion of the commanded curve
  bool has_two_sides = false; ///< left and right offsets differ
  bool joins_previous = false;
  bool has_varying_radius = false; ///< rises or falls with a cutter that is no plain cylinder

  /// From the arc's centre to its point at u.
  Vec2 arm(double u) const {
    const Vec2 turn = cos_sin_of_small((2.0 * u - 1.0) * half_sweep_rad);
    return radius_mm * (turn.x * middle + turn.y * left_of(middle));
  }
  Vec2 plan_point(double u) const;
  /// d(plan point)/du without the offset [mm].
  Vec2 plan_velocity(double u) const;
  double plan_length_mm() const;
};

std::vector<WallCutter> wall_cutters_of(const SweptPath &path);

using StrokeList = std::vector<Stroke, LeftAlone<Stroke>>;

/// Of the pieces listed. Arcs are split to at most kMostSweep_rad; arcs outside the XY plane become chords
/// within kChord_mm of the arc.
StrokeList strokes_of(const SweptPath &path, std::span<const std::uint32_t> pieces,
                      const std::vector<WallCutter> &cutters, int threads);

inline constexpr double kChord_mm = 2e-6; ///< 2 nm: a fifth of the accuracy wanted off level arcs

} // namespace asperity
