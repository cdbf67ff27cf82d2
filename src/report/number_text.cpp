// Numbers as people read them.
#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

std::string fixed_text(double value, int decimals) {
  if (!std::isfinite(value))
    return "unknown";
  std::string text = fmt::format("{:.{}f}", value, decimals);
  if (text.front() == '-' && text.find_first_not_of("-0.") == std::string::npos)
    text.erase(0, 1);
  return text;
}

std::string mm_text(double mm) { return fixed_text(mm, 3) + (std::isfinite(mm) ? " mm" : ""); }

std::string um_text(double um) { return fixed_text(um, 1) + (std::isfinite(um) ? " um" : ""); }

std::string quantity_text(double value, std::string_view unit) {
  if (!std::isfinite(value))
    return "unknown";
  if (unit == "mm")
    return mm_text(value);
  if (unit == "um")
    return um_text(value);
  if (unit == "s")
    return duration_text(value);
  if (unit == "degC")
    return fixed_text(value, 1) + " degC";
  const std::string number = std::abs(value) >= 1000.0 ? fixed_text(value, 0) : fmt::format("{:.3g}", value);
  return unit.empty() ? number : fmt::format("{} {}", number, unit);
}

std::string duration_text(double seconds) {
  if (!std::isfinite(seconds) || seconds < 0.0)
    return "unknown";
  if (seconds < 10.0)
    return fmt::format("{:.1f} s", seconds);
  const auto whole = static_cast<long long>(std::llround(seconds));
  if (whole < 60)
    return fmt::format("{} s", whole);
  if (whole < 3600)
    return fmt::format("{} min {:02} s", whole / 60, whole % 60);
  const long long minutes = (whole + 30) / 60;
  return fmt::format("{} h {:02} min", minutes / 60, minutes % 60);
}

std::string lines_text(std::span<const std::uint32_t> lines, std::size_t line_count) {
  constexpr std::size_t kShown = 8;
  if (lines.empty())
    return {};
  const std::size_t all = std::max(line_count, lines.size());
  if (all == 1)
    return fmt::format("line {}", lines[0]);
  const std::size_t shown = std::min(lines.size(), kShown);
  std::string text = "lines ";
  for (std::size_t i = 0; i < shown; ++i) {
    const bool last = i + 1 == all;
    text += i == 0 ? "" : last ? " and " : ", ";
    text += fmt::format("{}", lines[i]);
  }
  if (all > shown)
    text += fmt::format(" and {} more", all - shown);
  return text;
}

std::string count_text(std::size_t count, std::string_view one, std::string_view many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

} // namespace asperity
