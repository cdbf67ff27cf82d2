// Pictures kept for comparison.
#include "golden.h"

#include "asperity/picture/write_png.h"

#include <png.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <sstream>

namespace asperity::render_test {

namespace {

Image read_png(const std::string &file) {
  png_image header{};
  header.version = PNG_IMAGE_VERSION;
  if (!png_image_begin_read_from_file(&header, file.c_str()))
    return {};
  header.format = PNG_FORMAT_RGB;
  Image image(static_cast<int>(header.width), static_cast<int>(header.height), {});
  if (!png_image_finish_read(&header, nullptr, image.pixels.data(), 0, nullptr))
    return {};
  return image;
}

int channel_difference(Rgb a, Rgb b) {
  return std::max({std::abs(a.r - b.r), std::abs(a.g - b.g), std::abs(a.b - b.b)});
}

/// Old, new and four times their difference, side by side.
Image sheet_of(const Image &kept, const Image &image) {
  constexpr int kGap = 6;
  Image sheet(3 * image.width + 2 * kGap, image.height, {255, 255, 255});
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x) {
      const Rgb now = image.at(x, y), then = kept.holds(x, y) ? kept.at(x, y) : Rgb{};
      const auto more = static_cast<std::uint8_t>(std::min(255, 4 * channel_difference(then, now)));
      sheet.at(x, y) = then;
      sheet.at(image.width + kGap + x, y) = now;
      sheet.at(2 * (image.width + kGap) + x, y) = {more, more, more};
    }
  return sheet;
}

std::string difference_in_words(const Image &kept, const Image &image, const GoldenBounds &bounds) {
  if (kept.width != image.width || kept.height != image.height)
    return "it has another size, or there is no kept picture";
  double sum = 0.0;
  std::size_t far = 0;
  for (std::size_t k = 0; k < image.pixels.size(); ++k) {
    const Rgb a = kept.pixels[k], b = image.pixels[k];
    sum += std::abs(a.r - b.r) + std::abs(a.g - b.g) + std::abs(a.b - b.b);
    far += channel_difference(a, b) > bounds.far ? 1 : 0;
  }
  const auto count = static_cast<double>(image.pixels.size());
  const double mean = sum / (3.0 * count), share = static_cast<double>(far) / count;
  if (mean <= bounds.mean && share <= bounds.far_share)
    return {};
  std::ostringstream words;
  words << "mean difference " << mean << " (allowed " << bounds.mean << "), " << 100.0 * share
        << " % of the pixels far off (allowed " << 100.0 * bounds.far_share << " %)";
  return words.str();
}

} // namespace

std::string compared_with_golden(const std::string &name, const Image &image, const GoldenBounds &bounds) {
  const Image kept = read_png(std::string(ASPERITY_SOURCE_DIR) + "/tests/render/golden/" + name + ".png");
  if (const char *folder = std::getenv("ASPERITY_GOLDEN_OUT")) {
    const std::filesystem::path out(folder);
    const std::string fault = write_png(out / (name + ".png"), image) +
                              write_png(out / (name + "-sheet.png"), sheet_of(kept, image));
    return fault.empty() ? std::string() : "not written: " + fault;
  }
  const std::string words = difference_in_words(kept, image, bounds);
  return words.empty() ? words
                       : name + ": " + words + ". If this is meant, run tests/render/refresh_golden.sh";
}

} // namespace asperity::render_test
