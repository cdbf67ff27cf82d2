// The shop's own errors carried through the prediction: bands instead of numbers, by Monte Carlo.
#pragma once

#include "asperity/number/key_number.h"
#include "asperity/tolerance/uncertain_input.h"

#include <cstdint>
#include <string>
#include <vector>

namespace asperity {

struct ToleranceOptions {
  int draws = 100;
  std::uint64_t seed = 1;
  int threads = 0;        ///< 0 = all cores; results do not depend on it
  bool roughness = false; ///< reading roughness takes most of a prediction's time
  double coarser = 2.0;   ///< chart spacing against that of one prediction; 1 = as fine
};

/// Share of a number's variance that one input explains by itself: 0 to 1, estimated, so slightly outside at
/// times.
struct VarianceShare {
  std::string input; ///< UncertainInput::id
  double share = 0;
};

/// One number over all draws.
struct Band {
  std::string id, feature, what, unit;
  Better better = Better::neither;
  double value = 0; ///< with every input at its stated value
  double mean = 0, standard_deviation = 0;
  double low = 0, high = 0;          ///< 95 % of the draws, as many left out below as above
  int draws = 0;                     ///< in which the number applies
  std::vector<VarianceShare> shares; ///< largest first; empty where nothing varies or draws are too few
};

/// How often a wanted value is met: JCGM 106:2012 calls it the conformance probability.
struct Conformance {
  std::string feature, what, wanted;
  double met_share = 0;
};

struct Tolerance {
  Status status = Status::done;
  std::string why; ///< when not done
  std::vector<UncertainInput> inputs;
  std::vector<Band> bands;                ///< in the order of key_numbers()
  std::vector<Conformance> conformances;  ///< empty for a difference
  std::vector<VarianceShare> most_wanted; ///< inputs by their mean share over the numbers that judge a plan
  int draws = 0;
  std::uint64_t seed = 0;
};

struct JobToDraw {
  const Job &job;
  const Program &program;
};

/// Numbers that one draw has not, or that the stated values have not, are left out of that draw or
/// altogether.
Tolerance tolerance_of(const JobToDraw &job, const ToleranceOptions &options, const Progress &progress);

/// Second minus first, both under the same draws: an input that both have (by id) moves both alike. Numbers
/// that both have, by id. A difference whose band holds 0 is not larger than what is uncertain.
Tolerance tolerance_of_difference(const JobToDraw &first, const JobToDraw &second,
                                  const ToleranceOptions &options, const Progress &progress);

/// The band of that id, or nothing.
const Band *find_band(const Tolerance &tolerance, std::string_view id);

} // namespace asperity
