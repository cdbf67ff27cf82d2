// The viewer without a display: an offscreen context, input put in by hand.
#pragma once

#include "app.h"

#include "asperity/picture/image.h"
#include "asperity/render/offscreen.h"

namespace asperity {

class HeadlessWindow {
public:
  /// On failure nothing, and `fault` says why.
  static std::unique_ptr<HeadlessWindow> make(AppState state, PictureSize size, int threads,
                                              std::string &fault);
  ~HeadlessWindow();
  HeadlessWindow(const HeadlessWindow &) = delete;
  HeadlessWindow &operator=(const HeadlessWindow &) = delete;

  App &app() { return *app_; }
  /// So many frames, each `seconds` after the one before.
  void frames(int count, double seconds = 0.05);
  /// Frames until no background work is left, at most so many.
  bool settle(int most = 20000);
  Image image();

  void move(double x, double y);
  void button(int which, bool is_down);
  void wheel(double clicks);
  /// GLFW's key number.
  void key(int key, bool is_down);
  void type(const std::string &text);
  void click(double x, double y);
  void drag(double x0, double y0, double x1, double y1, int which = 0);
  void press(int key);

private:
  HeadlessWindow() = default;
  std::unique_ptr<OffscreenContext> context_;
  PictureTarget target_;
  PictureSize size_;
  std::unique_ptr<App> app_;
};

} // namespace asperity
