// A trace turned into a polyline for a box on the screen.
#pragma once

#include "asperity/texture/feature_roughness.h"

#include <imgui.h>

#include <vector>

namespace asperity {

struct PlotRange {
  double begin_mm = 0, end_mm = 1; ///< along
  double low_um = -1, high_um = 1;
  void hold(const Trace &trace);
};

/// Heights over a pixel become their lowest and highest, so that no tooth mark is lost.
std::vector<ImVec2> plot_line(const std::vector<double> &heights_mm, const Trace &trace,
                              const PlotRange &range, ImVec2 low, ImVec2 high);

/// A round step that divides the range into about `wanted` parts: 1, 2 or 5 times a power of ten.
double round_step(double range, int wanted);

} // namespace asperity
