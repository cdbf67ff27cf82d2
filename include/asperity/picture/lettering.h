// Words on a picture, set with FreeType in a font of the system.
#pragma once

#include "asperity/picture/image.h"

#include <memory>
#include <span>
#include <string_view>

namespace asperity {

enum class Anchor { left, centre, right };

/// Loads the font once. Without a font everything still works, and nothing is drawn.
class Lettering {
public:
  Lettering();
  /// The first of these files that is a font.
  explicit Lettering(std::span<const char *const> font_files);
  ~Lettering();
  Lettering(const Lettering &) = delete;
  Lettering &operator=(const Lettering &) = delete;

  bool has_font() const;
  /// Width of one line of UTF-8 text [px].
  int width_px(std::string_view text, int size_px) const;
  /// Sets one line; y is the base line.
  void draw(Image &image, std::string_view text, int x, int y, int size_px, Rgb colour,
            Anchor anchor = Anchor::left) const;
  /// The same running upwards; x is the base line, y the middle of the text.
  void draw_upwards(Image &image, std::string_view text, int x, int y, int size_px, Rgb colour) const;

private:
  struct Font;
  std::unique_ptr<Font> font_;
};

} // namespace asperity
