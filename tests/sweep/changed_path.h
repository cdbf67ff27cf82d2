// A path with every piece changed.
#pragma once

#include "asperity/sweep/swept_path.h"

namespace asperity {

template <class Change> SweptPath changed(const SweptPath &path, const Change &change) {
  SweptPath result;
  result.cutters = path.cutters;
  for (const SweptPiece &piece : path.pieces) {
    BentPiece bent = path.bent(piece);
    change(bent);
    result.add(bent);
  }
  return result;
}

} // namespace asperity
