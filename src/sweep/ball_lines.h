// Straight strokes of ball cutters, also grown or worn a little, about one tile of floor, laid out so that
// their bounds over a square are taken many at a time.
#pragma once

#include "floor_flank.h"
#include "floor_stroke.h"

#include <array>
#include <cstdint>
#include <vector>

namespace asperity {

/// Heights are kept above this plane.
struct LeaningPlane {
  Vec2 middle{0.0};
  double z_mm = 0.0;
  Vec2 gradient{0.0};
  double height_mm(Vec2 p) const { return z_mm + glm::dot(gradient, p - middle); }
};

/// A square of cells; `half` reaches to the middles of the outermost ones. Places are from the tile's middle.
struct CellSquare {
  float x, y, half;
};

class BallLines {
public:
  void clear() {
    count_ = 0;
    has_slack_ = false;
  }
  std::size_t size() const { return count_; }
  std::int32_t stroke(std::size_t i) const { return stroke_[i]; }

  /// Above a level plane.
  void add(const FloorStroke &stroke, const Flank &ball, const LeaningPlane &level, std::int32_t index);
  void lean(Vec2 gradient);

  /// Takes the bounds of every stroke over the square.
  void measure(const CellSquare &square);
  /// Nothing this stroke leaves within the square is lower.
  float lower(std::size_t i) const { return lower_[i]; }
  /// This stroke, or a neighbour it leaves cells to, leaves nothing higher within the square.
  float upper(std::size_t i) const { return upper_[i]; }
  float least_upper() const;
  /// Gradient at the tile's middle of what the stroke that certainly leaves least leaves there.
  Vec2 likely_gradient() const;

  /// Becomes those of `all` that may be lowest somewhere in the square `all` was measured over, and not above
  /// the ceiling.
  void keep_lowest(const BallLines &all, float ceiling);

  enum Field : std::size_t {
    kAcross, ///< place of the tile's middle: left of the line
    kAlong,  ///< and along it, from the low end
    kTx,
    kTy,
    kBase,    ///< height over the line above the plane, abreast of the tile's middle
    kRise,    ///< its rise along the line
    kFall,    ///< and its fall to the left: the plane's
    kLowest,  ///< place left of the line where the ball lies lowest above the plane
    kLength,  ///< of the line
    kClipLow, ///< how far beyond its ends cells belong to it
    kClipHigh,
    kSlope,    ///< steepness of the plane along the line
    kTipLow,   ///< tip above the plane at the low end
    kTipLeast, ///< and at the lower end above the plane
    kStretch,  ///< sqrt(1 + slope^2)
    kLagReach, ///< farthest that a contact lags behind its cell
    kLowLag,   ///< lag of the contacts that belong to it, in half chords of the ball
    kRadius,
    // Only where there is slack:
    kFlat,  ///< of a ball grown (> 0) or worn (< 0)
    kSlack, ///< what flats and hulls leave uncertain
    kFields
  };

private:
  void make_room(std::size_t count);

  std::array<std::vector<float>, kFields> field_;
  std::vector<std::int32_t> stroke_;
  std::vector<float> lower_, upper_;
  std::vector<std::uint32_t> kept_;
  std::size_t count_ = 0;
  float lean_ = 0.0f; ///< length of the gradient
  bool has_slack_ = false;
};

} // namespace asperity
