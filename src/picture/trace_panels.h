// The three plots of a trace, each a magnified part of the one above.
#pragma once

#include "profile_plot.h"

#include "asperity/report/trace_view.h"

namespace asperity {

inline constexpr Rgb kProfileInk{52, 92, 128};
inline constexpr Rgb kWavinessInk{176, 92, 24};
inline constexpr Rgb kRoughnessInk{122, 44, 96};
inline constexpr Rgb kEvaluated{255, 255, 255}, kNotEvaluated{240, 238, 231};

struct TracePanels {
  Plot whole;         ///< all of the trace: profile and waviness
  Plot evaluated;     ///< what is read, with half a cutoff on either side: roughness
  Plot close;         ///< about ten marks: profile and waviness
  double mark_mm = 0; ///< distance of the marks in the close-up; 0 = not known
};

/// Stacked from y on; returned panels fill the width.
TracePanels trace_panels(const TraceView &view, int x, int y, int width_px);
int bottom_of(const TracePanels &panels);

void draw_trace_panels(Page &page, const TraceView &view, const TracePanels &panels);

/// Light hatching for stretches that are not cut.
void hatch_not_cut(Image &image, const Box &box);

} // namespace asperity
