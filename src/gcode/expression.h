// The value part of a word: a number, a parameter, a function or a bracketed expression [NISTIR 6556, 3.3.2].
#pragma once

#include "complaints.h"
#include "parameters.h"
#include "scanner.h"

#include <optional>

namespace asperity::gcode {

/// Reads one value at the scanner's place. On failure: empty, and `fault` says why.
std::optional<double> read_value(Scanner &scanner, const ParameterTable &parameters, Fault &fault);

/// Reads the number of a parameter after its '#'.
std::optional<int> read_parameter_index(Scanner &scanner, const ParameterTable &parameters, Fault &fault);

} // namespace asperity::gcode
