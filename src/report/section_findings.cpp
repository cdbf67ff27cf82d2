// The findings, dangers first, each with place, size, cause, remedy and program lines.
#include "asperity/report/number_text.h"
#include "sections.h"
#include "text_layout.h"

#include <fmt/format.h>

#include <string_view>

namespace asperity {

namespace {

/// More than this of one weight is a wall of text; the JSON has them all. Dangers are always shown.
constexpr std::size_t kMostFlaws = 20;
constexpr std::size_t kMostNotes = 10;

std::string sizes_text(const Finding &finding) {
  std::string text;
  for (const Quantity &quantity : finding.size)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", printable(quantity.name),
                        quantity_text(quantity.value, quantity.unit));
  return text;
}

std::string feature_name(const Outcome &outcome, int feature) {
  const bool is_known = feature >= 0 && static_cast<std::size_t>(feature) < outcome.job.features.size();
  return is_known ? printable(name_of(outcome.job.features[static_cast<std::size_t>(feature)]))
                  : std::string();
}

std::string finding_text(const Outcome &outcome, std::size_t index, const SummaryStyle &style) {
  constexpr std::size_t kIndent = 6;
  const auto width = static_cast<std::size_t>(style.width);
  const Finding &finding = outcome.findings[index];
  const std::string name(name_of(finding.kind));
  std::string head = finding.weight == Weight::danger ? alarm("DANGER " + name, style) : heading(name, style);
  std::string about = feature_name(outcome, finding.feature);
  if (!finding.where.empty())
    about += (about.empty() ? "" : ", ") + printable(finding.where);
  if (const std::string sizes = sizes_text(finding); !sizes.empty())
    about += (about.empty() ? "" : ": ") + sizes;
  std::string text = fmt::format("  {:>2}. {}\n", index + 1, head);
  const std::string indent(kIndent, ' ');
  const auto add = [&](std::string_view label, const std::string &words) {
    if (!words.empty())
      text += wrapped(words, width, indent + std::string(label), kIndent + 2);
  };
  add("", about);
  add("Cause: ", printable(finding.cause));
  add("Remedy: ", printable(finding.remedy));
  std::string lines = lines_text(finding.lines, finding.line_count);
  if (!lines.empty())
    add("Program: ", lines + ".");
  add("Rests on: ", printable(finding.rests_on));
  return text;
}

std::string findings_of_weight(const Outcome &outcome, Weight weight, std::size_t most,
                               const SummaryStyle &style) {
  std::string text;
  std::size_t shown = 0, left_out = 0;
  for (std::size_t i = 0; i < outcome.findings.size(); ++i) {
    if (outcome.findings[i].weight != weight)
      continue;
    if (shown < most) {
      text += finding_text(outcome, i, style);
      ++shown;
    } else {
      ++left_out;
    }
  }
  if (left_out > 0)
    text += fmt::format("      ... and {} like these; the JSON output lists every one.\n",
                        count_text(left_out, "more", "more"));
  return text;
}

} // namespace

std::string findings_section(const Outcome &outcome, const SummaryStyle &style) {
  std::string text = heading("Findings", style) + '\n';
  if (outcome.findings.empty())
    return text + "  None.\n";
  text += findings_of_weight(outcome, Weight::danger, outcome.findings.size(), style);
  text += findings_of_weight(outcome, Weight::flaw, kMostFlaws, style);
  text += findings_of_weight(outcome, Weight::note, kMostNotes, style);
  return text;
}

} // namespace asperity
