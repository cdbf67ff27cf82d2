// A hand-made trace on the line sheave's rim: a cosine with a first stretch that is not cut.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/report/trace_view.h"

namespace asperity::test_support {

inline constexpr double kMark_mm = 0.1;       ///< wavelength of the cosine
inline constexpr double kMarkHeight_um = 2.0; ///< its amplitude
inline constexpr double kUncut_mm = 0.3;      ///< at the trace's begin

struct RimTrace {
  Outcome outcome;
  TraceRequest request;
  Trace trace;

  TraceView view() const { return {outcome.job, outcome.job.features[0], outcome.path, request, trace}; }
};

/// Along s at z = 7 mm from s = 10 mm, cutoff 0.8 mm, 2.5 um between points.
RimTrace rim_trace(double length_mm = 6.0);

} // namespace asperity::test_support
