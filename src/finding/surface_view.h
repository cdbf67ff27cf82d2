// A chart of either kind as a plain list of cells, for finders that ask the same of walls and floors.
#pragma once

#include "found.h"
#include "patch.h"

#include <functional>

namespace asperity {

/// Borrowed from the evidence; valid as long as that lives.
struct SurfaceView {
  int feature = -1;
  std::size_t columns = 0;
  bool wraps = false;
  const LargeArray<float> *wanted_mm = nullptr; ///< no number outside the feature; none: all lies within
  const LargeArray<float> *envelope_mm = nullptr;
  const LargeArray<float> *blank_mm = nullptr;
  const LargeArray<std::uint32_t> *owner = nullptr;
  std::function<Vec3(std::size_t cell)> place_mm;
  std::function<std::string(const Patch &patch)> where;

  std::size_t cells() const { return envelope_mm->size(); }
  bool in_feature(std::size_t cell) const {
    return wanted_mm == nullptr || (*wanted_mm)[cell] == (*wanted_mm)[cell];
  }
  bool is_reached(std::size_t cell) const { return (*envelope_mm)[cell] < 1e30f; }
  bool is_cut(std::size_t cell) const { return (*envelope_mm)[cell] < (*blank_mm)[cell]; }
};

/// One view for every feature that has a chart with cells: walls first, then floors and domes.
std::vector<SurfaceView> surface_views(const Evidence &evidence);

} // namespace asperity
