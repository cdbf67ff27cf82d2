// Which values of a job a study varies, and all their combinations.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/job/job_change.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// A key of the job and the values it takes, each as one TOML value ("0.02", "\"ramp\"").
struct Factor {
  std::string key;
  std::vector<std::string> values;
};

inline constexpr std::size_t kMostValues = 10'000;
inline constexpr std::size_t kMostCombinations = 100'000;

/// Combinations count from 0; the last factor changes fastest.
struct StudyGrid {
  std::vector<Factor> factors;

  std::size_t size() const;
  /// Index of the factor's value in that combination.
  std::size_t level(std::size_t combination, std::size_t factor) const;
  std::vector<JobChange> changes(std::size_t combination) const;
};

/// "KEY=LIST". LIST: values with commas between; FROM:TO:STEP stands for evenly spaced numbers, TO included
/// where the steps meet it. Values that are no TOML are words and need no quotes.
std::optional<Factor> read_factor(std::string_view text, Problems &problems);
/// All factors of a study; keys must differ, and none may be part of another.
std::optional<StudyGrid> read_grid(std::span<const std::string> texts, Problems &problems);

/// One share of a study: combinations whose number leaves `index` when divided by `count`.
struct StudyPart {
  std::size_t index = 0, count = 1;
  bool holds(std::size_t combination) const { return combination % count == index; }
};
/// "2/4" is the second of four parts.
std::optional<StudyPart> read_part(std::string_view text, Problems &problems);

/// The value as people write it: text without its quotes.
std::string shown_value(std::string_view toml_value);
/// "setup.z_zero_error_mm = 0.05, program = a.ngc".
std::string combination_text(const StudyGrid &grid, std::size_t combination);

} // namespace asperity
