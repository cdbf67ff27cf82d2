// The direction of a surface's grain.
#pragma once

#include "asperity/surface/areal_filter.h"

#include <string>

namespace asperity {

struct Lay {
  double deg = 0;     ///< 0..180, from the grid's x axis
  double clarity = 0; ///< 0 = no direction at all, 1 = straight lines
};

/// Heights change least along the lay: the weak axis of the gradients' second moments (structure tensor).
Lay lay_of(const HeightGrid &rough);
/// "upright lines, 90 deg to s"; `across` and `up` name the grid's axes.
std::string lay_in_words(const Lay &lay, const std::string &across, const std::string &up);
/// Nearer to the grid's y than to its x.
bool runs_up(const Lay &lay);

} // namespace asperity
