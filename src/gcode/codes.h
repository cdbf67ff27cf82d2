// The G and M codes there are, their modal groups, and the codes refused by name.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace asperity::gcode {

/// A code in tenths: G1 is 10, G59.3 is 593.
using Code = int;
inline constexpr Code kNoCode = -1;

/// At most one code of a group may stand on a line [NISTIR 6556, table 4; path tolerance and arc centres
/// ours].
enum class Group : std::uint8_t {
  non_modal,
  motion,
  plane,
  distance,
  arc_centres,
  feed_mode,
  units,
  radius_compensation,
  length_offset,
  cycle_return,
  coordinate_system,
  path_control,
  stopping,
  tool_change,
  spindle,
  coolant,
  overrides,
  count,
  unknown
};

Group group_of_g(Code code);
Group group_of_m(Code code);

/// What a code that is known but not followed would do ("radius compensation"); empty for other codes.
std::string_view refused_g(Code code);
std::string_view refused_m(Code code);
/// True for codes that only cancel what is refused anyway, such as G69.
bool is_idle_cancel(Code code);

inline bool is_arc(Code code) { return code == 20 || code == 30; }
inline bool is_cycle(Code code) { return code >= 810 && code <= 890; }
/// G10, G28, G30, G92: non-modal codes that use the line's axis words.
inline bool takes_axis_words(Code non_modal) {
  return non_modal == 100 || non_modal == 280 || non_modal == 300 || non_modal == 920;
}

/// "G59.3" from 593.
std::string code_name(char letter, Code code);

} // namespace asperity::gcode
