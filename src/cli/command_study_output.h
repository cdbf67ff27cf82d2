// What `asperity study` prints and writes of results.
#pragma once

#include "asperity/report/study_view.h"
#include "command_study.h"

#include <optional>

namespace asperity {

/// Looks whether the files can be written, before a long run. Empty, or what is wrong.
std::string fault_of_outputs(const StudyOutputs &outputs);

/// The results with what is asked of them; nothing, and the error has been printed, when it cannot be had.
std::optional<StudyView> asked_view(StudyResults results, const StudyAsk &ask);

/// Writes the files, then prints the text and their names (nothing when quiet).
ExitStatus show_study(const StudyView &view, const StudyOutputs &outputs, bool is_quiet);

} // namespace asperity
