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
  const LargeArray<float> *envelope_mm = nullptr;
  const LargeArray<float> *blank_mm = nullptr;
  const LargeArray<std::uint32_t> *owner = nullptr;
  std::function<bool(std::size_t cell)> in_feature;
  std::function<Vec3(std::size_t cell)> place_mm;
  std::function<std::string(const Patch &patch)> where;

  std::size_t cells() const { return envelope_mm->size(); }
  bool is_reached(std::size_t cell) const { return (*envelope_mm)[cell] < 1e30f; }
  bool is_cut(std::size_t cell) const { return (*envelope_mm)[cell] < (*blank_mm)[cell]; }
};

/// One view for every feature that has a chart with cells: walls first, then floors and domes.
std::vector<SurfaceView> surface_views(const Evidence &evidence);

} // namespace asperity
