// Numbers as people read them: lengths with three decimals, depths in micrometres, times in minutes.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace asperity {

/// Fixed decimals, never "-0.000"; "unknown" when not finite.
std::string fixed_text(double value, int decimals);
/// "12.345 mm".
std::string mm_text(double mm);
/// "8.2 um".
std::string um_text(double um);
/// The value in the style of its unit: mm three decimals, um and degC one, s as a duration, others three
/// digits.
std::string quantity_text(double value, std::string_view unit);
/// "42 s", "12 min 05 s", "2 h 05 min".
std::string duration_text(double seconds);
/// "line 7", "lines 7, 12 and 19", "lines 7, 12, 19 and 40 more"; empty without lines.
std::string lines_text(std::span<const std::uint32_t> lines, std::size_t line_count);
/// "1 danger", "3 dangers".
std::string count_text(std::size_t count, std::string_view one, std::string_view many);

} // namespace asperity
