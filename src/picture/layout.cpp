// Where the parts of the picture stand.
#include "layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kLegend_px = 230;
constexpr int kHead_px = 150;         ///< title, subtitle and the first panel's heading
constexpr int kHeading_px = 44;       ///< heading of a panel
constexpr int kHeadingWidth_px = 560; ///< panels side by side are never closer
constexpr int kLowest_px = 270;       ///< a panel is never flatter ...
constexpr int kTallest_px = 640;      ///< ... nor taller
constexpr int kNarrowest_px = 220;

/// Factor, from a short list of plain numbers, that brings `from` to at least `to`.
double plain_factor(double from, double to) {
  for (double factor : {1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 20.0, 30.0, 50.0, 100.0})
    if (from * factor >= to)
      return factor;
  return 200.0;
}

/// Panel size for a plane within the given room.
void set_size(Layout &layout, const Plane &plane, double most_width) {
  const double px_per_mm = std::min(most_width / plane.width_mm, kTallest_px / plane.height_mm);
  const double width = plane.width_mm * px_per_mm, height = plane.height_mm * px_per_mm;
  layout.stretch = plain_factor(height, kLowest_px);
  layout.widening = plain_factor(width, kNarrowest_px);
  layout.colour.width = static_cast<int>(std::lround(std::min(width * layout.widening, most_width)));
  layout.colour.height =
      static_cast<int>(std::lround(std::clamp(height * layout.stretch, 1.0, 2.0 * kTallest_px)));
}

void set_legend(Layout &layout, int width_px) {
  layout.legend_x = width_px - kMargin_px - kLegend_px;
  layout.legend_width = kLegend_px;
  layout.legend_y = layout.colour.y;
}

} // namespace

Layout layout_for(const Plane &plane, int width_px) {
  Layout layout;
  const int left = kMargin_px + kAxisLeft_px;
  const int room = width_px - left - kMargin_px - kLegend_px - kMargin_px;
  layout.is_stacked = plane.width_mm >= 2.0 * plane.height_mm;
  set_size(layout, plane, layout.is_stacked ? room : (room - kMargin_px - kAxisLeft_px) / 2);
  layout.colour.x = left;
  layout.colour.y = kHead_px;
  layout.relief = layout.colour;
  if (layout.is_stacked)
    layout.relief.y = layout.colour.bottom() + kAxisBelow_px + kHeading_px;
  else
    layout.relief.x =
        layout.colour.x + std::max(layout.colour.width + kMargin_px + kAxisLeft_px, kHeadingWidth_px);
  set_legend(layout, width_px);
  layout.list_y = layout.relief.bottom() + kAxisBelow_px + kHeading_px / 2;
  return layout;
}

Layout single_panel_layout(const Plane &plane, int width_px) {
  Layout layout;
  const int left = kMargin_px + kAxisLeft_px;
  set_size(layout, plane, width_px - left - 2 * kMargin_px - kLegend_px);
  layout.colour.x = left;
  layout.colour.y = kHead_px - kHeading_px / 2;
  set_legend(layout, width_px);
  layout.legend_x = layout.colour.right() + kMargin_px; // a narrow panel keeps its legend beside it
  layout.list_y = layout.colour.bottom() + kAxisBelow_px + kHeading_px / 2;
  return layout;
}

std::string stretch_words(const Layout &layout) {
  if (layout.stretch > 1.0)
    return fmt::format("; drawn {:g} times taller than true", layout.stretch);
  return layout.widening > 1.0 ? fmt::format("; drawn {:g} times wider than true", layout.widening) : "";
}

} // namespace asperity
