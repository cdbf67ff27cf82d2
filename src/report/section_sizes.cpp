// Times, the worst moments of the cut, and what a gauge would read on each feature.
#include "asperity/report/number_text.h"
#include "cut_figures.h"
#include "sections.h"
#include "text_layout.h"
#include "wanted.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string tool_text(const Job &job, std::uint16_t tool) {
  const Cutter *cutter = job.cutter(tool);
  return cutter && !cutter->name.empty() ? fmt::format("T{} {}", tool, printable(cutter->name))
                                         : fmt::format("T{}", tool);
}

std::string peak_text(std::string_view what, const std::optional<Peak> &peak, std::string_view number) {
  if (!peak)
    return {};
  return fmt::format("{} {} in line {}. ", what, number, peak->line);
}

std::string worst_moments(const CutPeaks &peaks) {
  std::string text;
  if (peaks.force_N)
    text += peak_text("Greatest side force", peaks.force_N, quantity_text(peaks.force_N->value, "N"));
  if (peaks.tip_bend_mm)
    text += peak_text("Tip bends by up to", peaks.tip_bend_mm, um_text(peaks.tip_bend_mm->value * 1e3));
  if (peaks.power_W)
    text += peak_text("Greatest power", peaks.power_W, quantity_text(peaks.power_W->value, "W"));
  if (peaks.chip_temperature_C)
    text += peak_text("Hottest chip", peaks.chip_temperature_C,
                      quantity_text(peaks.chip_temperature_C->value, "degC"));
  return text;
}

std::string size_line(const SizeMeasure &size) {
  if (size.verdict == Verdict::not_measured)
    return fmt::format("{}: not measured, too little of it is cut.", printable(size.what));
  std::string text = fmt::format("{}: {} on the mean, {} to {}", printable(size.what), mm_text(size.mean_mm),
                                 fixed_text(size.smallest_mm, 3), mm_text(size.largest_mm));
  if (size.roundness_mm > 0.0)
    text += fmt::format("; out of round by {}", mm_text(size.roundness_mm));
  if (fixed_text(size.taper_mm, 3) != "0.000")
    text += fmt::format("; taper {} ({} at the bottom)", mm_text(std::abs(size.taper_mm)),
                        size.taper_mm > 0.0 ? "larger" : "smaller");
  if (size.wanted)
    text += fmt::format("; wanted {} to {}: {}", fixed_text(size.wanted->lower_mm, 3),
                        mm_text(size.wanted->upper_mm), verdict_text(size.verdict));
  return text + ".";
}

} // namespace

std::string time_section(const Outcome &outcome, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("Time and load", style) + '\n';
  text += wrapped(fmt::format("{} in all, {} of it in cutting moves; tool changes by hand not counted.",
                              duration_text(outcome.path.duration_s), duration_text(outcome.path.cutting_s)),
                  width, "  ", 2);
  const std::vector<ToolTime> tools = time_per_tool(outcome.path);
  if (tools.size() > 1)
    for (const ToolTime &tool : tools)
      text += wrapped(fmt::format("{}: {}, {} cutting.", tool_text(outcome.job, tool.tool),
                                  duration_text(tool.total_s), duration_text(tool.cutting_s)),
                      width, "  ", 4);
  const std::string worst = worst_moments(cut_peaks(outcome.cut, outcome.path));
  return worst.empty() ? text : text + wrapped(worst, width, "  ", 2);
}

std::string size_section(const Outcome &outcome, const SummaryStyle &style) {
  if (outcome.features.empty())
    return {};
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("Sizes and surface", style) + '\n';
  for (std::size_t i = 0; i < outcome.features.size(); ++i) {
    const FeatureResult &result = outcome.features[i];
    const bool is_known = i < outcome.job.features.size();
    const std::string name =
        is_known ? printable(name_of(outcome.job.features[i])) : fmt::format("feature {}", i + 1);
    text += fmt::format("  {}{}\n", name,
                        is_known ? fmt::format(" ({})", kind_text(outcome.job.features[i])) : "");
    for (const SizeMeasure &size : result.sizes)
      text += wrapped(size_line(size), width, "    ", 6);
    if (!(result.cut_share > 0.0)) {
      text += wrapped("No pass reaches this surface.", width, "    ", 6);
      continue;
    }
    text += wrapped(
        fmt::format("{}% of it is cut; the cut surface lies {} to {} from where it is wanted, {} on the mean "
                    "(+ stock left, - cut too deep).",
                    fixed_text(100.0 * result.cut_share, result.cut_share > 0.999 ? 0 : 1),
                    fixed_text(result.lowest_um, 1), um_text(result.highest_um), um_text(result.mean_um)),
        width, "    ", 6);
  }
  return text;
}

} // namespace asperity
