// The state as JSON for tests that drive the real window, and the window's title.
#pragma once

#include "app.h"

namespace asperity {

class StateReport {
public:
  /// No file: nothing is written.
  explicit StateReport(std::filesystem::path file) : file_(std::move(file)) {}
  /// Writes the file anew when the state has changed since.
  void tell(const App &app);
  static std::string title(const AppState &state);

private:
  std::filesystem::path file_;
  std::string told_;
};

std::string state_json(const App &app);

} // namespace asperity
