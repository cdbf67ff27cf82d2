// A study as far as it has come, with what every output of it shows: axes, front, influence, best plan.
#pragma once

#include "asperity/study/best_plan.h"
#include "asperity/study/front.h"
#include "asperity/study/influence.h"

#include <string>
#include <vector>

namespace asperity {

struct StudyWish {
  std::string x, y; ///< ids of the axes; empty = chosen
  std::vector<ExtraLimit> limits;
};

struct StudyView {
  StudyResults results;
  std::vector<ExtraLimit> limits;
  std::vector<KeyNumber> columns; ///< every number there is
  Front front;
  std::string y_id;
  Influence influence; ///< on the upright axis's number
  BestPlan best;

  std::size_t done() const { return results.trials.size(); }
  std::size_t all() const { return results.head.grid.size(); }
  std::size_t count(TrialStatus status) const;
};

/// `fault` is set when a wished number is not there.
StudyView study_view(StudyResults results, const StudyWish &wish, std::string &fault);

/// Short names of the varied keys: the last step, or as much as tells them apart.
std::vector<std::string> short_keys(const StudyGrid &grid);
/// "14 %", "< 1 %".
std::string share_text(double share);
/// "deepest witness line, rim (um)".
std::string words_of(const KeyNumber &number);
/// The smallest limit that the trials' wishes set to that number; not a number where there is none.
double wanted_limit(const StudyView &view, const KeyNumber &number);
/// The best trial's index, else the nearest's; nothing when none could be predicted.
std::optional<std::size_t> shown_plan(const BestPlan &plan);

} // namespace asperity
