// Sixteen at a time.
#include "asperity/base/highest.h"

#include "asperity/base/wide_vectors.h"

#include <array>
#include <cstddef>
#include <limits>

namespace asperity {

ASPERITY_WIDE float highest(std::span<const float> values) {
  constexpr std::size_t kTogether = 16;
  std::array<float, kTogether> most;
  most.fill(-std::numeric_limits<float>::infinity());
  std::size_t i = 0;
  for (; i + kTogether <= values.size(); i += kTogether)
    for (std::size_t k = 0; k < kTogether; ++k)
      most[k] = values[i + k] > most[k] ? values[i + k] : most[k];
  for (std::size_t k = 0; i < values.size(); ++i, ++k)
    most[k] = values[i] > most[k] ? values[i] : most[k];
  float all = most[0];
  for (const float of_some : most)
    all = of_some > all ? of_some : all;
  return all;
}

} // namespace asperity
