// `asperity picture` in a program built without OpenGL: says so.
#include "command_picture.h"

#include <cstdio>

namespace asperity {

ExitStatus command_picture(const PictureRequest &) {
  std::fputs(
      "asperity: error: this asperity was built without OpenGL, so it cannot draw the part. Build it with "
      "-DASPERITY_VIEWER=ON (Debian 12: libepoxy-dev, libegl-dev, libgl-dev); `asperity predict --out DIR` "
      "draws flat pictures without it.\n",
      stderr);
  return ExitStatus::wrong_input;
}

} // namespace asperity
