// What commands say on the two streams.
#include "output.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <sys/ioctl.h>
#include <unistd.h>

namespace asperity {

SummaryStyle style_of_output() {
  SummaryStyle style;
  if (!::isatty(STDOUT_FILENO))
    return style;
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0)
    style.width = std::min<int>(size.ws_col, 120);
  const char *terminal = std::getenv("TERM");
  style.colour = !std::getenv("NO_COLOR") && terminal && std::string_view(terminal) != "dumb";
  return style;
}

bool print(const std::string &text) {
  return std::fputs(text.c_str(), stdout) >= 0 && std::fflush(stdout) == 0;
}

ExitStatus fail(std::string_view what) {
  fmt::print(stderr, "asperity: error: {}\n", what);
  return ExitStatus::wrong_input;
}

ExitStatus stopped() {
  fmt::print(stderr, "asperity: stopped.\n");
  return ExitStatus::interrupted;
}

void warn_of_no_font() {
  fmt::print(stderr,
             "asperity: warning: the font DejaVu Sans was not found, so the pictures are without words "
             "(Debian package fonts-dejavu-core).\n");
}

} // namespace asperity
