// The column beside a trace's plots: what the inks mean, the numbers, the material and the program lines.
#pragma once

#include "page.h"

#include "asperity/report/trace_view.h"

namespace asperity {

/// Returns the y below it. With an empty page image nothing is drawn, only measured.
int draw_trace_side(Page &page, const TraceView &view, int x, int y, int width_px);

} // namespace asperity
