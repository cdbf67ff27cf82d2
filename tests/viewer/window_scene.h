// The window without a display, with the bush in it, for tests that click and drag.
#pragma once

#include "headless.h"
#include "small_outcome.h"

#include "asperity/picture/write_png.h"

#include <cstdlib>

namespace asperity::test_support {

class Window : public Bench {
protected:
  /// Skips the test where no OpenGL can be had.
  void open(int jobs, PictureSize size = {1280, 800}) {
    std::string fault;
    AppState state;
    window_ = HeadlessWindow::make(std::move(state), size, 0, fault);
    if (!window_)
      GTEST_SKIP() << fault;
    write("other.toml", job_text());
    window_->app().take(OpenFile{0, job_file()});
    if (jobs > 1)
      window_->app().take(OpenFile{1, folder() / "other.toml"});
    ASSERT_TRUE(window_->settle());
  }
  void TearDown() override {
    window_.reset();
    Bench::TearDown();
  }

  HeadlessWindow &window() { return *window_; }
  const AppState &state() { return window_->app().state(); }
  /// A point of the named thing, by shares of its width and height.
  Vec2 at(const std::string &name, double across = 0.5, double down = 0.5) {
    const auto found = window_->app().places().find(name);
    EXPECT_NE(found, window_->app().places().end()) << name << " is not on the screen";
    if (found == window_->app().places().end())
      return {0, 0};
    const auto &[x, y, width, height] = found->second;
    return {static_cast<double>(x) + across * static_cast<double>(width),
            static_cast<double>(y) + down * static_cast<double>(height)};
  }
  void click(const std::string &name, double across = 0.5, double down = 0.5) {
    const Vec2 p = at(name, across, down);
    window_->click(p.x, p.y);
  }
  /// With ASPERITY_WINDOW_PICTURES=DIR, what the window shows is written there.
  void keep_picture(const std::string &name) {
    const char *folder = std::getenv("ASPERITY_WINDOW_PICTURES");
    if (!folder)
      return;
    EXPECT_EQ(write_png(std::filesystem::path(folder) / (name + ".png"), window_->image()), "");
  }

private:
  std::unique_ptr<HeadlessWindow> window_;
};

} // namespace asperity::test_support
