// What one plan leaves standing above the other, cell by cell, on a feature both jobs have.
#pragma once

#include "asperity/predict/outcome.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

/// Features of equal name and geometry.
struct FeaturePair {
  std::size_t first = 0, other = 0;
};

struct FeaturePairs {
  std::vector<FeaturePair> pairs;
  std::vector<std::string> left_out; ///< why features of the same name are not compared, in words
};

FeaturePairs feature_pairs(const Job &first, const Job &other);

struct DifferenceChart {
  /// The first plan's chart, for its geometry.
  const Chart *grid = nullptr;
  /// e of the other plan minus e of the first [um], on the first one's cells: > 0 the other leaves more
  /// stock. NaN where either has not cut.
  std::vector<float> difference_um;
  bool is_resampled = false; ///< the other's cells lie elsewhere: read between its four nearest
  double mean_um = 0, lowest_um = 0, highest_um = 0, rms_um = 0;     ///< NaN when no cell is cut in both
  double both_share = 0, first_only_share = 0, other_only_share = 0; ///< of the feature's cells, cut in ...
};

/// The charts belong to features of equal geometry; the result points at `first`.
DifferenceChart difference_chart(const Chart &first, const Chart &other);

} // namespace asperity
