// Picks windows of a map: the roughest, and one that stands for the rest.
#include "ra_map.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

bool is_cut(const RaMap &map, std::ptrdiff_t column, std::ptrdiff_t row) {
  const auto columns = static_cast<std::ptrdiff_t>(map.columns), rows = static_cast<std::ptrdiff_t>(map.rows);
  if (map.closed)
    column = (column % columns + columns) % columns;
  if (column < 0 || column >= columns || row < 0 || row >= rows)
    return false;
  return !std::isnan(map.at(static_cast<std::size_t>(column), static_cast<std::size_t>(row)).ra_um);
}

/// Cut all along the cross of both traces; a wall lower than the room counts over its whole height.
bool has_room(const RaMap &map, std::size_t column, std::size_t row, double room_mm) {
  const auto reach = [&](double side_mm, std::size_t count) {
    return std::min(static_cast<std::ptrdiff_t>(std::ceil(room_mm / side_mm)),
                    static_cast<std::ptrdiff_t>(count - 1) / 2);
  };
  const auto i = static_cast<std::ptrdiff_t>(column), j = static_cast<std::ptrdiff_t>(row);
  const std::ptrdiff_t reach_x = reach(map.side_x_mm, map.columns), reach_y = reach(map.side_y_mm, map.rows);
  for (std::ptrdiff_t k = -reach_x; k <= reach_x; ++k)
    if (!is_cut(map, i + k, j))
      return false;
  for (std::ptrdiff_t k = -reach_y; k <= reach_y; ++k)
    if (!is_cut(map, i, j + k))
      return false;
  return true;
}

/// The cut window with the least score, before all others those with room.
template <typename Score>
std::optional<std::size_t> best_window(const RaMap &map, double room_mm, const Score &score) {
  std::optional<std::size_t> best;
  double best_score = HUGE_VAL;
  for (const bool needs_room : {true, false}) {
    for (std::size_t row = 0; row < map.rows; ++row)
      for (std::size_t column = 0; column < map.columns; ++column) {
        const double value = score(column, row);
        if (!std::isnan(map.at(column, row).ra_um) && value < best_score &&
            (!needs_room || has_room(map, column, row, room_mm))) {
          best = row * map.columns + column;
          best_score = value;
        }
      }
    if (best)
      break;
  }
  return best;
}

} // namespace

std::optional<std::size_t> roughest_window(const RaMap &map) {
  return best_window(map, 0.0,
                     [&](std::size_t column, std::size_t row) { return -map.at(column, row).ra_um; });
}

std::optional<std::size_t> window_near(const RaMap &map, std::size_t column, std::size_t row,
                                       double room_mm) {
  const auto across = static_cast<double>(map.columns);
  return best_window(map, room_mm, [&](std::size_t i, std::size_t j) {
    double dx = std::abs(static_cast<double>(i) - static_cast<double>(column));
    if (map.closed)
      dx = std::min(dx, across - dx);
    return std::hypot(dx * map.side_x_mm,
                      (static_cast<double>(j) - static_cast<double>(row)) * map.side_y_mm);
  });
}

std::optional<std::size_t> usual_window(const RaMap &map, std::size_t roughest, double room_mm) {
  if (map.closed)
    return window_near(map, (roughest % map.columns + map.columns / 4) % map.columns, map.rows / 2, room_mm);
  std::vector<double> values;
  for (const RaWindow &window : map.windows)
    if (!std::isnan(window.ra_um))
      values.push_back(window.ra_um);
  if (values.empty())
    return std::nullopt;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return best_window(map, room_mm,
                     [&](std::size_t i, std::size_t j) { return std::abs(map.at(i, j).ra_um - *middle); });
}

} // namespace asperity
