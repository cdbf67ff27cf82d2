# Writes TO, a C++ file that holds style and script of the sheet.
file(READ "${FROM}/sheet.css" style)
file(READ "${FROM}/turn.js" script)
file(WRITE "${TO}" "// Made from src/sheet/assets by pack_assets.cmake.\n#include \"packed_assets.h\"\n\nnamespace asperity {\n\n"
  "std::string_view sheet_style() { return R\"asset(${style})asset\"; }\n"
  "std::string_view sheet_script() { return R\"asset(${script})asset\"; }\n\n} // namespace asperity\n")
