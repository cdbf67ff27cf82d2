// Pictures as PNG files: encoded in memory, then written whole.
#include "asperity/picture/write_png.h"

#include "asperity/base/text_file.h"

#include <png.h>

namespace asperity {

namespace {

static_assert(sizeof(Rgb) == 3, "libpng reads three bytes a pixel");

png_image header_of(const Image &image) {
  png_image header{};
  header.version = PNG_IMAGE_VERSION;
  header.width = static_cast<png_uint_32>(image.width);
  header.height = static_cast<png_uint_32>(image.height);
  header.format = PNG_FORMAT_RGB;
  return header;
}

} // namespace

std::string png_bytes(const Image &image) {
  if (image.width <= 0 || image.height <= 0)
    return {};
  png_image header = header_of(image);
  png_alloc_size_t size = PNG_IMAGE_PNG_SIZE_MAX(header);
  std::string bytes(size, '\0');
  if (!png_image_write_to_memory(&header, bytes.data(), &size, 0, image.pixels.data(), 0, nullptr))
    return {};
  bytes.resize(size);
  return bytes;
}

std::string write_png(const std::filesystem::path &path, const Image &image) {
  const std::string bytes = png_bytes(image);
  return bytes.empty() ? "the picture could not be encoded as PNG" : write_file(path, bytes);
}

} // namespace asperity
