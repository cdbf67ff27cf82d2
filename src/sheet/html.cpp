// Text that goes into the sheet.
#include "html.h"

#include "asperity/report/number_text.h"

#include <array>
#include <cctype>
#include <cstdint>

namespace asperity {

namespace {

struct Character {
  std::uint32_t code = 0;
  std::size_t length = 0; ///< bytes; 0 = not UTF-8
};

/// One character as RFC 3629 has it: no overlong forms, no surrogates.
Character character_at(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t k) {
    return static_cast<std::uint32_t>(static_cast<unsigned char>(text[at + k]));
  };
  const std::uint32_t first = byte(0);
  if (first < 0x80u)
    return {first, 1};
  const std::size_t length = first >= 0xF0u ? 4 : first >= 0xE0u ? 3 : first >= 0xC2u ? 2 : 0;
  if (length == 0 || first > 0xF4u || at + length > text.size())
    return {};
  std::uint32_t code = first & (0xFFu >> (length + 1));
  for (std::size_t k = 1; k < length; ++k) {
    if ((byte(k) & 0xC0u) != 0x80u)
      return {};
    code = (code << 6) | (byte(k) & 0x3Fu);
  }
  constexpr std::array<std::uint32_t, 5> kLeast = {0, 0, 0x80u, 0x800u, 0x10000u};
  if (code < kLeast[length] || code > 0x10FFFFu || (code >= 0xD800u && code <= 0xDFFFu))
    return {};
  return {code, length};
}

bool is_left_out(std::uint32_t code) {
  const bool is_control = (code < 0x20u && code != '\n' && code != '\t') || (code >= 0x7Fu && code < 0xA0u);
  const bool turns_direction = (code >= 0x202Au && code <= 0x202Eu) || (code >= 0x2066u && code <= 0x2069u) ||
                               code == 0x200Eu || code == 0x200Fu || code == 0x061Cu;
  return is_control || turns_direction;
}

void replace_all(std::string &text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

/// " um" before anything that cannot belong to a word.
void replace_unit(std::string &text, std::string_view unit, std::string_view shown) {
  for (std::size_t at = text.find(unit); at != std::string::npos; at = text.find(unit, at + 1)) {
    const std::size_t end = at + unit.size();
    const bool is_word =
        end < text.size() && (std::isalnum(static_cast<unsigned char>(text[end])) || text[end] == '_');
    const bool has_number = at > 0 && std::isdigit(static_cast<unsigned char>(text[at - 1]));
    if (!is_word && has_number)
      text.replace(at, unit.size(), shown);
  }
}

} // namespace

std::string escaped(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const Character character = character_at(text, at);
    if (character.length == 0) {
      out += "\xEF\xBF\xBD"; // U+FFFD
      ++at;
      continue;
    }
    if (character.code == '&')
      out += "&amp;";
    else if (character.code == '<')
      out += "&lt;";
    else if (character.code == '>')
      out += "&gt;";
    else if (character.code == '"')
      out += "&quot;";
    else if (character.code == '\'')
      out += "&#39;";
    else if (!is_left_out(character.code))
      out += text.substr(at, character.length);
    at += character.length;
  }
  return out;
}

std::string script_safe(std::string json) {
  replace_all(json, "<", "\\u003c");
  replace_all(json, ">", "\\u003e");
  replace_all(json, "&", "\\u0026");
  return json;
}

std::string typeset(std::string_view text) {
  std::string out = escaped(text);
  replace_unit(out, " um", "\u00a0\u00b5m");
  replace_unit(out, " degC", "\u00a0\u00b0C");
  replace_unit(out, " deg", "\u00b0");
  for (const std::string_view unit : {" mm", " N", " W", " s", " min", " h", " %"})
    replace_unit(out, unit, "\u00a0" + std::string(unit.substr(1)));
  return out;
}

std::string value_html(double value, std::string_view unit) { return typeset(quantity_text(value, unit)); }

std::string list_html(const std::vector<std::string> &lines, std::string_view classes) {
  if (lines.empty())
    return {};
  std::string out = classes.empty() ? "<ul>" : "<ul class=\"" + std::string(classes) + "\">";
  for (const std::string &line : lines)
    out.append("<li>").append(typeset(line)).append("</li>");
  return out + "</ul>\n";
}

} // namespace asperity
