// Neighbouring rows side by side: a stroke that runs straight past all of them cuts them in one go.
#pragma once

#include "sweep_wall_reach.h"

#include "asperity/chart/wall_chart.h"

namespace asperity {

inline constexpr std::size_t kLanes = 8;    ///< rows that are cut together
inline constexpr std::size_t kFewLanes = 2; ///< or so few: a trace has one row
using Lanes = std::array<double, kLanes>;

/// Cells of neighbouring rows, column by column: cell = column * kLanes + lane.
struct LaneCells {
  std::vector<float> envelope_mm;
  std::vector<std::uint32_t> owner;
};

/// Discs of one radius that run along lines, one in each row.
struct LaneDiscs {
  Lanes x_mm, y_mm, end_x_mm, end_y_mm;         ///< where their centres begin and end
  Lanes along_x_mm, along_y_mm, per_square_mm2; ///< the way between, and 1 over its square
  Lanes contact_x, contact_y;                   ///< unit direction from the centre to the contact
  Lanes most_mm;                                ///< entries above this are left out; -infinity: cuts nothing
  double radius_mm = 0;
  std::size_t count = kLanes; ///< lanes in use, the first
};

/// Sets where the discs begin or end: the plan point and what the bent axis adds at each height. Heights
/// rise.
void add_bend(const BendNodes &nodes, const WallCutter &cutter, Vec2 point, const Lanes &height_mm,
              Lanes &x_mm, Lanes &y_mm);

/// Sets way and contact from where the discs begin and end.
void set_contacts(LaneDiscs &discs, WallSide side);

/// Owners of a stroke: of the disc it begins with, and of all others.
struct StrokeOwners {
  std::uint32_t begin = 0, on = 0;
};

/// Lowers cells of a span under the discs. Their contacts must face all rays of the span, and no far side may
/// count.
void lower_span(const LaneDiscs &discs, const WallChart &chart, ColumnSpan span, StrokeOwners owners,
                LaneCells &cells);

} // namespace asperity
