// A stroke at one row of the chart: where the bent axis runs in plan and how large the cutter is there.
#pragma once

#include "sweep_wall_stroke.h"

namespace asperity {

/// The disc the cutter shows at a row, and how it moves with u.
struct Disc {
  Vec2 centre{0.0}, velocity{0.0}, bend{0.0}; ///< centre and its first and second derivative
  double radius_mm = 0, growth = 0, growth_bend = 0;
};

/// Offset as constant + slope·h around height h.
struct OffsetLaw {
  Vec2 constant{0.0}, slope{0.0};
};

/// Index of the node interval that holds h: 0 below the first node, kBendNodes above the last.
std::size_t node_interval(const std::array<double, kBendNodes> &height_mm, double h_mm);
OffsetLaw offset_law(const BendNodes &node_mm, const std::array<double, kBendNodes> &height_mm,
                     std::size_t interval);

/// Part [u0, u1] of a stroke over which the disc moves and grows smoothly.
struct Section {
  const Stroke *stroke = nullptr;
  const WallCutter *cutter = nullptr;
  WallSide side = WallSide::left;
  double u0 = 0, u1 = 1;
  double h_begin_mm = 0, h_rise_mm = 0;                  ///< height above the tip at u: h_begin + u·h_rise
  Vec2 offset{0.0}, offset_slope{0.0}, offset_bend{0.0}; ///< offset + u·slope + u²·bend
  double steady_radius_mm = 0;                           ///< when radius_law is steady
  double radius_slope = 0;                               ///< cone: radius = steady + slope·h
  enum class RadiusLaw : std::uint8_t { steady, cone, arc } radius_law = RadiusLaw::steady;
  bool is_straight = false; ///< steady radius, line, linear offset
  bool is_round = false;    ///< steady radius, plan arc, steady offset

  Disc at(double u) const;
  Vec2 centre_at(double u) const;
  double radius_at(double u) const;
};

/// Offsets whose change stays below a picometre's thousandfold are steady; so are ways this near to a chord.
inline constexpr double kSame_mm = 1e-9;

inline constexpr std::size_t kMostSections = 24;
struct SectionList {
  std::array<Section, kMostSections> all;
  std::size_t count = 0;
};

/// The sections of a stroke at height z in order of u; none where the cutter does not reach the row.
void find_sections(const Stroke &stroke, const WallCutter &cutter, WallSide side, double z_mm,
                   SectionList &sections);

} // namespace asperity
