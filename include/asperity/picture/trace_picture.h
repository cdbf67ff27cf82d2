// One picture of one trace: profile and waviness, roughness with its sections, and a close-up of single
// marks.
#pragma once

#include "asperity/picture/chart_picture.h"
#include "asperity/report/trace_view.h"

namespace asperity {

/// range_um of the options is not used. An empty trace gives an empty sheet.
ChartPicture trace_picture(const TraceView &view, const PictureOptions &options = {});

} // namespace asperity
