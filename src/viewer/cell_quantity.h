// A number for every cell of an outcome's charts, out of what made the cell.
#pragma once

#include "app_state.h"

namespace asperity {

/// Bending, chip load or speed of the moment of the cut that is nearest to the cell on the piece that made
/// it; local roughness; difference `other` minus `outcome` where the charts have the same cells.
CellQuantity cell_quantity(const Outcome &outcome, Colour colour, const Outcome *other);

bool is_quantity(Colour colour);

} // namespace asperity
