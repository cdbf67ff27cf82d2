// What a stylus would read on each feature, as a floor from geometry and a band with the material's own
// share.
#include "asperity/report/number_text.h"
#include "sections.h"
#include "text_layout.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity {

namespace {

/// "Ra 0.31 um, Rz 1.4 um along s at z 7.000 mm (cutoff 0.8 mm, 5 sections), cusps 0.42 um"
std::string trace_words(const Trace &trace) {
  const ProfileParameters &p = trace.reading.parameters;
  const bool is_wall = trace.along == "s" || trace.along == "z";
  const char *across = is_wall ? (trace.along == "s" ? "z" : "s") : (trace.along == "x" ? "y" : "x");
  std::string text = fmt::format("Ra {} um, Rz {} um along {} at {} {} mm (cutoff {} mm, {} section{})",
                                 fixed_text(p.ra_mm * 1e3, 2), fixed_text(p.rz_mm * 1e3, 1), trace.along,
                                 across, fixed_text(trace.at_mm, 1), trace.reading.settings.cutoff_mm,
                                 p.sections, p.sections == 1 ? "" : "s");
  if (trace.reading.fit.too_short())
    text += ", the feature is too short for five";
  return text + fmt::format("; unfiltered cusps up to {} um", fixed_text(trace.cusp_mm * 1e3, 2));
}

std::string grades(const FeatureRoughness &r) {
  if (!r.grade_low || !r.grade_high)
    return {};
  return *r.grade_low == *r.grade_high ? fmt::format(" (N{})", *r.grade_low)
                                       : fmt::format(" (N{} to N{})", *r.grade_low, *r.grade_high);
}

std::string feature_words(const FeatureRoughness &r, std::size_t width) {
  const auto line = [width](const std::string &text) { return wrapped(text, width, "    ", 6); };
  std::string text = line(fmt::format(
      "Ra {} to {} um{}: {} um from geometry, the rest is the material's own.",
      fixed_text(r.ra_band.low_um, 1), fixed_text(r.ra_band.high_um, 1), grades(r), fixed_text(r.ra_um, 2)));
  text += line("Geometry alone, along the lay: " + trace_words(r.along) + ".");
  text += line("Geometry alone, across the lay: " + trace_words(r.across) + ".");
  if (!r.around.profile_mm.empty()) {
    const ProfileParameters round = profile_parameters(r.around.roughness_mm, r.around.spacing_mm);
    const auto [low, high] = std::minmax_element(r.around.waviness_mm.begin(), r.around.waviness_mm.end());
    text += line(fmt::format(
        "The whole way round at z {} mm, through every line on it: Ra {} um, Rt {} um, waviness {} um "
        "from top to bottom (cutoff {} mm).",
        fixed_text(r.around.at_mm, 1), fixed_text(round.ra_mm * 1e3, 2), fixed_text(round.rt_mm * 1e3, 1),
        fixed_text((*high - *low) * 1e3, 1), r.around.reading.settings.cutoff_mm));
  }
  text += line(fmt::format("Lay: {}. Over a patch: Sa {} um, Sq {} um, Sz {} um.", r.lay,
                           fixed_text(r.areal.sa_mm * 1e3, 2), fixed_text(r.areal.sq_mm * 1e3, 2),
                           fixed_text(r.areal.sz_mm * 1e3, 1)));
  text += line(fmt::format("Roughest place: local Ra {} um at x {}, y {}, z {} mm{}.",
                           fixed_text(r.worst_ra_um, 2), fixed_text(r.worst_place_mm.x, 1),
                           fixed_text(r.worst_place_mm.y, 1), fixed_text(r.worst_place_mm.z, 1),
                           r.worst_line > 0 ? fmt::format(", made by line {}", r.worst_line) : ""));
  if (r.skin_share > 0.0 && r.skin_ra.high_um > 0.0)
    text += line(fmt::format("{} % of it stays as printed: Ra {} to {} um there, from the layer height.",
                             fixed_text(100.0 * r.skin_share, 1), fixed_text(r.skin_ra.low_um, 0),
                             fixed_text(r.skin_ra.high_um, 0)));
  return text;
}

} // namespace

std::string roughness_section(const Outcome &outcome, const SummaryStyle &style) {
  std::string text;
  for (std::size_t i = 0; i < outcome.roughness.size() && i < outcome.job.features.size(); ++i)
    if (outcome.roughness[i].measured)
      text += fmt::format("  {}\n", printable(name_of(outcome.job.features[i]))) +
              feature_words(outcome.roughness[i], static_cast<std::size_t>(style.width));
  return text.empty() ? text : heading("Roughness, as a stylus would read it", style) + '\n' + text;
}

} // namespace asperity
