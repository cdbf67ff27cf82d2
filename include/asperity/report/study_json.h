// A study as JSON for other programs.
#pragma once

#include "asperity/report/study_view.h"

#include <string>

namespace asperity {

/// "format": "asperity-study", "version": 1; README names the keys.
std::string study_json_text(const StudyView &view);

} // namespace asperity
