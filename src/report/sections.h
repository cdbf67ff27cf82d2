// The paragraphs a summary is made of, in the order they are shown.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/report/summary_text.h"

#include <string>
#include <string_view>

namespace asperity {

/// Text for emphasis, wrapped in escape codes only when the style asks for colour.
std::string heading(std::string_view text, const SummaryStyle &style);
std::string alarm(std::string_view text, const SummaryStyle &style);
std::string approval(std::string_view text, const SummaryStyle &style);

std::string title_section(const Outcome &outcome, const SummaryStyle &style);
std::string wanted_section(const Outcome &outcome, const SummaryStyle &style);
std::string time_section(const Outcome &outcome, const SummaryStyle &style);
std::string size_section(const Outcome &outcome, const SummaryStyle &style);
std::string roughness_section(const Outcome &outcome, const SummaryStyle &style);
std::string findings_section(const Outcome &outcome, const SummaryStyle &style);
std::string rests_on_section(const Outcome &outcome, const SummaryStyle &style);
std::string cautions_section(const SummaryStyle &style);

} // namespace asperity
