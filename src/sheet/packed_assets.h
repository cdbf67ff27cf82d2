// Style and script of the sheet, packed in from src/sheet/assets.
#pragma once

#include <string_view>

namespace asperity {

std::string_view sheet_style();
std::string_view sheet_script();

} // namespace asperity
