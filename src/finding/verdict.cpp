// Does a measured size lie within the wanted limits?
#include "verdict.h"

namespace asperity {

Verdict verdict_of(const SizeMeasure &measure) {
  if (!measure.wanted)
    return Verdict::not_asked;
  const double below = measure.wanted->lower_mm - measure.smallest_mm;
  const double above = measure.largest_mm - measure.wanted->upper_mm;
  if (below <= 0.0 && above <= 0.0)
    return Verdict::met;
  return below > above ? Verdict::too_small : Verdict::too_large;
}

} // namespace asperity
