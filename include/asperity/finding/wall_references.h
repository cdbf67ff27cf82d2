// What each wall looks like away from flaws, worked out once for all who ask: gauges and finders.
#pragma once

#include "asperity/chart/chart.h"

#include <vector>

namespace asperity {

struct WallReference;

class WallReferences {
public:
  /// threads 0 = all cores.
  WallReferences(const std::vector<Chart> &charts, int threads);
  ~WallReferences();
  WallReferences(const WallReferences &) = delete;
  WallReferences &operator=(const WallReferences &) = delete;

  /// Of a wall's chart; floors have none.
  const WallReference &of(std::size_t feature) const;

private:
  std::vector<WallReference> each_; ///< by feature
};

} // namespace asperity
