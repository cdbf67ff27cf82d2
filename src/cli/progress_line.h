// One line that tells how far a long run has come; nothing for a short one.
#pragma once

#include <chrono>
#include <string>
#include <string_view>

namespace asperity {

/// On a terminal the line is renewed in place and wiped at the end; elsewhere (a log) one line appears after
/// two seconds and no more.
class ProgressLine {
public:
  /// is_on = false shows nothing at all.
  ProgressLine(bool is_on, bool is_terminal);
  ~ProgressLine();
  ProgressLine(const ProgressLine &) = delete;
  ProgressLine &operator=(const ProgressLine &) = delete;

  void show(std::string_view stage, double fraction);

private:
  using Clock = std::chrono::steady_clock;
  bool is_on_, is_terminal_, is_shown_ = false;
  Clock::time_point begin_ = Clock::now(), last_{};
};

} // namespace asperity
