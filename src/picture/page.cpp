// Text fitted to the sheet.
#include "page.h"

#include <algorithm>

namespace asperity {

std::vector<std::string> fitted_lines(const Lettering &lettering, std::string_view text, int size_px,
                                      int width_px) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while ((at = text.find_first_not_of(' ', at)) != std::string_view::npos) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word(text.substr(at, end - at));
    at = end;
    if (!lines.empty() && lettering.width_px(lines.back() + ' ' + word, size_px) <= width_px)
      lines.back() += ' ' + word;
    else
      lines.push_back(word);
  }
  return lines;
}

} // namespace asperity
