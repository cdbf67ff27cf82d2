// A trace in words: what was traced, how it is read, its roughness, who made it and what is model.
#pragma once

#include "asperity/report/summary_text.h"
#include "asperity/report/trace_view.h"

#include <string>

namespace asperity {

/// UTF-8, ends with a line break. Control characters in the user's own names are left out.
std::string trace_text(const TraceView &view, const SummaryStyle &style = {});

} // namespace asperity
