// Bounds a piece by a disc about its middle and by its heights.
#include "sweep_wall_pieces.h"

#include "asperity/base/parallel.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr double kRounding_mm = 1e-6;

/// Where a piece's tip comes to, bending included.
struct PieceBounds {
  Vec2 middle_mm{0.0};
  double half_length_mm = 0; ///< all of its plan view is that near to the middle
  double z_low_mm = 0, z_high_mm = 0;
};

PieceBounds bounds_of(const SweptPath &path, const SweptPiece &piece) {
  const double axial_a = path.begin_offset(piece).axial_mm(), axial_b = path.end_offset(piece).axial_mm();
  const double axial_low_mm = std::min(axial_a, axial_b), axial_high_mm = std::max(axial_a, axial_b);
  if (piece.is_line())
    return {0.5 * plan(piece.begin + piece.end), 0.5 * glm::distance(plan(piece.begin), plan(piece.end)),
            std::min(piece.begin.z, piece.end.z) + axial_low_mm,
            std::max(piece.begin.z, piece.end.z) + axial_high_mm};
  const Curve curve = path.curve(piece);
  const Vec3 middle = curve.point(0.5);
  const double half_mm = 0.5 * curve.length_mm();
  return {plan(middle), half_mm, middle.z - half_mm + axial_low_mm, middle.z + half_mm + axial_high_mm};
}

bool may_cut(const WallSurroundings &wall, const SweptPath &path, const SweptPiece &piece,
             const WallCutter &cutter) {
  const PieceBounds bounds = bounds_of(path, piece);
  if (bounds.z_low_mm + cutter.lowest_mm > wall.z_high_mm + kRounding_mm ||
      bounds.z_high_mm + cutter.highest_mm < wall.z_low_mm - kRounding_mm)
    return false;
  const double bent_mm =
      std::max(path.begin_offset(piece).plan_bound_mm(), path.end_offset(piece).plan_bound_mm());
  const double reach_mm = cutter.profile.radius_mm() + std::max(0.0, wall.e_most_mm) + bent_mm +
                          bounds.half_length_mm + kRounding_mm;
  return std::any_of(wall.elements.begin(), wall.elements.end(), [&](const WallElement &element) {
    return is_near(element, bounds.middle_mm, reach_mm);
  });
}

} // namespace

bool is_near(const WallElement &element, Vec2 middle_mm, double reach_mm) {
  if (middle_mm.x < element.low.x - reach_mm || middle_mm.x > element.high.x + reach_mm ||
      middle_mm.y < element.low.y - reach_mm || middle_mm.y > element.high.y + reach_mm)
    return false;
  return element.shape.distance_mm(middle_mm) <= reach_mm;
}

std::vector<std::uint32_t> pieces_about(const WallSurroundings &wall, const SweptPath &path,
                                        const PathPortion &portion, const std::vector<WallCutter> &cutters,
                                        int threads) {
  constexpr std::size_t kBlock = 512;
  const std::size_t count = portion.end - portion.begin;
  std::vector<char> cuts(count + 2, 0); // with nobody before the first and after the last
  for_each_band(count, kBlock, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      const SweptPiece &piece = path.pieces[portion.begin + i];
      cuts[i + 1] = may_cut(wall, path, piece, cutters[piece.cutter]);
    }
  });
  std::vector<std::uint32_t> pieces;
  for (std::size_t i = 0; i < count; ++i)
    if (cuts[i] || cuts[i + 1] || cuts[i + 2])
      pieces.push_back(static_cast<std::uint32_t>(portion.begin + i));
  return pieces;
}

} // namespace asperity
