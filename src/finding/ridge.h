// Ridges between hollows along one profile.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

struct Ridge {
  std::size_t at = 0; ///< index of the crest
  double height = 0;  ///< crest above the mean of the hollows on either side, in the unit of the profile
};

/// Crests that stand at least `least` above the hollows on both sides, in order. NaN ends a profile and
/// begins a new one; a crest without a hollow on both sides does not count.
std::vector<Ridge> ridges_in(std::span<const double> profile, double least);

} // namespace asperity
