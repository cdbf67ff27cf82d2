// Height parameters of a surface after ISO 25178-2:2021.
#pragma once

#include "asperity/surface/areal_filter.h"

#include <cstddef>
#include <cstdint>
#include <span>

namespace asperity {

/// Heights are measured from the mean of the valid cells. No averaging over sections: Sz is the whole area's.
struct ArealParameters {
  double sa_mm = 0, sq_mm = 0;
  double sp_mm = 0, sv_mm = 0, sz_mm = 0; ///< highest peak, deepest valley (positive), both together
  double ssk = 0;                         ///< 0 when flat
  double sku = 0;                         ///< Gaussian heights give 3; 0 when flat
  std::size_t cells = 0;                  ///< valid ones; all else is 0 when there are none
};

/// valid[i] == 0 leaves cell i out; an empty mask takes all.
ArealParameters areal_parameters(std::span<const double> heights_mm,
                                 std::span<const std::uint8_t> valid = {});
ArealParameters areal_parameters(std::span<const float> heights_mm, std::span<const std::uint8_t> valid = {});
ArealParameters areal_parameters(const HeightGrid &grid);

} // namespace asperity
