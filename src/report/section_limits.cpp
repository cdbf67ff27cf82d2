// What the numbers rest on, and the cautions.
#include "asperity/report/cautions.h"
#include "sections.h"
#include "text_layout.h"

namespace asperity {

std::string rests_on_section(const Outcome &outcome, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  if (outcome.notes.empty() && outcome.job.defaults_used.empty())
    return {};
  std::string text = heading("What this rests on", style) + '\n';
  for (const std::string &note : outcome.notes)
    text += wrapped(printable(note), width, "  - ", 4);
  if (outcome.job.defaults_used.empty())
    return text;
  text += "  Not given in the job, so taken as:\n";
  for (const std::string &value : outcome.job.defaults_used)
    text += wrapped(printable(value), width, "    ", 8);
  return text;
}

std::string cautions_section(const SummaryStyle &style) {
  std::string text = heading("Before cutting", style) + '\n';
  for (std::string_view caution : cautions())
    text += wrapped(caution, static_cast<std::size_t>(style.width), "  - ", 4);
  return text;
}

} // namespace asperity
