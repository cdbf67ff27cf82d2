// A trace as comma-separated values.
#include "asperity/report/trace_csv.h"

#include "asperity/base/units.h"
#include "asperity/report/number_text.h"
#include "text_layout.h"
#include "wanted.h"

#include <fmt/format.h>

#include <iterator>

namespace asperity {

namespace {

void put(std::string &text, std::string_view key, const std::string &value) {
  text += fmt::format("# {}: {}\n", key, printable(value));
}

std::string header(const TraceView &view) {
  const Trace &trace = view.trace;
  const StylusReading &reading = trace.reading;
  const std::vector<double> bounds = section_bounds_mm(view);
  std::string text = "# A trace over a predicted surface: a model's word, not a measurement.\n";
  put(text, "job", fmt::format("{}, {}", view.job.file.filename().string(), view.job.title));
  put(text, "feature", fmt::format("{}, {}", name_of(view.feature), kind_text(view.feature)));
  put(text, "direction", trace.along);
  put(text, "place", trace_place_text(view));
  put(text, "form removed", trace.closed ? "mean" : "least-squares straight line");
  put(text, "cutoff lc",
      fmt::format("{:g} mm (Gaussian, ISO 16610-21), {}", reading.settings.cutoff_mm,
                  cutoff_choice_text(view)));
  put(text, "cutoff ls", fmt::format("{:g} mm", reading.settings.short_mm));
  put(text, "evaluated",
      fmt::format("{}, {:.6f} to {:.6f} mm", evaluation_text(view), bounds.front(), bounds.back()));
  put(text, "Ra", fmt::format("{:.5f} um", um_from_mm(reading.parameters.ra_mm)));
  for (const std::string &warning : trace_warnings(view))
    put(text, "warning", warning);
  put(text, "units",
      "position in mm along the direction; heights in um, positive away from the material; waviness is the "
      "profile's mean line at lc, roughness what lies between ls and lc; line is the program line that made "
      "the point, 0 = not cut");
  return text;
}

} // namespace

std::string trace_csv_text(const TraceView &view) {
  std::string text = header(view) + "position_mm,profile_um,waviness_um,roughness_um,line\n";
  const Trace &trace = view.trace;
  constexpr std::size_t kRowBytes = 48;
  text.reserve(text.size() + kRowBytes * view.points());
  for (std::size_t i = 0; i < view.points(); ++i)
    fmt::format_to(std::back_inserter(text), "{:.6f},{:.5f},{:.5f},{:.5f},{}\n", view.place_mm(i),
                   um_from_mm(trace.profile_mm[i]), um_from_mm(trace.waviness_mm[i]),
                   um_from_mm(trace.roughness_mm[i]), view.line(i));
  return text;
}

} // namespace asperity
