// Cells of comma-separated tables.
#include "csv_cell.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

std::string csv_cell(std::string_view text) {
  std::string plain;
  for (const char c : text)
    if (static_cast<unsigned char>(c) >= 0x20u && c != 0x7F)
      plain += c;
  if (plain.find_first_of(",\"") == std::string::npos)
    return plain;
  std::string quoted = "\"";
  for (const char c : plain)
    quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + '"';
}

std::string csv_number(double value) {
  return std::isfinite(value) ? fmt::format("{}", value) : std::string();
}

} // namespace asperity
