// The part of a study's text that is a table.
#pragma once

#include "asperity/report/study_view.h"

#include <string>

namespace asperity {

/// A row a trial; of very many only the front and the best plan. Not wider than `width` where columns can be
/// left out for that.
std::string trial_table(const StudyView &view, std::size_t width);
/// A row a varied key: range of means, share, mean at each value.
std::string influence_table(const StudyView &view, std::size_t width);

} // namespace asperity
