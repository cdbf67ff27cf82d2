// One picture of one trace: headline, plots and the column beside them on one sheet.
#include "asperity/picture/trace_picture.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"
#include "layout.h"
#include "trace_panels.h"
#include "trace_side.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr int kSide_px = 250;

std::string title_of(const TraceView &view) {
  const ProfileParameters &p = view.trace.reading.parameters;
  return fmt::format("{}  \u2014  Ra {},  Rz {},  RSm {}", name_of(view.feature),
                     fine_um_text(um_from_mm(p.ra_mm)), fine_um_text(um_from_mm(p.rz_mm)),
                     p.rsm_mm > 0.0 ? mm_text(p.rsm_mm) : "none");
}

/// Title, what was traced and how it is read, warnings; returns the y below.
int draw_head(Page &page, const TraceView &view, int width_px) {
  const int room = width_px - 2 * kMargin_px;
  int size_px = kTitle_px;
  while (size_px > kText_px && page.lettering.width_px(title_of(view), size_px) > room)
    --size_px;
  page.write(title_of(view), kMargin_px, 58, size_px, kInk);
  int y = 92;
  const auto put = [&](const std::string &text, Rgb colour) {
    for (const std::string &text_line : fitted_lines(page.lettering, text, kText_px, room)) {
      page.write(text_line, kMargin_px, y, kText_px, colour);
      y += kLine_px;
    }
  };
  const MeasuringSettings &settings = view.trace.reading.settings;
  put(fmt::format("Trace {}. {}{}Predicted by a model, not measured.", trace_place_text(view), view.job.title,
                  view.job.title.empty() ? "" : ". "),
      kSoftInk);
  put(fmt::format("Cutoff lc {:g} mm, {}; ls {:g} mm. Evaluated: {}.", settings.cutoff_mm,
                  cutoff_choice_text(view), settings.short_mm, evaluation_text(view)),
      kSoftInk);
  for (const std::string &warning : trace_warnings(view))
    put("Note: " + warning, kInk);
  return y;
}

} // namespace

ChartPicture trace_picture(const TraceView &view, const PictureOptions &options) {
  const Lettering lettering;
  const int width_px = std::clamp(options.width_px, kNarrowestPicture_px, kWidestPicture_px);
  if (view.points() < 2)
    return {Image(width_px, 100, kPaper), lettering.has_font()};

  // Set once without a sheet to see how much room it takes.
  Page measure{Image(), lettering};
  constexpr int kHeading_room_px = 36;
  const int top = draw_head(measure, view, width_px) + kHeading_room_px;
  const int left = kMargin_px + kAxisLeft_px;
  const int side_x = width_px - kMargin_px - kSide_px;
  const TracePanels panels = trace_panels(view, left, top, side_x - kMargin_px - left);
  const int height_px =
      std::max(bottom_of(panels), draw_trace_side(measure, view, side_x, top, kSide_px)) + kMargin_px;

  Page page{Image(width_px, height_px, kPaper), lettering};
  draw_head(page, view, width_px);
  draw_trace_panels(page, view, panels);
  draw_trace_side(page, view, side_x, top, kSide_px);
  return {std::move(page.image), lettering.has_font()};
}

} // namespace asperity
