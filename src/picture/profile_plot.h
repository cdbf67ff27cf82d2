// One plot of heights over a length: its scale, its axes and the curves in it.
#pragma once

#include "page.h"

#include <span>
#include <string_view>

namespace asperity {

/// Even points of a curve; place of point i is begin_mm + i * spacing_mm.
struct HeightCurve {
  double begin_mm = 0, spacing_mm = 0;
  std::span<const double> height_um;
};

struct Plot {
  Box box;
  double x_low_mm = 0, x_high_mm = 1;
  double y_low_um = 0, y_high_um = 1;

  double x_px(double place_mm) const {
    return box.x + (place_mm - x_low_mm) / (x_high_mm - x_low_mm) * box.width;
  }
  double y_px(double height_um) const {
    return box.bottom() - (height_um - y_low_um) / (y_high_um - y_low_um) * box.height;
  }
  /// How many times taller than true heights are drawn.
  double exaggeration() const;
};

/// Heights at round numbers with room above and below, for a curve that reaches from low to high.
void set_heights(Plot &plot, double low_um, double high_um);

/// Frame, grid lines, ticks, numbers and the names of both axes.
void draw_plot_axes(Page &page, const Plot &plot, std::string_view along);

/// Where points lie closer than pixels every column shows all heights within it. Beyond the box the curve
/// runs along its edge.
void draw_curve(Page &page, const Plot &plot, const HeightCurve &curve, double width_px, Rgb colour);

/// Vertical dashed line over the whole box.
void draw_cut_line(Page &page, const Plot &plot, double place_mm, Rgb colour);

} // namespace asperity
