// Local Ra over a whole feature, window by window.
#pragma once

#include "asperity/chart/chart.h"
#include "asperity/texture/wall_texture.h"

#include <cstdint>
#include <vector>

namespace asperity {

/// Side of a window, and cutoff of the filter before it: the usual one [mm].
inline constexpr double kWindow_mm = 0.8;

/// The map is read in blocks of about so many cells a side, but of so many windows at least, each with the
/// cells in reach of its filter.
inline constexpr std::size_t kRaBlockCells = 256, kRaLeastWindows = 4;

struct RaWindow {
  double ra_um = 0;           ///< NaN where less than a quarter is cut
  std::uint32_t roughest = 0; ///< cell of the chart that deviates most
};

struct RaMap {
  std::size_t columns = 0, rows = 0;
  bool closed = false; ///< last column beside the first
  double begin_x_mm = 0, begin_y_mm = 0, side_x_mm = 0, side_y_mm = 0;
  std::vector<RaWindow> windows;

  const RaWindow &at(std::size_t column, std::size_t row) const { return windows[row * columns + column]; }
  double x_mm(std::size_t column) const {
    return begin_x_mm + (static_cast<double>(column) + 0.5) * side_x_mm;
  }
  double y_mm(std::size_t row) const { return begin_y_mm + (static_cast<double>(row) + 0.5) * side_y_mm; }
};

/// Mean deviation of the chart's cut cells from their mean surface, and the marks of the tooth that made each
/// place, by root of sum of squares. No windows where the chart's cells are uneven.
/// The same, whatever the blocks and the threads.
RaMap ra_map(const Chart &chart, const TextureSource &source, int threads,
             std::size_t block_cells = kRaBlockCells);

/// Memory that a thread takes meanwhile, at most, in a chart of so many cells.
double ra_map_bytes(double cells, double spacing_mm);

/// Nearest window to (column, row) with cut windows for `room_mm` all round; else the nearest that is cut at
/// all. Index into windows; nothing where none is.
std::optional<std::size_t> window_near(const RaMap &map, std::size_t column, std::size_t row, double room_mm);
/// A window on ground as rough as half of all are: on walls at mid height, a quarter turn from the roughest.
std::optional<std::size_t> usual_window(const RaMap &map, std::size_t roughest, double room_mm);
std::optional<std::size_t> roughest_window(const RaMap &map);

} // namespace asperity
