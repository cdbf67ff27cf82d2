// What a study keeps of one combination.
#pragma once

#include "asperity/number/key_number.h"
#include "asperity/predict/outcome.h"
#include "asperity/study/identity.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// done: predicted. wrong: the job or program is wrong with these values. too_large: more memory than was
/// there; tried again when the study goes on.
enum class TrialStatus { done, wrong, too_large };
/// "done", "wrong", "too_large".
std::string_view name_of(TrialStatus status);

/// One wanted value against the predicted one.
struct TrialCheck {
  std::string feature, what, wanted;
  double predicted = 0; ///< not a number: the surface is not reached
  std::string unit;
  bool met = false;
  double limit = 0; ///< at most; not a number for a size
  /// 0 = met. How far beyond: of an upper limit, the excess over the limit; of a size, the distance from the
  /// allowed range over half its width. Infinite where nothing is predicted.
  double shortfall = 0;
};

struct Trial {
  std::size_t combination = 0;
  TrialStatus status = TrialStatus::done;
  std::string why; ///< when not done
  std::vector<KeyNumber> numbers;
  std::vector<TrialCheck> checks;
  std::size_t dangers = 0, flaws = 0;

  bool all_met() const;
  /// Predicted, everything wanted is met and no danger was found.
  bool is_well() const { return status == TrialStatus::done && all_met() && dangers == 0; }
  /// 0 = all met.
  double worst_shortfall() const;
};

Trial trial_of(const Outcome &outcome, std::size_t combination);

/// A study as far as it has come; trials in rising order of combination.
struct StudyResults {
  StudyHead head;
  std::vector<Trial> trials;
};

/// Columns of a table of all trials: each number's first mention, in the order of the trials.
std::vector<KeyNumber> number_columns(const StudyResults &results);

} // namespace asperity
