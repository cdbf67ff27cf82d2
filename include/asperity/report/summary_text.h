// One prediction in words, for a terminal: what is wanted and whether it is met, then sizes, findings and
// limits.
#pragma once

#include "asperity/predict/outcome.h"

#include <string>

namespace asperity {

struct SummaryStyle {
  int width = 100;     ///< columns; lines are wrapped to it where a word boundary allows
  bool colour = false; ///< emphasis by terminal escape codes; the text is the same without
};

/// UTF-8, ends with a line break. Control characters in the user's own names are left out.
std::string summary_text(const Outcome &outcome, const SummaryStyle &style = {});

/// Nothing wanted is missed, nothing dangerous was found and the run came to its end.
bool is_all_well(const Outcome &outcome);

} // namespace asperity
