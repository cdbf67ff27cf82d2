// The part of every plan under one lamp, seen from one place, drawn equally rough.
#pragma once

#include "asperity/picture/image.h"
#include "asperity/predict/outcome.h"

#include <span>
#include <string>
#include <vector>

namespace asperity {

/// A finding's place in the picture: shares of its width and height, from the upper left corner.
struct PictureMark {
  std::size_t finding = 0; ///< index into Outcome::findings
  double x_share = 0, y_share = 0;
};

struct PartPicture {
  Image image;
  std::vector<PictureMark> marks; ///< of findings that face the eye
};

struct PartPictures {
  std::vector<PartPicture> of; ///< one a plan; empty with `fault`
  double exaggeration = 1;     ///< the cut surface is drawn so many times rougher than it is, in all of them
  std::string from;            ///< "seen from 14 degrees, 24 degrees above the level"
  std::string fault;           ///< why there are none
};

/// The eye stands where the first finding of any plan is seen best; the exaggeration is the least that any of
/// them would choose. A build without OpenGL has none, and says so.
PartPictures part_pictures(std::span<const Outcome *const> outcomes, int width_px, int height_px);

} // namespace asperity
