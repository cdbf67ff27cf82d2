// The G and M codes there are, their modal groups, and the codes refused by name.
#include "codes.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace asperity::gcode {
namespace {

struct GroupedCode {
  Code code;
  Group group;
};

constexpr std::array kGCodes = std::to_array<GroupedCode>({
    {0, Group::motion},
    {10, Group::motion},
    {20, Group::motion},
    {30, Group::motion},
    {40, Group::non_modal},
    {100, Group::non_modal},
    {170, Group::plane},
    {180, Group::plane},
    {190, Group::plane},
    {200, Group::units},
    {210, Group::units},
    {280, Group::non_modal},
    {300, Group::non_modal},
    {400, Group::radius_compensation},
    {430, Group::length_offset},
    {490, Group::length_offset},
    {530, Group::non_modal},
    {540, Group::coordinate_system},
    {550, Group::coordinate_system},
    {560, Group::coordinate_system},
    {570, Group::coordinate_system},
    {580, Group::coordinate_system},
    {590, Group::coordinate_system},
    {591, Group::coordinate_system},
    {592, Group::coordinate_system},
    {593, Group::coordinate_system},
    {610, Group::path_control},
    {611, Group::path_control},
    {640, Group::path_control},
    {800, Group::motion},
    {810, Group::motion},
    {820, Group::motion},
    {830, Group::motion},
    {840, Group::motion},
    {850, Group::motion},
    {860, Group::motion},
    {870, Group::motion},
    {880, Group::motion},
    {890, Group::motion},
    {900, Group::distance},
    {901, Group::arc_centres},
    {910, Group::distance},
    {911, Group::arc_centres},
    {920, Group::non_modal},
    {921, Group::non_modal},
    {922, Group::non_modal},
    {923, Group::non_modal},
    {930, Group::feed_mode},
    {940, Group::feed_mode},
    {950, Group::feed_mode},
    {980, Group::cycle_return},
    {990, Group::cycle_return},
});

static_assert(std::is_sorted(kGCodes.begin(), kGCodes.end(),
                             [](const GroupedCode &a, const GroupedCode &b) { return a.code < b.code; }));

struct RefusedCode {
  Code code;
  std::string_view meaning;
};

constexpr std::array kRefusedG = std::to_array<RefusedCode>({
    {50, "a spline"},
    {51, "a quadratic spline"},
    {70, "lathe diameter mode"},
    {80, "lathe radius mode"},
    {120, "a circular pocket"},
    {130, "a circular pocket"},
    {160, "polar coordinates"},
    {310, "probing"},
    {330, "spindle-synchronised motion"},
    {331, "rigid tapping"},
    {382, "probing"},
    {383, "probing"},
    {384, "probing"},
    {385, "probing"},
    {410, "radius compensation to the left"},
    {411, "radius compensation to the left"},
    {420, "radius compensation to the right"},
    {421, "radius compensation to the right"},
    {431, "a tool length offset given in the program"},
    {432, "an added tool length offset"},
    {440, "a negative tool length offset"},
    {510, "scaling or mirroring"},
    {520, "a local coordinate shift"},
    {541, "an extra work offset"},
    {650, "a macro call"},
    {660, "a modal macro call"},
    {680, "coordinate rotation"},
    {681, "coordinate rotation"},
    {682, "a tilted work plane"},
    {700, "inch units in an older assignment (G20 here)"},
    {710, "metric units in an older assignment (G21 here)"},
    {730, "drilling with chip breaking"},
    {740, "left-hand tapping"},
    {760, "fine boring"},
});

constexpr std::array kRefusedM = std::to_array<RefusedCode>({
    {190, "orienting the spindle"},
    {290, "rigid tapping"},
    {970, "a local sub-program call"},
    {980, "a sub-program call"},
    {990, "return from a sub-program"},
});

template <typename Table> auto find_code(const Table &table, Code code) {
  return std::find_if(table.begin(), table.end(), [code](const auto &row) { return row.code == code; });
}

} // namespace

Group group_of_g(Code code) {
  const auto row = std::lower_bound(kGCodes.begin(), kGCodes.end(), code,
                                    [](const GroupedCode &a, Code b) { return a.code < b; });
  return row != kGCodes.end() && row->code == code ? row->group : Group::unknown;
}

Group group_of_m(Code code) {
  switch (code) {
  case 0:
  case 10:
  case 20:
  case 300:
  case 600:
    return Group::stopping;
  case 60:
    return Group::tool_change;
  case 30:
  case 40:
  case 50:
    return Group::spindle;
  case 70:
  case 80:
  case 90:
    return Group::coolant;
  case 480:
  case 490:
    return Group::overrides;
  default:
    return Group::unknown;
  }
}

std::string_view refused_g(Code code) {
  const auto row = find_code(kRefusedG, code);
  return row == kRefusedG.end() ? std::string_view() : row->meaning;
}

std::string_view refused_m(Code code) {
  const auto row = find_code(kRefusedM, code);
  return row == kRefusedM.end() ? std::string_view() : row->meaning;
}

bool is_idle_cancel(Code code) {
  constexpr std::array<Code, 6> kCancels = {150, 500, 501, 670, 690, 691};
  return std::find(kCancels.begin(), kCancels.end(), code) != kCancels.end();
}

std::string code_name(char letter, Code code) {
  return code % 10 == 0 ? fmt::format("{}{}", letter, code / 10)
                        : fmt::format("{}{}.{}", letter, code / 10, code % 10);
}

} // namespace asperity::gcode
