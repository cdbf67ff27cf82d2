// One prediction in words: the sections in the order a reader needs them.
#include "asperity/report/summary_text.h"

#include "sections.h"

#include <algorithm>

namespace asperity {

std::string summary_text(const Outcome &outcome, const SummaryStyle &wanted_style) {
  SummaryStyle style = wanted_style;
  style.width = std::clamp(style.width, 40, 400);
  std::string text = title_section(outcome, style);
  if (outcome.status != Status::done)
    return text;
  const std::string sections[] = {wanted_section(outcome, style),   time_section(outcome, style),
                                  size_section(outcome, style),     roughness_section(outcome, style),
                                  findings_section(outcome, style), rests_on_section(outcome, style),
                                  cautions_section(style)};
  for (const std::string &section : sections)
    if (!section.empty())
      text += '\n' + section;
  return text;
}

} // namespace asperity
