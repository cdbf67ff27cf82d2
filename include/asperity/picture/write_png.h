// Pictures as PNG files.
#pragma once

#include "asperity/picture/image.h"

#include <filesystem>
#include <string>

namespace asperity {

/// The picture as a PNG file's bytes; empty if the picture is empty.
std::string png_bytes(const Image &image);

/// Writes the whole file or nothing. Returns an empty string, or what went wrong.
std::string write_png(const std::filesystem::path &path, const Image &image);

} // namespace asperity
