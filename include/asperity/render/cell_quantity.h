// A number for every cell of an outcome's charts, out of what made the cell.
#pragma once

#include "asperity/render/renderer.h"

namespace asperity {

enum class Measure : std::uint8_t { roughness, bending, chip_load, speed };

/// Bending, chip load or speed at the moment of the cut that is nearest to the cell on the piece that made
/// it; or local roughness.
CellQuantity cell_quantity(const Outcome &outcome, Measure measure);

/// Residual of b minus that of a, where both are cut and the charts have the same cells.
CellQuantity difference(const Outcome &a, const Outcome &b);
/// Charts of both outcomes have the same cells on this feature.
bool charts_match(const Outcome &a, const Outcome &b, std::size_t feature);

/// For colours symmetric about zero, so that no difference has one colour: what one cell in two hundred
/// exceeds, at least kLeastSpan_um.
double half_span(const CellQuantity &quantity);
inline constexpr double kLeastSpan_um = 0.5;

} // namespace asperity
