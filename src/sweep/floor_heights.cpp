// Chooses the closed form of a stroke and takes it over a block.
#include "floor_heights.h"

#include "asperity/base/wide_vectors.h"
#include "floor_contact.h"

namespace asperity {
namespace {

using Heights = std::array<float, FloorBlock::kCells>;

template <class Contact>
inline __attribute__((always_inline)) void fill(const Contact &contact, const BlockPlace &place,
                                                Heights &heights) {
  constexpr double kMiddle = 0.5 * double(FloorBlock::kSide - 1);
  const double spacing = place.spacing_mm, gx = place.plane.gradient.x;
  for (std::size_t j = 0; j < FloorBlock::kSide; ++j) {
    const double y = place.middle.y + spacing * (double(j) - kMiddle);
    const double plane = place.plane.height_mm({place.middle.x, y});
#pragma omp simd
    for (std::size_t i = 0; i < FloorBlock::kSide; ++i) {
      const double x = spacing * (double(int(i)) - kMiddle);
      heights[j * FloorBlock::kSide + i] = float((contact(place.middle.x + x, y) - plane) - gx * x);
    }
  }
}

ASPERITY_WIDE
void ball_heights(const BallOnLine &contact, const BlockPlace &place, Heights &heights) {
  fill(contact, place, heights);
}

ASPERITY_WIDE
void grown_heights(const RoundOnLine<GrownContact> &contact, const BlockPlace &place, Heights &heights) {
  fill(contact, place, heights);
}

ASPERITY_WIDE
void round_heights(const RoundOnLine<RoundContact> &contact, const BlockPlace &place, Heights &heights) {
  fill(contact, place, heights);
}

ASPERITY_WIDE
void disc_heights(const DiscOnLine &contact, const BlockPlace &place, Heights &heights) {
  fill(contact, place, heights);
}

ASPERITY_WIDE
void helix_heights(const DiscOnHelix &contact, const BlockPlace &place, Heights &heights) {
  fill(contact, place, heights);
}

} // namespace

void exact_heights(const FloorStroke &stroke, const Flank &flank, const BlockPlace &place, Heights &heights) {
  if (stroke.is_arc && stroke.slope == 0.0)
    fill(AnyOnLevelArc(stroke, flank), place, heights);
  else if (stroke.is_arc && flank.is_disc())
    helix_heights(DiscOnHelix(stroke, flank), place, heights);
  else if (stroke.is_arc)
    fill(AnyOnHelix(stroke, flank), place, heights);
  else if (flank.is_ball())
    ball_heights(BallOnLine(stroke, flank), place, heights);
  else if (flank.is_nearly_ball)
    grown_heights(RoundOnLine<GrownContact>(stroke, flank), place, heights);
  else if (flank.is_round())
    round_heights(RoundOnLine<RoundContact>(stroke, flank), place, heights);
  else if (flank.is_disc())
    disc_heights(DiscOnLine(stroke, flank), place, heights);
  else
    fill(AnyOnLine(stroke, flank), place, heights);
}

} // namespace asperity
