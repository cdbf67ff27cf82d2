// How much each varied value moves a number: main effects.
#pragma once

#include "asperity/study/trial.h"

#include <string_view>
#include <vector>

namespace asperity {

struct FactorInfluence {
  std::vector<double> level_mean; ///< not a number where no trial has that value
  std::vector<std::size_t> level_count;
  double range = 0; ///< largest minus smallest mean over its values
  double share = 0; ///< of the whole sum of squares, 0 to 1
};

/// Analysis of variance, fixed effects [D. C. Montgomery, Design and Analysis of Experiments, section 5.3,
/// eq. 5.6-5.9; NIST/SEMATECH e-Handbook of Statistical Methods, section 7.4.3]:
///   whole sum of squares  SS = sum of (y - mean)^2
///   of a factor           SS_f = sum over its values of n_v (mean_v - mean)^2;   share = SS_f / SS
/// What is left, 1 - sum of the shares, is the varied values working together (interaction). With trials
/// missing the shares overlap and are a guide only.
struct Influence {
  double mean = 0;
  std::size_t count = 0;
  double sum_of_squares = 0;
  std::vector<FactorInfluence> factors; ///< in the grid's order
  double together_share = 0;
  bool is_balanced = true; ///< every value of a factor has equally many trials
};

/// levels[i][f]: which value factor f has in observation i; counts[f]: how many values it has.
Influence influence_of(const std::vector<std::vector<std::size_t>> &levels, const std::vector<double> &values,
                       const std::vector<std::size_t> &counts);

/// Of the trials that have that number.
Influence influence_on(const StudyResults &results, std::string_view number_id);

} // namespace asperity
