// The numbers of one prediction, put together in their order.
#include "asperity/number/key_number.h"

#include "job_numbers.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace asperity {

namespace {

/// Of several features with one name the later ones are numbered.
std::string unique_name(const std::vector<Feature> &features, std::size_t i) {
  const std::string &name = name_of(features[i]);
  const auto before = std::count_if(features.begin(), features.begin() + static_cast<std::ptrdiff_t>(i),
                                    [&](const Feature &feature) { return name_of(feature) == name; });
  return before == 0 ? name : fmt::format("{} #{}", name, before + 1);
}

} // namespace

std::vector<KeyNumber> key_numbers(const Outcome &outcome) {
  std::vector<KeyNumber> numbers;
  if (outcome.status != Status::done)
    return numbers;
  put_job_numbers(numbers, outcome);
  for (std::size_t i = 0; i < std::min(outcome.features.size(), outcome.job.features.size()); ++i)
    put_feature_numbers(numbers, outcome, i, unique_name(outcome.job.features, i));
  return numbers;
}

const KeyNumber *find_number(const std::vector<KeyNumber> &numbers, std::string_view id) {
  const auto found =
      std::find_if(numbers.begin(), numbers.end(), [&](const KeyNumber &number) { return number.id == id; });
  return found == numbers.end() ? nullptr : &*found;
}

double merit(const KeyNumber &number) {
  switch (number.better) {
  case Better::lower:
    return -number.value;
  case Better::higher:
    return number.value;
  case Better::nearer_wanted:
    return -std::abs(number.value - number.wanted);
  case Better::neither:
    break;
  }
  return 0.0;
}

} // namespace asperity
