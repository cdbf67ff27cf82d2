// Wrapping, padding and columns for plain text in a terminal.
#include "text_layout.h"

#include <algorithm>

namespace asperity {

namespace {

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xC0u) == 0x80u; }

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  std::size_t at = 0;
  while ((at = text.find_first_not_of(" \n", at)) != std::string_view::npos) {
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    words.push_back(text.substr(at, end - at));
    at = end;
  }
  return words;
}

} // namespace

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(
      std::count_if(text.begin(), text.end(), [](char c) { return !continues_character(c); }));
}

std::string printable(std::string_view text) {
  std::string kept;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    // U+0080..U+009F are control characters too; in UTF-8 they are C2 80 .. C2 9F.
    const bool is_c1 =
        byte == 0xC2u && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0u;
    if (is_c1)
      ++i;
    else if (byte == '\n' || byte == '\t')
      kept += ' ';
    else if (byte >= 0x20u && byte != 0x7Fu)
      kept += text[i];
  }
  return kept;
}

std::string padded(std::string_view text, std::size_t width) {
  std::string out(text);
  const std::size_t columns = columns_of(text);
  if (columns < width)
    out.append(width - columns, ' ');
  return out;
}

std::string wrapped(std::string_view text, std::size_t width, std::string_view first, std::size_t indent) {
  std::string out(first);
  std::size_t column = columns_of(first);
  bool line_is_empty = true;
  for (std::string_view word : words_of(text)) {
    const std::size_t length = columns_of(word);
    if (!line_is_empty && column + 1 + length > width) {
      out += '\n';
      out.append(indent, ' ');
      column = indent;
      line_is_empty = true;
    }
    if (!line_is_empty) {
      out += ' ';
      ++column;
    }
    out += word;
    column += length;
    line_is_empty = false;
  }
  return out + '\n';
}

std::string table(const std::vector<std::vector<std::string>> &rows, std::size_t indent) {
  std::vector<std::size_t> widths;
  for (const auto &row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i)
      widths[i] = std::max(widths[i], columns_of(row[i]));
  }
  std::string out;
  for (const auto &row : rows) {
    std::string line(indent, ' ');
    for (std::size_t i = 0; i < row.size(); ++i)
      line += i + 1 < row.size() ? padded(row[i], widths[i] + 2) : row[i];
    line.erase(line.find_last_not_of(' ') + 1);
    out += line + '\n';
  }
  return out;
}

} // namespace asperity
