// Plans for one part set side by side: every key number, and how each plan stands against the first.
#pragma once

#include "asperity/number/key_number.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace asperity {

/// How a number stands against the first plan's. same: no farther apart than the last digit shown, or within
/// the uncertainty where that was asked for. informs: neither direction is better.
enum class Standing { better, worse, same, informs };

/// Where the difference (plan minus first) lies with 95 % probability.
struct DifferenceBand {
  double low = 0, high = 0;
  bool holds_nought() const { return low <= 0.0 && high >= 0.0; }
};
struct NumberBand {
  std::string id;
  DifferenceBand spread;
};

struct Difference {
  double value = 0; ///< plan minus first
  Standing standing = Standing::informs;
  std::optional<DifferenceBand> spread; ///< nothing: not asked for, or not known of this number
};

struct ComparedNumber {
  KeyNumber number;                         ///< as the first plan that has it says it
  std::vector<std::optional<KeyNumber>> of; ///< one a plan; nothing where it does not apply
  std::vector<std::optional<Difference>>
      difference; ///< one a plan; nothing for the first, and where it cannot be
};

struct ComparedPlan {
  std::string letter; ///< "A", "B", ...
  std::string title;
  std::size_t checks = 0, missed = 0, dangers = 0;
  double time_s = 0;
  /// Nothing wanted is missed and nothing dangerous was found.
  bool is_fit() const { return missed == 0 && dangers == 0; }
};

struct Comparison {
  std::vector<ComparedPlan> plans;
  std::vector<ComparedNumber> numbers;
  bool knows_uncertainty = false;
};

/// Numbers come in the first plan's order; those that only later plans have follow after the number they
/// stand behind there. All outcomes are done.
Comparison compare(std::span<const Outcome *const> outcomes);

/// Gives the differences of one plan their spreads and judges them anew.
void apply_bands(Comparison &comparison, std::size_t plan, std::span<const NumberBand> spreads);

/// One unit of the last digit shown (half a second of time): nearer values are the same, as they may read
/// alike.
double resolution(std::string_view unit);

/// "A" to "Z", then "A2" and so on.
std::string plan_letter(std::size_t plan);

} // namespace asperity
