// Words on a picture, set with FreeType.
#include "asperity/picture/lettering.h"

#include "asperity/picture/canvas.h"

#include <ft2build.h>
#include FT_FREETYPE_H

#include <string>

namespace asperity {

struct Lettering::Font {
  FT_Library library = nullptr;
  FT_Face face = nullptr;
  ~Font() {
    if (face)
      FT_Done_Face(face);
    if (library)
      FT_Done_FreeType(library);
  }
};

namespace {

/// Where systems keep DejaVu Sans.
constexpr const char *kFontFiles[] = {
    "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf", "/usr/share/fonts/dejavu-sans-fonts/DejaVuSans.ttf",
    "/usr/share/fonts/dejavu/DejaVuSans.ttf",          "/usr/share/fonts/TTF/DejaVuSans.ttf",
    "/usr/local/share/fonts/dejavu/DejaVuSans.ttf",
};

constexpr char32_t kNotACharacter = 0xFFFD;

/// Next code point of UTF-8 text; a byte that fits nowhere counts as one unreadable character.
char32_t next_character(std::string_view text, std::size_t &at) {
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const unsigned first = byte(at++);
  if (first < 0x80u)
    return first;
  const int more = first >= 0xF0u ? 3 : first >= 0xE0u ? 2 : first >= 0xC0u ? 1 : 0;
  if (more == 0)
    return kNotACharacter;
  char32_t code = first & (0x3Fu >> more);
  for (int k = 0; k < more; ++k) {
    if ((byte(at) & 0xC0u) != 0x80u)
      return kNotACharacter;
    code = (code << 6) | (byte(at++) & 0x3Fu);
  }
  return code;
}

/// Calls place(slot, pen) for every character, pen in 1/64 px from the line's begin; returns the line's
/// length.
template <class Place> FT_Pos set_line(FT_Face face, std::string_view text, Place place) {
  FT_Pos pen = 0;
  FT_UInt previous = 0;
  for (std::size_t at = 0; at < text.size();) {
    const char32_t character = next_character(text, at);
    if (character < 0x20u)
      continue;
    const FT_UInt glyph = FT_Get_Char_Index(face, character);
    FT_Vector kern{0, 0};
    if (previous && glyph && FT_Get_Kerning(face, previous, glyph, FT_KERNING_DEFAULT, &kern) == 0)
      pen += kern.x;
    if (FT_Load_Glyph(face, glyph, FT_LOAD_RENDER | FT_LOAD_TARGET_LIGHT) == 0) {
      place(*face->glyph, pen);
      pen += face->glyph->advance.x;
    }
    previous = glyph;
  }
  return pen;
}

int pixels(FT_Pos sixty_fourths) { return static_cast<int>((sixty_fourths + 32) >> 6); }

/// Calls ink(dx, dy, share) for every pixel of a line set from (0, 0), y down.
template <class Ink> void ink_line(FT_Face face, std::string_view text, Ink ink) {
  set_line(face, text, [&](const FT_GlyphSlotRec_ &slot, FT_Pos pen) {
    const FT_Bitmap &bitmap = slot.bitmap;
    for (unsigned row = 0; row < bitmap.rows; ++row)
      for (unsigned column = 0; column < bitmap.width; ++column) {
        const unsigned char value = bitmap.buffer[static_cast<std::ptrdiff_t>(row) * bitmap.pitch + column];
        if (value)
          ink(pixels(pen) + slot.bitmap_left + static_cast<int>(column),
              static_cast<int>(row) - slot.bitmap_top, value / 255.0);
      }
  });
}

} // namespace

Lettering::Lettering() : Lettering(kFontFiles) {}

Lettering::Lettering(std::span<const char *const> font_files) : font_(std::make_unique<Font>()) {
  if (FT_Init_FreeType(&font_->library) != 0)
    return;
  for (const char *file : font_files)
    if (FT_New_Face(font_->library, file, 0, &font_->face) == 0)
      return;
  font_->face = nullptr;
}

Lettering::~Lettering() = default;

bool Lettering::has_font() const { return font_->face != nullptr; }

int Lettering::width_px(std::string_view text, int size_px) const {
  if (!has_font())
    return 0;
  FT_Set_Pixel_Sizes(font_->face, 0, static_cast<FT_UInt>(size_px));
  return pixels(set_line(font_->face, text, [](const FT_GlyphSlotRec_ &, FT_Pos) {}));
}

void Lettering::draw(Image &image, std::string_view text, int x, int y, int size_px, Rgb colour,
                     Anchor anchor) const {
  if (!has_font())
    return;
  const int width = width_px(text, size_px);
  const int left = anchor == Anchor::left ? x : anchor == Anchor::right ? x - width : x - width / 2;
  ink_line(font_->face, text,
           [&](int dx, int dy, double share) { cover(image, left + dx, y + dy, colour, share); });
}

void Lettering::draw_upwards(Image &image, std::string_view text, int x, int y, int size_px,
                             Rgb colour) const {
  if (!has_font())
    return;
  const int foot = y + width_px(text, size_px) / 2;
  ink_line(font_->face, text,
           [&](int dx, int dy, double share) { cover(image, x + dy, foot - dx, colour, share); });
}

} // namespace asperity
