// A long path is swept a part after the other, so that memory does not grow with it.
#pragma once

#include <cstddef>

namespace asperity {

/// Pieces of a path that are swept together.
struct PathPortion {
  std::size_t begin = 0, end = 0;
  std::size_t pieces = 0; ///< of the whole path

  /// How far the whole has come when this share of the portion is done.
  double done(double share) const {
    return pieces == 0 ? share : (double(begin) + share * double(end - begin)) / double(pieces);
  }
};

} // namespace asperity
