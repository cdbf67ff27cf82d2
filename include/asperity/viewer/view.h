// The window in which one or two jobs are looked at.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

struct ViewRequest {
  std::vector<std::filesystem::path> jobs; ///< none to two
  int threads = 0;                         ///< 0 = all cores
  /// Nothing = as at the last time.
  std::optional<bool> dark{};
  std::optional<double> scale{};
  std::optional<int> width_px{}, height_px{};
  /// For tests: prints to this file, as JSON, what the state is after every frame in which it changed.
  std::filesystem::path report{};
};

/// Shows the window until it is closed. Empty, or why there is none and what to do instead.
std::string view(const ViewRequest &request);

/// Draws the window without a display, after the predictions are done, into a PNG file.
struct WindowPicture {
  int width_px = 1280, height_px = 800;
  std::filesystem::path file;
  std::string
      keys; ///< pressed one after the other before it is drawn; '^' turns the wheel over the flat sheet
};
std::string view_picture(const ViewRequest &request, const WindowPicture &picture);

} // namespace asperity
