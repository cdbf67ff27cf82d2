// Analysis of variance of a grid.
#include "asperity/study/influence.h"

#include <algorithm>
#include <limits>

namespace asperity {

namespace {

double square(double x) { return x * x; }

FactorInfluence one_factor(const std::vector<std::vector<std::size_t>> &levels,
                           const std::vector<double> &values, std::size_t factor, std::size_t count,
                           double mean) {
  FactorInfluence result;
  result.level_mean.assign(count, 0.0);
  result.level_count.assign(count, 0);
  for (std::size_t i = 0; i < values.size(); ++i) {
    result.level_mean[levels[i][factor]] += values[i];
    ++result.level_count[levels[i][factor]];
  }
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t v = 0; v < count; ++v) {
    const auto n = static_cast<double>(result.level_count[v]);
    result.level_mean[v] /= n; // 0 / 0 is not a number, as it should be
    if (result.level_count[v] == 0)
      continue;
    low = std::min(low, result.level_mean[v]);
    high = std::max(high, result.level_mean[v]);
    result.share += n * square(result.level_mean[v] - mean); // a sum of squares until divided below
  }
  result.range = high >= low ? high - low : 0.0;
  return result;
}

bool has_equal_counts(const FactorInfluence &factor) {
  return std::all_of(factor.level_count.begin(), factor.level_count.end(),
                     [&](std::size_t count) { return count == factor.level_count.front(); });
}

} // namespace

Influence influence_of(const std::vector<std::vector<std::size_t>> &levels, const std::vector<double> &values,
                       const std::vector<std::size_t> &counts) {
  Influence result;
  result.count = values.size();
  for (const double value : values)
    result.mean += value / static_cast<double>(values.size());
  for (const double value : values)
    result.sum_of_squares += square(value - result.mean);
  // What rounding alone leaves of equal values is no variance.
  constexpr double kRounding = 1e-24;
  const bool varies =
      result.sum_of_squares > kRounding * static_cast<double>(values.size()) * square(result.mean);
  result.together_share = varies ? 1.0 : 0.0;
  for (std::size_t f = 0; f < counts.size(); ++f) {
    FactorInfluence factor = one_factor(levels, values, f, counts[f], result.mean);
    factor.share = varies ? factor.share / result.sum_of_squares : 0.0;
    result.together_share -= factor.share;
    result.is_balanced = result.is_balanced && has_equal_counts(factor);
    result.factors.push_back(std::move(factor));
  }
  return result;
}

Influence influence_on(const StudyResults &results, std::string_view number_id) {
  const StudyGrid &grid = results.head.grid;
  std::vector<std::size_t> counts;
  for (const Factor &factor : grid.factors)
    counts.push_back(factor.values.size());
  std::vector<std::vector<std::size_t>> levels;
  std::vector<double> values;
  for (const Trial &trial : results.trials) {
    const KeyNumber *number = find_number(trial.numbers, number_id);
    if (!number)
      continue;
    values.push_back(number->value);
    levels.emplace_back();
    for (std::size_t f = 0; f < counts.size(); ++f)
      levels.back().push_back(grid.level(trial.combination, f));
  }
  return influence_of(levels, values, counts);
}

} // namespace asperity
