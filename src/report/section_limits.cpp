// What the numbers rest on, and the cautions.
#include "asperity/report/cautions.h"
#include "sections.h"
#include "text_layout.h"

#include <string_view>
#include <utility>
#include <vector>

namespace asperity {

namespace {

/// "key = value (source)" without and from the source on.
std::pair<std::string_view, std::string_view> split_source(std::string_view value) {
  const std::size_t at = value.find(" (");
  return at == std::string_view::npos ? std::pair{value, std::string_view()}
                                      : std::pair{value.substr(0, at), value.substr(at)};
}

/// Neighbours that rest on the same source share one entry, so that the source is said once.
std::vector<std::string> grouped_by_source(const std::vector<std::string> &values) {
  std::vector<std::string> groups;
  std::string_view open_source;
  for (const std::string &value : values) {
    const auto [setting, source] = split_source(value);
    const bool joins = !groups.empty() && !source.empty() && source == open_source;
    if (joins)
      groups.back().resize(groups.back().size() - source.size());
    const std::string before = joins ? groups.back() + ", " : std::string();
    if (joins)
      groups.pop_back();
    groups.push_back(before + std::string(setting) + std::string(source));
    open_source = source;
  }
  return groups;
}

} // namespace

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
  for (const std::string &value : grouped_by_source(outcome.job.defaults_used))
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
