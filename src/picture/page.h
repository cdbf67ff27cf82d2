// The sheet everything is drawn on: picture, lettering, and the look they share.
#pragma once

#include "asperity/picture/canvas.h"
#include "asperity/picture/lettering.h"

#include <string>
#include <string_view>
#include <vector>

namespace asperity {

inline constexpr Rgb kPaper{252, 251, 248};
inline constexpr Rgb kInk{30, 34, 40};
inline constexpr Rgb kSoftInk{92, 98, 106};
inline constexpr Rgb kRule{196, 194, 188};

inline constexpr int kTitle_px = 30;
inline constexpr int kHeading_px = 20;
inline constexpr int kText_px = 17;
inline constexpr int kLine_px = 25; ///< from one line of text to the next

struct Page {
  Image image;
  const Lettering &lettering;

  void write(std::string_view text, int x, int y, int size_px, Rgb colour, Anchor anchor = Anchor::left) {
    lettering.draw(image, text, x, y, size_px, colour, anchor);
  }
};

/// Words of `text` in lines that fit into width_px; a longer word stays whole.
std::vector<std::string> fitted_lines(const Lettering &lettering, std::string_view text, int size_px,
                                      int width_px);

} // namespace asperity
