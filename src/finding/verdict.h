// Does a measured size lie within the wanted limits?
#pragma once

#include "asperity/finding/measure.h"

namespace asperity {

/// Rule: met only if the smallest and the largest size both lie within the limits (limits included). If both
/// ends are out, the verdict names the worse.
Verdict verdict_of(const SizeMeasure &measure);

} // namespace asperity
