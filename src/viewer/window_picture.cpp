// The window drawn without a display into a file.
#include "asperity/picture/write_png.h"
#include "asperity/viewer/view.h"
#include "headless.h"

#include <cctype>

namespace asperity {

namespace {

/// '^' turns the wheel by one click over the flat sheet's middle; every other character is a key.
void play(HeadlessWindow &window, char key) {
  if (key != '^') {
    window.press(std::toupper(static_cast<unsigned char>(key)));
    return;
  }
  const auto &places = window.app().places();
  const auto sheet = places.find("strip picture");
  if (sheet == places.end())
    return;
  const auto &[x, y, width, height] = sheet->second;
  window.move(static_cast<double>(x + width / 2), static_cast<double>(y + height / 2));
  window.frames(1);
  window.wheel(1);
}

} // namespace

std::string view_picture(const ViewRequest &request, const WindowPicture &picture) {
  AppState state;
  state.look.is_dark = request.dark.value_or(false);
  state.look.scale = request.scale.value_or(1.0);
  std::string fault;
  const auto window =
      HeadlessWindow::make(std::move(state), {picture.width_px, picture.height_px}, request.threads, fault);
  if (!window)
    return fault;
  for (std::size_t i = 0; i < std::min<std::size_t>(request.jobs.size(), 2); ++i)
    window->app().take(OpenFile{static_cast<int>(i), std::filesystem::absolute(request.jobs[i])});
  window->settle();
  for (const char key : picture.keys) {
    play(*window, key);
    window->settle();
  }
  return write_png(picture.file, window->image());
}

} // namespace asperity
