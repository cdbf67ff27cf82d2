// Names the owner of a cell: the stroke's, or, on a merged run, that of the member under the contact.
#include "floor_contact.h"
#include "floor_path.h"
#include "vector_clones.h"

#include "asperity/chart/wall_chart.h"

#include <algorithm>

namespace asperity {
namespace {

constexpr std::size_t kSide = FloorBlock::kSide;
using Places = std::array<double, FloorBlock::kCells>;

/// A contact this near a joint belongs to the earlier member [mm].
constexpr double kAtJoint_mm = 1e-9;

/// Contact of a ball on a line over a block: s - lag sqrt(R^2 - q^2), before it is held between the ends.
ASPERITY_VECTOR_CLONES
void ball_places(const FloorStroke &stroke, double radius, Vec2 middle, double spacing, Places &places) {
  const Vec2 d = middle - stroke.low, t = stroke.low_along;
  const double s0 = glm::dot(d, t), q0 = cross(t, d),
               lag = stroke.slope / std::sqrt(1.0 + stroke.slope * stroke.slope);
  const double sx = spacing * t.x, sy = spacing * t.y;
  for (std::size_t j = 0; j < kSide; ++j)
    for (std::size_t i = 0; i < kSide; ++i) {
      const double x = double(int(i)) - 3.5, y = double(int(j)) - 3.5;
      const double q = q0 + sx * y - sy * x, w2 = radius * radius - q * q;
      places[j * kSide + i] = s0 + sx * x + sy * y - lag * std::sqrt(w2 > 0.0 ? w2 : 0.0);
    }
}

/// The same for any cutter with a corner arc, from the first place at which a level flat lies on the cell.
ASPERITY_VECTOR_CLONES
void round_places(const FloorStroke &stroke, const Flank &flank, Vec2 middle, double spacing,
                  Places &places) {
  const Vec2 d = middle - stroke.low, t = stroke.low_along;
  const double s0 = glm::dot(d, t), q0 = cross(t, d),
               flat2 = flank.flat > 0.0 ? flank.flat * flank.flat : 0.0;
  const double sx = spacing * t.x, sy = spacing * t.y;
  const RoundContact contact(flank.corner, flank.flat, stroke.slope);
  for (std::size_t j = 0; j < kSide; ++j)
#pragma omp simd
    for (std::size_t i = 0; i < kSide; ++i) {
      const double x = double(int(i)) - 3.5, y = double(int(j)) - 3.5;
      const double q = std::abs(q0 + sx * y - sy * x), under2 = flat2 - q * q;
      const double under = std::sqrt(under2 > 0.0 ? under2 : 0.0), shift = contact.shift(q);
      places[j * kSide + i] = s0 + sx * x + sy * y - (shift > under ? shift : under);
    }
}

/// Looks members of one run up; neighbouring cells have neighbouring members.
class Members {
public:
  Members(const FloorStroke &stroke, const FloorRuns &runs)
      : joint_(runs.joint_mm.data() + stroke.run_first), owner_(runs.owner.data() + stroke.run_first),
        last_(static_cast<std::ptrdiff_t>(stroke.run_count) - 1),
        aside_(stroke.descends ? kAtJoint_mm : -kAtJoint_mm) {}

  std::uint32_t owner_at(double place_mm) {
    // The smallest owner among equals: nearer the low end when owners rise with the stroke.
    const double place = place_mm + aside_;
    constexpr std::ptrdiff_t kNear = 8;
    if (at_ < 0 || place < joint_[std::max<std::ptrdiff_t>(0, at_ - kNear)] ||
        place > joint_[std::min(last_, at_ + kNear)])
      at_ = std::min(last_, std::upper_bound(joint_, joint_ + last_ + 1, place) - joint_);
    while (at_ < last_ && place >= joint_[at_])
      ++at_;
    while (at_ > 0 && place < joint_[at_ - 1])
      --at_;
    return owner_[at_];
  }

private:
  const double *joint_;
  const std::uint32_t *owner_;
  std::ptrdiff_t last_, at_ = -1;
  double aside_;
};

} // namespace

void FloorPath::find_run_owners(std::int32_t index, const FloorBlock &block, Vec2 middle, double spacing_mm,
                                std::array<std::uint32_t, FloorBlock::kCells> &owner) const {
  const FloorStroke &stroke = strokes[std::size_t(index)];
  const Flank &flank = flanks[stroke.cutter];
  Places places;
  const bool is_ball = flank.is_ball() || (stroke.slope == 0.0 && flank.flat <= 0.0);
  if (is_ball)
    ball_places(stroke, flank.reach, middle, spacing_mm, places);
  else if (flank.is_round())
    round_places(stroke, flank, middle, spacing_mm, places);
  Members members(stroke, runs);
  for (std::size_t k = 0; k < FloorBlock::kCells; ++k) {
    if (block.winner[k] != index)
      continue;
    const Vec2 p = middle + spacing_mm * Vec2(double(k % kSide) - 3.5, double(k / kSide) - 3.5);
    owner[k] = members.owner_at(is_ball || flank.is_round() ? places[k] : first_contact_mm(stroke, flank, p));
  }
}

void FloorPath::find_owners(const FloorBlock &block, Vec2 middle, double spacing_mm,
                            std::array<std::uint32_t, FloorBlock::kCells> &owner) const {
  for (std::size_t k = 0; k < FloorBlock::kCells; ++k)
    owner[k] = stroke_owner[std::size_t(block.winner[k])];
  if (runs.owner.empty())
    return;
  std::int32_t found[FloorBlock::kCells], latest = none();
  std::size_t count = 0;
  for (std::size_t k = 0; k < FloorBlock::kCells; ++k) {
    const std::int32_t winner = block.winner[k];
    if (winner == latest || winner == none()) // neighbours mostly have the same
      continue;
    latest = winner;
    if (std::find(found, found + count, winner) == found + count)
      found[count++] = winner;
  }
  for (std::size_t r = 0; r < count; ++r)
    if (strokes[std::size_t(found[r])].run_count > 0)
      find_run_owners(found[r], block, middle, spacing_mm, owner);
}

} // namespace asperity
