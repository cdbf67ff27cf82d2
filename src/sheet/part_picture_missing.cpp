// A build without OpenGL has no pictures in space, and says so.
#include "asperity/sheet/part_picture.h"

namespace asperity {

PartPictures part_pictures(std::span<const Outcome *const>, int, int) {
  return {.of = {},
          .exaggeration = 1,
          .from = {},
          .fault = "this program was built without OpenGL (-DASPERITY_VIEWER=ON brings it)"};
}

} // namespace asperity
