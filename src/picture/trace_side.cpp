// The column beside a trace's plots.
#include "trace_side.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"
#include "legend_parts.h"
#include "trace_panels.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr int kSwatch_px = 34;

int draw_key(Page &page, const TraceView &view, int x, int y) {
  struct Ink {
    Rgb colour;
    double width_px;
    const char *name;
  };
  for (const Ink &ink : {Ink{kProfileInk, 1.6, "profile, form off"}, Ink{kWavinessInk, 2.4, "waviness"},
                         Ink{kRoughnessInk, 1.6, "roughness"}}) {
    line(page.image, x, y - 5, x + kSwatch_px, y - 5, ink.width_px, ink.colour);
    page.write(ink.name, x + kSwatch_px + 10, y, kText_px, kInk);
    y += kLine_px;
  }
  const auto box = [&](const char *name) {
    const Box swatch{x, y - 15, kSwatch_px, 18};
    frame(page.image, {swatch.x - 1, swatch.y - 1, swatch.width + 2, swatch.height + 2}, kRule);
    page.write(name, x + kSwatch_px + 10, y, kText_px, kInk);
    y += kLine_px + 2;
    return swatch;
  };
  fill(page.image, box("read"), kEvaluated);
  fill(page.image, box("not read"), kNotEvaluated);
  for (std::size_t i = 0; i < view.points(); ++i)
    if (!view.is_cut(i)) {
      hatch_not_cut(page.image, box("not cut"));
      break;
    }
  return y;
}

int draw_numbers(Page &page, const TraceView &view, int x, int y, int width) {
  const ProfileParameters &p = view.trace.reading.parameters;
  const auto um = [](double mm) { return fine_um_text(um_from_mm(mm)); };
  const std::vector<std::pair<const char *, std::string>> rows = {
      {"Ra", um(p.ra_mm)},
      {"Rq", um(p.rq_mm)},
      {"Rz", um(p.rz_mm)},
      {"Rp", um(p.rp_mm)},
      {"Rv", um(p.rv_mm)},
      {"Rt", um(p.rt_mm)},
      {"Rzx", um(p.rzx_mm)},
      {"RSm", p.rsm_mm > 0.0 ? mm_text(p.rsm_mm) : "none"},
      {"Rsk", has_shape(view) ? fixed_text(p.rsk, 2) : "none"},
      {"Rku", has_shape(view) ? fixed_text(p.rku, 2) : "none"},
      {"cusp, unfiltered", um(view.trace.cusp_mm)}};
  for (const auto &[name, value] : rows) {
    page.write(name, x, y, kText_px, kSoftInk);
    page.write(value, x + width, y, kText_px, kInk, Anchor::right);
    y += kLine_px;
  }
  return y;
}

int draw_material(Page &page, const TraceView &view, int x, int y, int width) {
  const RaBand band = trace_ra_band(view);
  y = write_lines(
      page,
      fmt::format("With the material: Ra {} to {}", fixed_text(band.low_um, 2), fine_um_text(band.high_um)),
      x, y, width, kInk);
  if (const std::optional<double> &wanted = finish_of(view.feature).ra_um)
    y = write_lines(
        page, fmt::format("Wanted: Ra at most {:g} um: {}", *wanted, is_ra_met(view) ? "met" : "NOT MET"), x,
        y, width, kInk);
  return y;
}

} // namespace

int draw_trace_side(Page &page, const TraceView &view, int x, int y, int width_px) {
  constexpr int kGap_px = 22;
  constexpr std::size_t kMostLines = 4;
  const auto rule = [&] {
    fill(page.image, {x, y, width_px, 1}, kRule);
    y += kGap_px + 8;
  };
  y = draw_key(page, view, x, y + 14);
  rule();
  page.write(view.request.averaging == Averaging::iso_21920 ? "ISO 21920-2" : "ISO 4287", x, y, kHeading_px,
             kInk);
  y = draw_numbers(page, view, x, y + kLine_px + 2, width_px);
  rule();
  y = draw_material(page, view, x, y, width_px) + 4;
  rule();
  return write_lines(page, "Made by program: " + line_share_text(view, kMostLines), x, y, width_px, kInk);
}

} // namespace asperity
