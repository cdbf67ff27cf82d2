// A study in words, for a terminal.
#pragma once

#include "asperity/report/study_view.h"
#include "asperity/report/summary_text.h"

#include <string>

namespace asperity {

/// Table of the trials, influence of each value, best plan, what it rests on.
std::string study_text(const StudyView &view, const SummaryStyle &style = {});

/// The best plan alone: its values, every wanted number, or what the nearest lacks.
std::string best_text(const StudyView &view, const SummaryStyle &style = {});

} // namespace asperity
