// The head of a summary: title, verdict, wanted table.
#include "asperity/report/number_text.h"
#include "sections.h"
#include "text_layout.h"
#include "wanted.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string escaped(std::string_view code, std::string_view text, const SummaryStyle &style) {
  return style.colour ? fmt::format("\x1b[{}m{}\x1b[0m", code, text) : std::string(text);
}

std::string verdict_line(const Outcome &outcome, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  if (outcome.status == Status::cancelled)
    return wrapped("Stopped before the end: nothing below is known.", width, "", 0);
  if (outcome.status == Status::too_large)
    return wrapped("Not predicted: " + printable(outcome.why), width, "", 0);
  const std::size_t missed = missed_checks(outcome), dangers = count_of(outcome, Weight::danger);
  const std::string asked = count_text(outcome.checks.size(), "wanted value", "wanted values");
  std::string words;
  if (outcome.checks.empty())
    words = "nothing was asked of the part";
  else if (missed == 0)
    words = fmt::format("all of {} met", asked);
  else
    words = fmt::format("{} of {} missed", missed, asked);
  words += fmt::format("; {}, {}.", count_text(dangers, "danger", "dangers"),
                       count_text(count_of(outcome, Weight::flaw), "flaw", "flaws"));
  if (is_all_well(outcome))
    return approval(outcome.checks.empty() ? "DONE" : "MET", style) + "  " + words + '\n';
  return alarm(missed > 0 ? "NOT MET" : "DANGER", style) + "  " + words + '\n';
}

} // namespace

std::string heading(std::string_view text, const SummaryStyle &style) { return escaped("1", text, style); }
std::string alarm(std::string_view text, const SummaryStyle &style) { return escaped("1;31", text, style); }
std::string approval(std::string_view text, const SummaryStyle &style) {
  return escaped("1;32", text, style);
}

std::string title_section(const Outcome &outcome, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const std::string title =
      printable(outcome.job.title.empty() ? outcome.job.file.filename().string() : outcome.job.title);
  std::string text = heading(title.empty() ? "Untitled job" : title, style) + '\n';
  std::string source = "Predicted by a model of cutting and bending, not measured";
  if (!outcome.program.file.empty())
    source += fmt::format(", for {} ({} lines)", printable(outcome.program.file.filename().string()),
                          outcome.program.line_count);
  if (!outcome.job.material.name.empty())
    source += " in " + printable(outcome.job.material.name);
  text += wrapped(source + ".", width, "", 0);
  return text + verdict_line(outcome, style);
}

std::string wanted_section(const Outcome &outcome, const SummaryStyle &style) {
  const std::vector<Unanswered> open = unanswered_wishes(outcome);
  if (outcome.checks.empty() && open.empty())
    return {};
  std::vector<std::vector<std::string>> rows = {{"feature", "what", "wanted", "predicted", ""}};
  for (const WantedCheck &check : outcome.checks)
    rows.push_back({printable(check.feature), printable(check.what), printable(check.wanted),
                    quantity_text(check.predicted, check.unit),
                    check.met ? approval("met", style) : alarm("NOT MET", style)});
  for (const Unanswered &wish : open)
    rows.push_back({printable(wish.feature), wish.what, wish.wanted, "not predicted", "open"});
  return heading("What is wanted", style) + '\n' + table(rows, 2);
}

} // namespace asperity
