// Turns a program's moves into pieces of path and rounds the corners that blending allows.
#include "layout.h"

#include "rounding.h"

#include "asperity/base/units.h"

#include <algorithm>

namespace asperity {

namespace {

// Shorter than any controller can command or any surface can show; only rounding errors are this small.
constexpr double kNoLength_mm = 1e-9;
// A move that begins this far from the end of the one before was not reached by cutting.
constexpr double kGap_mm = 1e-6;
// The reader asks for a feed above zero; this only keeps the time finite.
constexpr double kLeastFeed_mm_per_s = 1e-6;

PathPiece piece_of(const Move &move, std::uint32_t index, const Machine &machine, Vec3 shift_mm) {
  PathPiece piece;
  piece.curve = move.curve.moved_by(shift_mm);
  piece.length_mm = move.kind == MoveKind::dwell ? 0.0 : piece.curve.length_mm();
  const double feed = move.kind == MoveKind::rapid ? machine.rapid_mm_per_min : move.feed_mm_per_min;
  piece.feed_mm_per_s = std::max(mm_per_s_from_mm_per_min(feed), kLeastFeed_mm_per_s);
  piece.spindle_rpm = move.spindle_rpm;
  piece.line = move.line;
  piece.move = index;
  piece.tool = move.tool;
  piece.kind = move.kind;
  piece.turn = move.turn;
  if (move.kind == MoveKind::dwell) {
    piece.feed_mm_per_s = 0.0;
    piece.duration_s = move.dwell_s;
  }
  return piece;
}

/// What G64 allows at either end of the move; 0 = the corner stays sharp.
double blend_tolerance_mm(const Move &move, const Machine &machine) {
  if (move.control != PathControl::blend || move.kind != MoveKind::feed || !move.curve.is_line())
    return 0.0;
  return move.blend_tolerance_mm >= 0.0 ? move.blend_tolerance_mm : machine.blend_tolerance_mm;
}

/// Rounds the corner between the last piece laid and `next` if both allow it; trims both and puts the arc
/// between.
void round_corner(LargeArray<PathPiece> &pieces, PathPiece &next, const Program &program,
                  const Machine &machine) {
  PathPiece &last = pieces.back();
  const Move &first_move = program.moves[last.move];
  const Move &second_move = program.moves[next.move];
  const double tolerance =
      std::min(blend_tolerance_mm(first_move, machine), blend_tolerance_mm(second_move, machine));
  if (tolerance <= 0.0 || must_stop_between(last, next, program))
    return;

  // Each corner may take half of its legs as programmed, so that the corners at both ends of a leg always
  // have room.
  const double longest_trim = 0.5 * std::min(first_move.curve.length_mm(), next.length_mm);
  const auto arc = rounding_arc(first_move.curve.moved_by(next.curve.begin - first_move.curve.end),
                                next.curve, tolerance, longest_trim);
  if (!arc)
    return;
  PathPiece rounding = next;
  rounding.curve = *arc;
  rounding.length_mm = arc->length_mm();

  // A leg used up by the corners at both its ends leaves no piece of its own.
  const Vec3 way = next.curve.begin - last.curve.begin;
  const double left_mm = glm::dot(arc->begin - last.curve.begin, way) / glm::length(way);
  if (left_mm < kNoLength_mm) {
    rounding.curve.begin = last.curve.begin;
    pieces.pop_back();
  } else {
    last.curve = Curve::line(last.curve.begin, arc->begin);
    last.length_mm = last.curve.length_mm();
  }
  pieces.push_back(rounding);
  next.curve = Curve::line(arc->end, next.curve.end);
  next.length_mm = next.curve.length_mm();
}

} // namespace

Vec3 part_from_program_mm(const Setup &setup, const Effects &effects) {
  Vec3 shift = setup.program_zero_mm;
  if (effects.zero_error)
    shift += Vec3(setup.xy_zero_error_mm, setup.z_zero_error_mm);
  return shift;
}

LargeArray<PathPiece> lay_out(const Program &program, const Machine &machine, const Setup &setup,
                              const Effects &effects) {
  const Vec3 shift = part_from_program_mm(setup, effects);
  const auto roundable = [&](const Move &move) { return blend_tolerance_mm(move, machine) > 0.0; };
  const auto roundings =
      effects.blending ? std::count_if(program.moves.begin(), program.moves.end(), roundable) : 0;
  LargeArray<PathPiece> pieces;
  pieces.reserve(program.moves.size() + static_cast<std::size_t>(roundings));
  for (std::size_t i = 0; i < program.moves.size(); ++i) {
    PathPiece next = piece_of(program.moves[i], static_cast<std::uint32_t>(i), machine, shift);
    if (next.kind != MoveKind::dwell && next.length_mm < kNoLength_mm)
      continue;
    if (effects.blending && !pieces.empty())
      round_corner(pieces, next, program, machine);
    pieces.push_back(next);
  }
  return pieces;
}

bool is_rounding(const PathPiece &piece, const Program &program) {
  return !piece.curve.is_line() && program.moves[piece.move].curve.is_line();
}

bool must_stop_between(const PathPiece &first, const PathPiece &second, const Program &program) {
  if (first.kind == MoveKind::dwell || second.kind == MoveKind::dwell)
    return true;
  if (first.tool != second.tool || first.spindle_rpm != second.spindle_rpm || first.turn != second.turn)
    return true;
  if (program.moves[first.move].control == PathControl::exact_stop)
    return true;
  return glm::distance(first.curve.end, second.curve.begin) > kGap_mm;
}

} // namespace asperity
