// Brute force straight from the definition of the envelope; shares no code with the kernel.
#include "wall_reference.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity::wall_test {

namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();

Vec2 read_nodes(const BendNodes &node, const std::array<double, kBendNodes> &height, double h) {
  if (h <= height.front())
    return node.front();
  for (std::size_t i = 1; i < kBendNodes; ++i)
    if (h <= height[i])
      return node[i - 1] + (h - height[i - 1]) / (height[i] - height[i - 1]) * (node[i] - node[i - 1]);
  return node.back();
}

/// e of the disc at u, or kNone: the defining formula, line by line.
double e_at(const BentPiece &piece, const SweptCutter &cutter, Vec2 foot, Vec2 normal, double z, double u) {
  const Vec3 tip = piece.curve.point(u), velocity = piece.curve.velocity(u);
  const double h = z - (tip.z + (1.0 - u) * piece.begin.axial_mm + u * piece.end.axial_mm);
  if (h < 0.0 || h > cutter.flute_length_mm)
    return kNone;
  const double r = cutter.profile.radius_at(h);
  const bool is_left = plan(velocity) == Vec2(0.0) || cross(plan(velocity), -normal) > 0.0;
  const Vec2 begin = read_nodes(is_left ? piece.begin.left : piece.begin.right, cutter.node_height_mm, h);
  const Vec2 end = read_nodes(is_left ? piece.end.left : piece.end.right, cutter.node_height_mm, h);
  const Vec2 v = plan(tip) + (1.0 - u) * begin + u * end - foot;
  const double a = glm::dot(v, normal), b = glm::dot(v, left_of(normal));
  if (r < 0.0 || std::abs(b) > r)
    return kNone;
  const double w = std::sqrt((r - b) * (r + b));
  return a + w > 0.0 ? a - w : kNone;
}

/// The point nearest to `out` that still counts, between a counting and a not counting u.
template <class F> double last_counting(const F &f, double in, double out) {
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (in + out);
    (f(middle) < kNone ? in : out) = middle;
  }
  return in;
}

template <class F> double golden(const F &f, double low, double high) {
  const double g = 0.5 * (std::sqrt(5.0) - 1.0);
  double left = high - g * (high - low), right = low + g * (high - low), at_left = f(left),
         at_right = f(right);
  double best = std::min({f(low), f(high), at_left, at_right});
  for (int i = 0; i < 60; ++i) {
    if (at_left < at_right) {
      high = right;
      right = left;
      at_right = at_left;
      at_left = f(left = high - g * (high - low));
    } else {
      low = left;
      left = right;
      at_left = at_right;
      at_right = f(right = low + g * (high - low));
    }
    best = std::min({best, at_left, at_right});
  }
  return best;
}

double piece_e_mm(const BentPiece &piece, const SweptCutter &cutter, Vec2 foot, Vec2 normal, double z) {
  constexpr double kStep_mm = 0.04;
  const auto f = [&](double u) { return e_at(piece, cutter, foot, normal, z, u); };
  const int steps = static_cast<int>(std::clamp(piece.curve.length_mm() / kStep_mm, 40.0, 5000.0));
  double best = kNone, before = kNone, here = f(0.0);
  for (int i = 0; i <= steps; ++i) {
    const double u = double(i) / steps, previous = std::max(0.0, double(i - 1) / steps);
    const double next = std::min(1.0, double(i + 1) / steps), after = i < steps ? f(next) : kNone;
    if (here < kNone && here <= before && here <= after) {
      const double low = before == kNone ? last_counting(f, u, previous) : previous;
      const double high = after == kNone ? last_counting(f, u, next) : next;
      best = std::min({best, here, golden(f, low, u), golden(f, u, high)});
    }
    // A lower value may hide between a counting and a not counting step.
    if (here < kNone && before == kNone && i > 0)
      best = std::min(best, f(last_counting(f, u, previous)));
    if (here < kNone && after == kNone && i < steps)
      best = std::min(best, f(last_counting(f, u, next)));
    before = here;
    here = after;
  }
  return best;
}

} // namespace

double reference_e_mm(const WallChart &chart, const SweptPath &path, std::size_t column, std::size_t row) {
  double best = kNone;
  for (const SweptPiece &piece : path.pieces) {
    const SweptCutter &cutter = path.cutters[piece.cutter];
    const BentPiece bent = path.bent(piece);
    const double most = bent.curve.length_mm() + cutter.profile.radius_mm() + chart.band_mm + 1.0;
    if (glm::length(plan(piece.begin) - chart.foot[column]) > most)
      continue;
    best =
        std::min(best, piece_e_mm(bent, cutter, chart.foot[column], chart.normal[column], chart.z_mm[row]));
  }
  return std::max(best, -chart.band_mm);
}

} // namespace asperity::wall_test
