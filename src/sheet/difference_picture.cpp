// One picture of what one plan leaves above the other.
#include "asperity/sheet/strip_picture.h"

#include "asperity/picture/canvas.h"
#include "asperity/picture/lettering.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <array>

namespace asperity {

namespace {

constexpr Rgb kPaper{252, 251, 248}, kInk{30, 34, 40}, kSoftInk{92, 98, 106};
constexpr int kWidth_px = 1400, kMargin_px = 40, kTop_px = 120, kBottom_px = 150;
constexpr int kTitle_px = 28, kText_px = 17;

void draw_axes(Image &image, const Lettering &letters, const Strip &strip, const Box &box, bool is_wall,
               double seam_mm) {
  const int below = box.bottom() + 24;
  const std::string left = is_wall ? fmt::format("s = {} mm", fixed_text(seam_mm, 1)) : "0 mm";
  const std::string right = is_wall ? fmt::format("once round, {} mm", fixed_text(strip.width_mm, 1))
                                    : fmt::format("{} mm along x", fixed_text(strip.width_mm, 1));
  letters.draw(image, left, box.x, below, kText_px, kSoftInk);
  letters.draw(image, right, box.right(), below, kText_px, kSoftInk, Anchor::right);
  std::string height = fmt::format("{} mm high", fixed_text(strip.height_mm, 1));
  if (strip.stretch > 1.05)
    height += fmt::format(", drawn {} times taller than true", fixed_text(strip.stretch, 1));
  letters.draw(image, height, box.x + box.width / 2, below, kText_px, kSoftInk, Anchor::centre);
}

void draw_scale(Image &image, const Lettering &letters, int y, double range_um) {
  constexpr int kBar_px = 420, kThick_px = 18;
  const Image bar = colour_bar(kBar_px);
  for (int x = 0; x < kBar_px; ++x)
    fill(image, {kMargin_px + x, y, 1, kThick_px}, bar.at(x, 0));
  frame(image, {kMargin_px, y, kBar_px, kThick_px}, kSoftInk);
  const int base = y + kThick_px + 22;
  letters.draw(image, um_text(-range_um), kMargin_px, base, kText_px, kInk);
  letters.draw(image, "0", kMargin_px + kBar_px / 2, base, kText_px, kInk, Anchor::centre);
  letters.draw(image, fmt::format("+{}", um_text(range_um)), kMargin_px + kBar_px, base, kText_px, kInk,
               Anchor::right);
  letters.draw(image,
               "blue: the second plan cuts deeper; brown: it leaves more stock; striped: not cut in both",
               kMargin_px + kBar_px + 30, y + 15, kText_px, kSoftInk);
}

} // namespace

CaptionedStrip difference_picture(const DifferenceChart &difference, const DifferenceWords &words,
                                  double seam_mm) {
  const Lettering letters;
  const double range_um = common_range_um(std::array{difference.difference_um});
  const Strip strip = strip_picture(*difference.grid, difference.difference_um, range_um, seam_mm,
                                    kWidth_px - 2 * kMargin_px);
  Image image(kWidth_px, kTop_px + strip.image.height + kBottom_px, kPaper);
  letters.draw(image, words.title, kMargin_px, 52, kTitle_px, kInk);
  letters.draw(image, words.subtitle, kMargin_px, 86, kText_px, kSoftInk);
  const Box box{kMargin_px, kTop_px, strip.image.width, strip.image.height};
  for (int y = 0; y < strip.image.height; ++y)
    for (int x = 0; x < strip.image.width; ++x)
      image.at(box.x + x, box.y + y) = strip.image.at(x, y);
  frame(image, box, kSoftInk);
  draw_axes(image, letters, strip, box, std::holds_alternative<WallChart>(*difference.grid), seam_mm);
  draw_scale(image, letters, box.bottom() + 56, range_um);
  return {std::move(image), letters.has_font()};
}

} // namespace asperity
