// A trace in words.
#include "asperity/report/trace_text.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"
#include "sections.h"
#include "text_layout.h"
#include "wanted.h"

#include <fmt/format.h>

namespace asperity {

namespace {

using Rows = std::vector<std::vector<std::string>>;

std::string grade_text(double ra_um) {
  const std::optional<int> grade = roughness_grade(ra_um);
  return grade ? fmt::format("N{}", *grade) : "coarser than N12";
}

std::string title(const TraceView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const std::string name = printable(name_of(view.feature));
  return heading(fmt::format("Trace on {} ({})", name, kind_text(view.feature)), style) + '\n' +
         wrapped(printable(view.job.title) + ". Predicted by a model of cutting and bending, not measured.",
                 width, "", 0) +
         wrapped("Laid " + trace_place_text(view) +
                     fmt::format("; {} points, {:.3g} um apart.", view.points(),
                                 um_from_mm(view.trace.spacing_mm)),
                 width, "", 0);
}

std::string reading(const TraceView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const MeasuringSettings &settings = view.trace.reading.settings;
  const std::vector<double> bounds = section_bounds_mm(view);
  std::string text = heading("How it is read", style) + '\n';
  const auto put = [&](std::string_view key, const std::string &value) {
    constexpr std::size_t kKey = 11;
    text += wrapped(value, width, "  " + padded(key, kKey), kKey + 2);
  };
  put("form", view.trace.closed ? "mean taken off" : "least-squares straight line taken off");
  put("cutoff", fmt::format("lc {:g} mm, {}; ls {:g} mm", settings.cutoff_mm, cutoff_choice_text(view),
                            settings.short_mm));
  put("evaluated", fmt::format("{}, from {} = {} to {}", evaluation_text(view), view.trace.along,
                               fixed_text(bounds.front(), 3), mm_text(bounds.back())));
  put("averaging", view.request.averaging == Averaging::iso_21920
                       ? "ISO 21920-2:2021, Ra and Rq over the evaluation length"
                       : "ISO 4287:1997, each section by itself, then their mean");
  for (const std::string &warning : trace_warnings(view))
    text += wrapped("warning: " + warning, width, "  ", 4);
  return text;
}

/// Names and words of ISO 21920-2:2021.
std::string numbers(const TraceView &view, const SummaryStyle &style) {
  const ProfileParameters &p = view.trace.reading.parameters;
  const auto um = [](double mm) { return fine_um_text(um_from_mm(mm)); };
  const double ra_um = um_from_mm(p.ra_mm);
  const Rows rows = {
      {"Ra", um(p.ra_mm), "mean deviation; " + grade_text(ra_um)},
      {"Rq", um(p.rq_mm), "root mean square deviation"},
      {"Rp", um(p.rp_mm), "highest peak, mean over the sections"},
      {"Rv", um(p.rv_mm), "deepest valley, mean over the sections"},
      {"Rz", um(p.rz_mm), "peak to valley, mean over the sections"},
      {"Rt", um(p.rt_mm), "peak to valley over the evaluation length"},
      {"Rzx", um(p.rzx_mm), "largest peak to valley of one section"},
      {"Rsk", has_shape(view) ? fixed_text(p.rsk, 2) : "none",
       "skewness: below 0 grooves, above 0 ridges stand out"},
      {"Rku", has_shape(view) ? fixed_text(p.rku, 2) : "none", "kurtosis: 3 for Gaussian heights"},
      {"RSm", p.rsm_mm > 0.0 ? mm_text(p.rsm_mm) : "none", "mean width of the profile elements"},
      {"cusp", um(view.trace.cusp_mm), "unfiltered: highest ridge above the higher hollow beside it"},
  };
  return heading("Roughness left by the teeth", style) + '\n' + table(rows, 2);
}

std::string with_material(const TraceView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const RaBand band = trace_ra_band(view);
  const Material &material = view.job.material;
  const std::string low = grade_text(band.low_um), high = grade_text(band.high_um);
  std::string text = heading("With the material", style) + '\n';
  text += wrapped(fmt::format("Ra {} to {} ({}): {} adds {} to {} um by itself.", fixed_text(band.low_um, 2),
                              fine_um_text(band.high_um), low == high ? low : low + " to " + high,
                              printable(material.name), fixed_text(material.own_ra_low_um, 2),
                              fixed_text(material.own_ra_high_um, 2)),
                  width, "  ", 4);
  if (const std::optional<double> &wanted = finish_of(view.feature).ra_um)
    text += fmt::format("  Wanted: Ra at most {:g} um, against the band's upper end: {}\n", *wanted,
                        is_ra_met(view) ? approval("met", style) : alarm("NOT MET", style));
  return text;
}

std::string makers(const TraceView &view, const SummaryStyle &style) {
  constexpr std::size_t kMostLines = 6;
  const std::string lines = line_share_text(view, kMostLines);
  return heading("Program lines that made it", style) + '\n' +
         wrapped(lines + ".", static_cast<std::size_t>(style.width), "  ", 4);
}

std::string what_is_model(const TraceView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const Material &material = view.job.material;
  std::string text = heading("What this rests on", style) + '\n';
  text += wrapped("Tooth marks come from geometry: feed, teeth, helix, runout, and the bending of cutter and "
                  "machine. Their place along the trace (spindle angle) is chance.",
                  width, "  - ", 4);
  const auto source = material.source.find("own_ra_high_um");
  text +=
      wrapped(fmt::format("The material's share is an estimate{}, joined by root of sum of squares. Tearing, "
                          "chatter, built-up edge, melting and voids come on top.",
                          source == material.source.end() ? "" : " (" + printable(source->second) + ")"),
              width, "  - ", 4);
  if (!material.calibrated)
    text +=
        wrapped("Force coefficients are table values, not calibrated on your machine: bending may be off by "
                "half or more.",
                width, "  - ", 4);
  if (!view.job.defaults_used.empty())
    text += wrapped(fmt::format("{} not given in the job; the whole prediction lists them.",
                                count_text(view.job.defaults_used.size(), "value was", "values were")),
                    width, "  - ", 4);
  return text;
}

} // namespace

std::string trace_text(const TraceView &view, const SummaryStyle &style) {
  return title(view, style) + '\n' + reading(view, style) + '\n' + numbers(view, style) + '\n' +
         with_material(view, style) + '\n' + makers(view, style) + '\n' + what_is_model(view, style);
}

} // namespace asperity
