// A trace turned into a polyline.
#include "profile_plot.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

void PlotRange::hold(const Trace &trace) {
  if (trace.profile_mm.empty())
    return;
  const double end = trace.begin_mm + trace.spacing_mm * static_cast<double>(trace.profile_mm.size());
  begin_mm = std::min(begin_mm, trace.begin_mm);
  end_mm = std::max(end_mm, end);
  for (const double height : trace.profile_mm) {
    low_um = std::min(low_um, um_from_mm(height));
    high_um = std::max(high_um, um_from_mm(height));
  }
}

std::vector<ImVec2> plot_line(const std::vector<double> &heights_mm, const Trace &trace,
                              const PlotRange &range, ImVec2 low, ImVec2 high) {
  std::vector<ImVec2> line;
  const auto y_of = [&](double height_mm) {
    const double share = (um_from_mm(height_mm) - range.low_um) / (range.high_um - range.low_um);
    return high.y - static_cast<float>(share) * (high.y - low.y);
  };
  const double width_mm = range.end_mm - range.begin_mm;
  const double px_per_point = trace.spacing_mm / width_mm * static_cast<double>(high.x - low.x);
  const auto together = static_cast<std::size_t>(std::max(1.0, std::ceil(1.0 / px_per_point)));
  for (std::size_t i = 0; i < heights_mm.size(); i += together) {
    const auto from = heights_mm.begin() + static_cast<std::ptrdiff_t>(i);
    const auto to =
        heights_mm.begin() + static_cast<std::ptrdiff_t>(std::min(i + together, heights_mm.size()));
    const auto [least, most] = std::minmax_element(from, to);
    const double along = trace.begin_mm + trace.spacing_mm * static_cast<double>(i) - range.begin_mm;
    const float x = low.x + static_cast<float>(along / width_mm) * (high.x - low.x);
    // Every other stretch runs back down, so that the line joins neighbours at the same height.
    const bool is_down = (i / together) % 2 == 1;
    line.push_back({x, y_of(is_down ? *most : *least)});
    if (together > 1)
      line.push_back({x, y_of(is_down ? *least : *most)});
  }
  return line;
}

double round_step(double range, int wanted) {
  const double raw = range / std::max(wanted, 1);
  const double ten = std::pow(10.0, std::floor(std::log10(std::max(raw, 1e-12))));
  for (const double factor : {1.0, 2.0, 5.0})
    if (raw <= factor * ten)
      return factor * ten;
  return 10.0 * ten;
}

} // namespace asperity
