// A number for every cell of an outcome's charts, out of what made the cell.
#pragma once

#include "app_state.h"

namespace asperity {

/// Bending, chip load or speed of the moment of the cut that is nearest to the cell on the piece that made
/// it; local roughness; difference `other` minus `outcome` where the charts have the same cells.
CellQuantity cell_quantity(const Outcome &outcome, Colour colour, const Outcome *other);

/// Symmetric about zero, so that no difference has one colour: what one cell in two hundred exceeds, at least
/// kLeastSpan_um.
double half_span(const CellQuantity &quantity);
inline constexpr double kLeastSpan_um = 0.5;

bool is_quantity(Colour colour);

} // namespace asperity
