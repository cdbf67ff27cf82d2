// The numbered parameters #1 to #5399 of a program.
#include "parameters.h"

namespace asperity::gcode {

void ParameterTable::scale_lengths(double factor) {
  const auto scale_axes = [&](int first) {
    for (int axis = 0; axis < 3; ++axis)
      cells_[static_cast<std::size_t>(first + axis)] *= factor;
  };
  constexpr int kProbed = 5061;
  for (const int first : {kProbed, kHomeOfG28, kHomeOfG30, kShiftOfG92})
    scale_axes(first);
  for (int system = 1; system <= 9; ++system)
    scale_axes(origin_of(system));
}

} // namespace asperity::gcode
