// Words on a drawn picture: headline, what the colours mean, numbers beside the findings' rings.
#pragma once

#include "asperity/picture/image.h"
#include "asperity/render/draw_request.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

struct CaptionedFinding {
  std::size_t finding = 0; ///< index into Outcome::findings; shown as index + 1
  std::string words;
};

/// Numbers along the edges of a flat view, as far as low..high reaches. What is shown at sheet coordinate x
/// is called origin + (mirrored ? -x : x), wrapped round after wrap_mm if that is not 0.
struct SheetAxes {
  SheetView view;
  Vec2 low_mm{0.0}, high_mm{0.0};
  std::string across_name, up_name; ///< "s", "z"
  double across_origin_mm = 0, across_wrap_mm = 0;
  bool is_mirrored = false;
};

struct Caption {
  std::string title, subtitle;
  std::vector<std::string> notes; ///< small print below the picture
  std::vector<CaptionedFinding> findings;
  std::size_t findings_left_out = 0;
  std::optional<SheetAxes> axes;
};

/// Where the drawing itself goes on a sheet of a given size.
struct SheetLayout {
  PictureSize whole;
  int x = 0, y = 0; ///< upper left corner of the drawing
  PictureSize drawing;
  double scale = 1.0; ///< of the letters, against a sheet 1600 pixels wide
};

SheetLayout sheet_layout(PictureSize whole);

struct CaptionedPicture {
  Image image;
  bool has_lettering = true; ///< false when no font was found: the picture is without words
};

/// `drawing` has the layout's size.
CaptionedPicture captioned(const SheetLayout &layout, const Image &drawing, const Drawn &drawn,
                           const Caption &caption, const Theme &theme);

} // namespace asperity
