// One line on the error stream that tells how far a long run has come.
#include "progress_line.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdio>

namespace asperity {

namespace {

using namespace std::chrono_literals;
constexpr auto kQuietOnTerminal = 300ms;
constexpr auto kQuietInLog = 2s;
constexpr auto kRenewal = 100ms;
constexpr const char *kWipe = "\r\x1b[K";

} // namespace

ProgressLine::ProgressLine(bool is_on, bool is_terminal) : is_on_(is_on), is_terminal_(is_terminal) {}

ProgressLine::~ProgressLine() {
  if (is_shown_ && is_terminal_)
    std::fputs(kWipe, stderr);
}

void ProgressLine::show(std::string_view stage, double fraction) {
  const Clock::time_point now = Clock::now();
  if (!is_on_ ||
      now - begin_ < (is_terminal_ ? Clock::duration(kQuietOnTerminal) : Clock::duration(kQuietInLog)))
    return;
  if (is_shown_ && (!is_terminal_ || now - last_ < kRenewal))
    return;
  is_shown_ = true;
  last_ = now;
  if (is_terminal_)
    fmt::print(stderr, "{}{:.60} {:3.0f}%  (Ctrl-C stops)", kWipe, stage,
               100.0 * std::clamp(fraction, 0.0, 1.0));
  else
    fmt::print(stderr, "asperity: working, {} ...\n", stage);
  std::fflush(stderr);
}

} // namespace asperity
