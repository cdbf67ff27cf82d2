// Cuts swept pieces into parts and measures them.
#include "pass_part.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kMostSweep_rad = 1.0;
constexpr double kStanding_mm = 1e-6;
constexpr double kCorner_rad = 0.7853981633974483; // 45 degrees: beyond, the far legs are passes of their own

BentPiece portion_of(const BentPiece &piece, double u0, double u1) {
  BentPiece part = piece;
  part.curve = piece.curve.portion(u0, u1);
  part.begin = u0 == 0 ? piece.begin : between(piece.begin, piece.end, u0);
  part.end = u1 == 1 ? piece.end : between(piece.begin, piece.end, u1);
  part.joins_previous = u0 > 0 || piece.joins_previous;
  return part;
}

double plan_turn_rad(const Curve &curve) {
  if (!curve.is_plan_arc())
    return 0.0;
  return cross(plan(curve.axis_x), plan(curve.axis_y)) < 0 ? -curve.sweep_rad : curve.sweep_rad;
}

Vec2 heading(const Curve &curve, double u) {
  const Vec2 v = plan(curve.velocity(u));
  const double length = glm::length(v);
  return length > 0 ? v / length : Vec2(0.0);
}

void measure(PassPart &part) {
  const Curve &curve = part.piece.curve;
  const Vec3 begin = curve.point(0), end = curve.point(1);
  const double chord_mm = glm::distance(plan(begin), plan(end));
  part.plan_length_mm = curve.is_line()       ? chord_mm
                        : curve.is_plan_arc() ? std::abs(curve.radius_mm * curve.sweep_rad)
                                              : std::max(chord_mm, 0.5 * curve.length_mm());
  if (part.plan_length_mm < kStanding_mm) {
    part.plan_length_mm = 0;
  } else {
    part.heading_in = heading(curve, 0);
    part.heading_out = heading(curve, 1);
    part.turn_rad = plan_turn_rad(curve);
  }
  // An arc's bulge beyond its ends is at most its sagitta, in plan as in height.
  const double bulge = curve.is_line() ? 0.0 : curve.radius_mm * (1.0 - std::cos(curve.sweep_rad / 2.0));
  const double slack = bulge + largest_bend_mm(part.piece);
  part.low = glm::min(plan(begin), plan(end)) - Vec2(slack);
  part.high = glm::max(plan(begin), plan(end)) + Vec2(slack);
  const double rise = curve.is_plan_arc() ? 0.0 : bulge;
  part.z_low_mm = std::min(part.tip_z_mm(0), part.tip_z_mm(1)) - rise;
  part.z_high_mm = std::max(part.tip_z_mm(0), part.tip_z_mm(1)) + rise;
}

bool runs_on(const PassPart &before, const PassPart &after) {
  if (!after.piece.joins_previous || before.piece.cutter != after.piece.cutter || before.stands() ||
      after.stands())
    return false;
  return glm::dot(before.heading_out, after.heading_in) > std::cos(kCorner_rad);
}

/// A cheap box round the whole piece, never smaller than that of its parts.
bool may_reach(const SweptPath &path, const SweptPiece &piece, const Region &region, double reach_mm) {
  const SweptCutter &cutter = path.cutters[piece.cutter];
  const PackedOffset &begin = path.begin_offset(piece), &end = path.end_offset(piece);
  // An arc stays within its diameter of its ends, and the boxes of its parts stand out by half a radius at
  // most.
  const double bulge = piece.is_line() ? 0.0 : 2.5 * path.arcs[piece.arc].radius_mm;
  const double reach =
      cutter.profile.radius_mm() + reach_mm + std::max(begin.plan_bound_mm(), end.plan_bound_mm()) + bulge;
  const double rise = std::max(std::abs(begin.axial_mm()), std::abs(end.axial_mm())) +
                      (piece.is_line() || path.arcs[piece.arc].is_plan_arc() ? 0.0 : bulge);
  const Vec3 low = glm::min(piece.begin, piece.end), high = glm::max(piece.begin, piece.end);
  return high.x + reach >= region.low.x && low.x - reach <= region.high.x && high.y + reach >= region.low.y &&
         low.y - reach <= region.high.y && low.z - rise <= region.z_high_mm &&
         high.z + rise + cutter.flute_length_mm >= region.z_low_mm;
}

void add_parts(const BentPiece &piece, const PathPiece &timed, bool follows, LargeArray<PassPart> &parts) {
  const int count =
      std::max(1, static_cast<int>(std::ceil(std::abs(piece.curve.sweep_rad) / kMostSweep_rad)));
  for (int i = 0; i < count; ++i) {
    PassPart part;
    part.piece = portion_of(piece, double(i) / count, double(i + 1) / count);
    part.timed = &timed;
    part.stretch = stretch_of(part.piece.curve, timed.curve);
    measure(part);
    part.begins_pass = !(follows || i > 0) || !runs_on(parts.back(), part);
    parts.push_back(part);
  }
}

} // namespace

LargeArray<PassPart> pass_parts(const TimedPath &path, const SweptPath &swept, const Region &region,
                                double reach_mm) {
  LargeArray<PassPart> parts;
  bool follows = false; // the piece before has left its parts
  for (const SweptPiece &piece : swept.pieces) {
    const bool reaches = may_reach(swept, piece, region, reach_mm);
    if (reaches)
      add_parts(swept.bent(piece), path.pieces[piece.owner], follows, parts);
    follows = reaches;
  }
  return parts;
}

double largest_bend_mm(const BentPiece &piece) {
  return std::max(longest_mm(piece.begin), longest_mm(piece.end));
}

Vec2 bend_mm(const BentPiece &piece, const SweptCutter &cutter, double u, double height_mm, bool right) {
  const auto &begin = right ? piece.begin.right : piece.begin.left;
  const auto &end = right ? piece.end.right : piece.end.left;
  const auto at = [&](std::size_t i) { return begin[i] + u * (end[i] - begin[i]); };
  const auto &nodes = cutter.node_height_mm;
  if (height_mm <= nodes.front())
    return at(0);
  for (std::size_t i = 1; i < kBendNodes; ++i)
    if (height_mm < nodes[i])
      return at(i - 1) + (height_mm - nodes[i - 1]) / (nodes[i] - nodes[i - 1]) * (at(i) - at(i - 1));
  return at(kBendNodes - 1);
}

} // namespace asperity
