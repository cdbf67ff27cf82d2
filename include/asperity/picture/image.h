// A picture in memory: rows of sRGB pixels from the top down.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace asperity {

struct Rgb {
  std::uint8_t r = 0, g = 0, b = 0;
  bool operator==(const Rgb &) const = default;
};

struct Image {
  int width = 0, height = 0;
  std::vector<Rgb> pixels;

  Image() = default;
  Image(int width_px, int height_px, Rgb fill)
      : width(width_px), height(height_px),
        pixels(static_cast<std::size_t>(width_px) * static_cast<std::size_t>(height_px), fill) {}
  bool holds(int x, int y) const { return x >= 0 && y >= 0 && x < width && y < height; }
  Rgb &at(int x, int y) {
    return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)];
  }
  Rgb at(int x, int y) const {
    return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                  static_cast<std::size_t>(x)];
  }
};

} // namespace asperity
