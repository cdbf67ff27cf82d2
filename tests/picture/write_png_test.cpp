// PNG files that another reader (libpng's own) reads back pixel for pixel.
#include "asperity/picture/write_png.h"

#include <gtest/gtest.h>
#include <png.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace asperity {

namespace {

Image decoded(const std::string &bytes) {
  png_image header{};
  header.version = PNG_IMAGE_VERSION;
  EXPECT_TRUE(png_image_begin_read_from_memory(&header, bytes.data(), bytes.size()));
  header.format = PNG_FORMAT_RGB;
  Image image(static_cast<int>(header.width), static_cast<int>(header.height), {});
  EXPECT_TRUE(png_image_finish_read(&header, nullptr, image.pixels.data(), 0, nullptr));
  return image;
}

Image sample() {
  Image image(37, 5, {1, 2, 3});
  for (int y = 0; y < image.height; ++y)
    for (int x = 0; x < image.width; ++x)
      image.at(x, y) = {static_cast<std::uint8_t>(7 * x), static_cast<std::uint8_t>(50 * y),
                        static_cast<std::uint8_t>(x * y)};
  return image;
}

} // namespace

TEST(WritePng, ReadsBackPixelForPixel) {
  const Image image = sample(), back = decoded(png_bytes(image));
  EXPECT_EQ(back.width, image.width);
  EXPECT_EQ(back.height, image.height);
  EXPECT_EQ(back.pixels, image.pixels);
}

TEST(WritePng, TheFileHoldsThoseBytes) {
  const auto path = std::filesystem::temp_directory_path() / "asperity_write_png_test.png";
  ASSERT_EQ(write_png(path, sample()), "");
  std::ostringstream bytes;
  bytes << std::ifstream(path, std::ios::binary).rdbuf();
  EXPECT_EQ(bytes.str(), png_bytes(sample()));
  std::filesystem::remove(path);
}

TEST(WritePng, SaysWhatWentWrong) {
  EXPECT_NE(write_png("/nowhere/at/all.png", sample()), "");
  EXPECT_NE(write_png(std::filesystem::temp_directory_path() / "empty.png", Image()), "");
}

} // namespace asperity
