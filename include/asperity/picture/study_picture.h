// Two pictures of a study: its trials by two numbers with the front, and how much each varied value moves
// one.
#pragma once

#include "asperity/picture/chart_picture.h"
#include "asperity/report/study_view.h"

namespace asperity {

inline constexpr int kStudyPicture_px = 1200;

/// Upright: the number judged by; along: time, if nothing else was asked for. range_um is not used.
ChartPicture front_picture(const StudyView &view, int width_px = kStudyPicture_px);

/// A panel for each varied value: the mean of the number at each of its values.
ChartPicture influence_picture(const StudyView &view, int width_px = kStudyPicture_px);

} // namespace asperity
