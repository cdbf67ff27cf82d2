// What is kept between runs: window size, ground, scale, what is shown.
#pragma once

#include "app_state.h"

namespace asperity {

struct WindowSize {
  int width = 1280, height = 800;
};

/// $XDG_STATE_HOME/asperity/viewer.json, else below ~/.local/state; empty without a home.
std::filesystem::path kept_state_file();

/// A missing or damaged file changes nothing.
void load_kept_state(const std::filesystem::path &file, AppState &state, WindowSize &size);
/// Empty, or what went wrong.
std::string save_kept_state(const std::filesystem::path &file, const AppState &state, WindowSize size);

} // namespace asperity
