// Where the stock's side is crossed along the front half of a circle, eight crossings at a time.
#pragma once

#include "asperity/cut/stock.h"
#include "turn.h"

#include <vector>

namespace asperity {

inline constexpr double kSkin_mm =
    1e-3; ///< thinner than this the linear reading of the stock cannot tell contact

/// Angles are phi of force.h, marks those of turn.h: 0 to kMarksPerPi.
struct FrontCircle {
  std::size_t layer = 0;
  Vec2 centre_mm{0.0};
  double radius_mm = 0;
};

/// The marks of the front half in the part frame, seen from the centre in radii; then the last one again.
Stock::Places front_marks(Vec2 feed);

/// Between a mark and the next one, with the depths there (of opposite sign), less the skin.
struct Crossing {
  FrontCircle circle;
  int mark = 0;
  double depth_mm = 0, next_depth_mm = 0;
};

/// The angles of the crossings, by false position. Into `angles`, whose memory is kept.
void find_crossings(const Stock &stock, const Stock::Places &marks, const std::vector<Crossing> &crossings,
                    std::vector<Turn> &angles);

} // namespace asperity
