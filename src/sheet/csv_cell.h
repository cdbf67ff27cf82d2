// Cells of comma-separated tables (RFC 4180).
#pragma once

#include <string>
#include <string_view>

namespace asperity {

/// Quoted where commas, quotes or line breaks ask for it; control characters are left out.
std::string csv_cell(std::string_view text);

/// All digits that tell the double from its neighbours; empty when not finite.
std::string csv_number(double value);

} // namespace asperity
