// Names the owner of a cell: the stroke's, or, on a merged run, that of the member under the contact.
#include "asperity/base/wide_vectors.h"
#include "floor_contact.h"
#include "floor_path.h"

#include "asperity/chart/wall_chart.h"

#include <algorithm>

namespace asperity {
namespace {

constexpr std::size_t kSide = FloorBlock::kSide, kCells = FloorBlock::kCells;
constexpr BlockCells kPlaces;
using Owners = std::array<std::uint32_t, kCells>;

/// Contacts of a run over a block, from the place abreast of the block's middle, before they are held between
/// the run's ends.
struct Places {
  alignas(32) std::array<float, kCells> place;
  float least, greatest;

  void find_range() {
    float low = place[0], high = place[0];
    // Plain comparisons keep the search a vector one.
#pragma omp simd reduction(min : low) reduction(max : high)
    for (std::size_t k = 0; k < kCells; ++k) {
      low = place[k] < low ? place[k] : low;
      high = place[k] > high ? place[k] : high;
    }
    least = low;
    greatest = high;
  }
};

/// A contact this near a joint belongs to the earlier member: more than floats lose over a block [mm].
constexpr double kAtJoint_mm = 1e-7;

/// A run as seen from a block, and the block's cells.
struct RunOverBlock {
  double along, across;           ///< of the block's middle
  double step_along, step_across; ///< per column; a row is the same turned by a right angle

  RunOverBlock(const FloorStroke &stroke, Vec2 middle, double spacing)
      : along(glm::dot(middle - stroke.low, stroke.low_along)),
        across(cross(stroke.low_along, middle - stroke.low)), step_along(spacing * stroke.low_along.x),
        step_across(spacing * stroke.low_along.y) {}
};

/// Ball: s - lag sqrt(R^2 - q^2).
ASPERITY_WIDE
void ball_places(const RunOverBlock &run, double radius, double slope, Places &places) {
  const auto q0 = static_cast<float>(run.across), radius2 = static_cast<float>(radius * radius);
  const auto lag = static_cast<float>(slope / std::sqrt(1.0 + slope * slope));
  const auto sx = static_cast<float>(run.step_along), sy = static_cast<float>(run.step_across);
  float *__restrict place = places.place.data();
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const float x = kPlaces.x[k], y = kPlaces.y[k];
    const float q = q0 + (sx * y - sy * x), w2 = radius2 - q * q;
    place[k] = (sx * x + sy * y) - lag * std::sqrt(w2 > 0.0f ? w2 : 0.0f);
  }
  places.find_range();
}

/// The same for any cutter with a corner arc, from the first place at which a level flat lies on the cell.
ASPERITY_WIDE
void round_places(const RunOverBlock &run, const Flank &flank, double slope, Places &places) {
  const double flat2 = flank.flat > 0.0 ? flank.flat * flank.flat : 0.0;
  const RoundContact contact(flank.corner, flank.flat, slope);
  float *__restrict place = places.place.data();
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k) {
    const auto x = double(kPlaces.x[k]), y = double(kPlaces.y[k]);
    const double q = std::abs(run.across + (run.step_along * y - run.step_across * x)),
                 under2 = flat2 - q * q;
    const double under = std::sqrt(under2 > 0.0 ? under2 : 0.0), shift = contact.shift(q);
    place[k] =
        static_cast<float>((run.step_along * x + run.step_across * y) - (shift > under ? shift : under));
  }
  places.find_range();
}

/// Gives the cells whose place lies at or beyond `joint` the next owner.
ASPERITY_WIDE
void pass_joint(const Places &places, float joint, std::uint32_t next, Owners &owner) {
  const float *__restrict place = places.place.data();
  std::uint32_t *__restrict who = owner.data();
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k)
    who[k] = place[k] >= joint ? next : who[k];
}

ASPERITY_WIDE
void give(const FloorBlock &block, std::int32_t winner, const Owners &from, Owners &owner) {
  const std::int32_t *__restrict winners = block.winner.data();
  const std::uint32_t *__restrict source = from.data();
  std::uint32_t *__restrict who = owner.data();
#pragma omp simd
  for (std::size_t k = 0; k < kCells; ++k)
    who[k] = winners[k] == winner ? source[k] : who[k];
}

/// The least winner beyond `latest`; `none` if there is no other.
ASPERITY_WIDE
std::int32_t next_winner(const FloorBlock &block, std::int32_t latest, std::int32_t none) {
  const std::int32_t *__restrict winners = block.winner.data();
  std::int32_t next = none;
#pragma omp simd reduction(min : next)
  for (std::size_t k = 0; k < kCells; ++k) {
    const std::int32_t other = winners[k] > latest ? winners[k] : none;
    next = other < next ? other : next;
  }
  return next;
}

/// Members of one run, by place from its low end.
class Members {
public:
  Members(const FloorStroke &stroke, const FloorRuns &runs)
      : joint_(runs.joint_mm.data() + stroke.run_first), owner_(runs.owner.data() + stroke.run_first),
        last_(stroke.run_count - 1), per_mm_(double(stroke.run_count) / stroke.length_mm),
        // The smallest owner among equals: nearer the low end when owners rise with the stroke.
        aside_(stroke.descends ? kAtJoint_mm : -kAtJoint_mm) {}

  void find_owners(const Places &places, double middle, Owners &owner) const {
    std::size_t at = joints_before(joint_, last_, per_mm_, middle + double(places.least) + aside_);
    owner.fill(owner_[at]);
    for (; at < last_; ++at) {
      const auto joint = static_cast<float>(joint_[at] - aside_ - middle);
      if (joint > places.greatest)
        return;
      pass_joint(places, joint, owner_[at + 1], owner);
    }
  }

private:
  const double *joint_;
  const std::uint32_t *owner_;
  std::size_t last_;
  double per_mm_, aside_;
};

void find_places(const FloorStroke &stroke, const Flank &flank, Vec2 middle, double spacing, Places &places) {
  const RunOverBlock run(stroke, middle, spacing);
  if (flank.is_ball() || (stroke.slope == 0.0 && flank.flat <= 0.0))
    return ball_places(run, flank.reach, stroke.slope, places);
  if (flank.is_round())
    return round_places(run, flank, stroke.slope, places);
  for (std::size_t k = 0; k < kCells; ++k) {
    const Vec2 p = middle + spacing * Vec2(kPlaces.x[k], kPlaces.y[k]);
    places.place[k] = static_cast<float>(first_contact_mm(stroke, flank, p) - run.along);
  }
  places.find_range();
}

} // namespace

void FloorPath::find_run_owners(std::int32_t index, Vec2 middle, double spacing_mm, Owners &owner) const {
  const FloorStroke &stroke = strokes[std::size_t(index)];
  Places places;
  find_places(stroke, flanks[stroke.cutter], middle, spacing_mm, places);
  Members(stroke, runs).find_owners(places, glm::dot(middle - stroke.low, stroke.low_along), owner);
}

void FloorPath::find_owners(const FloorBlock &block, Vec2 middle, double spacing_mm, Owners &owner) const {
  if (runs.owner.empty()) {
    for (std::size_t k = 0; k < kCells; ++k)
      owner[k] = stroke_owner[std::size_t(block.winner[k])];
    return;
  }
  owner.fill(kNobody);
  Owners own;
  for (std::int32_t winner = -1; (winner = next_winner(block, winner, none())) != none();) {
    if (strokes[std::size_t(winner)].run_count > 0)
      find_run_owners(winner, middle, spacing_mm, own);
    else
      own.fill(stroke_owner[std::size_t(winner)]);
    give(block, winner, own, owner);
  }
}

} // namespace asperity
