// One OpenGL context without a display for all drawing tests, and small scenes made by formula.
#pragma once

#include "asperity/render/offscreen.h"
#include "asperity/render/scene.h"

#include <gtest/gtest.h>

#include <functional>

namespace asperity::render_test {

/// The context, or nothing and why.
OffscreenContext *context(std::string &fault);

/// Skips where no OpenGL can be had, with the reason.
class Drawing : public testing::Test {
protected:
  void SetUp() override {
    std::string fault;
    if (!context(fault))
      GTEST_SKIP() << fault;
  }
};

/// A floor at z = 0 from (0, 0) to (width, height), all of it cut, residual by formula [mm]. Piece 0 (line
/// 10) is a feed move along x, piece 1 (line 20) a rapid; owner by formula.
Outcome floor_outcome(double width_mm, double height_mm, double spacing_mm,
                      const std::function<double(double x_mm, double y_mm)> &residual_mm,
                      const std::function<std::uint32_t(double x_mm, double y_mm)> &owner = {});

/// The whole floor or strip fills the picture.
DrawRequest strip_request(const Outcome &outcome, PictureSize size, Colouring colouring);

/// Without oversampling: a pixel shows one place.
OffscreenPicture drawn(const Outcome &outcome, const DrawRequest &request);

Rgb pixel_at(const OffscreenPicture &picture, Vec2 place_px);

/// Largest difference of the three channels.
int difference(Rgb a, Rgb b);

/// IEC 61966-2-1: light of an sRGB channel, 0 .. 1.
double light_of(std::uint8_t channel);

} // namespace asperity::render_test
