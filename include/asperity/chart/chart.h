// A chart of either kind.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"

#include <variant>

namespace asperity {

using Chart = std::variant<WallChart, FloorChart>;

} // namespace asperity
