// A chart of either kind.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"

#include <variant>

namespace asperity {

using Chart = std::variant<WallChart, FloorChart>;

inline std::size_t cell_count(const Chart &chart) {
  return std::visit([](const auto &c) { return c.envelope_mm.size(); }, chart);
}

} // namespace asperity
