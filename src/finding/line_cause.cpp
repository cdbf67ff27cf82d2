// Why a line stands on the wall: what the path does at the place where the line was made.
#include "line_cause.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Change of direction above which two pieces meet in a reversal, a corner, a joint [rad].
const double kReversal_rad = rad_from_deg(150), kCorner_rad = rad_from_deg(15),
             kJoint_rad = rad_from_deg(0.1);
/// Speed below these shares of the programmed feed: a stop, a slow-down.
constexpr double kStopShare = 0.02, kSlowShare = 0.7;
/// An end of a piece explains lines so near to it; an axis that turns round, lines so near to the turn [mm].
constexpr double kEndReach_mm = 5.0, kTurnReach_mm = 4.0;

enum class Steepness { level, down, up };

Steepness steepness(const PathPiece &piece) {
  const Vec3 d = piece.curve.end - piece.curve.begin;
  if (std::abs(d.z) <= glm::length(plan(d)) || std::abs(d.z) < 1e-9)
    return Steepness::level;
  return d.z < 0.0 ? Steepness::down : Steepness::up;
}

double turn_between(const PathPiece &before, const PathPiece &after) {
  const Vec3 a = before.curve.velocity(1.0), b = after.curve.velocity(0.0);
  const double product = glm::length(a) * glm::length(b);
  return product > 0.0 ? std::acos(std::clamp(glm::dot(a, b) / product, -1.0, 1.0)) : 0.0;
}

/// Place u on the piece nearest to the foot in plan.
double nearest_u(const PathPiece &piece, Vec2 foot) {
  double best = 1e300, at = 0.0;
  for (int k = 0; k <= 256; ++k)
    if (const double d = glm::length(plan(piece.curve.point(k / 256.0)) - foot); d < best) {
      best = d;
      at = k / 256.0;
    }
  return at;
}

/// Share of the programmed feed there.
double speed_share(const PathPiece &piece, double u) {
  return piece.feed_mm_per_s > 0.0 ? piece.speed_at(u * piece.length_mm) / piece.feed_mm_per_s : 1.0;
}

/// Direction of the path in plan so far ahead of place u on piece `here` (behind if negative).
Vec2 heading_ahead(const TimedPath &path, std::size_t here, double u, double ahead_mm) {
  double at = u * path.pieces[here].length_mm + ahead_mm;
  while (at < 0.0 && here > 0)
    at += path.pieces[--here].length_mm;
  while (at > path.pieces[here].length_mm && here + 1 < path.pieces.size())
    at -= path.pieces[here++].length_mm;
  const PathPiece &piece = path.pieces[here];
  return plan(piece.curve.velocity(piece.length_mm > 0.0 ? std::clamp(at / piece.length_mm, 0.0, 1.0) : 0.0));
}

/// An axis with lost motion turns round near place u.
bool axis_turns(const TimedPath &path, std::size_t here, double u, Vec2 backlash_mm) {
  const Vec2 before = heading_ahead(path, here, u, -kTurnReach_mm),
             after = heading_ahead(path, here, u, kTurnReach_mm);
  return (backlash_mm.x > 0.0 && before.x * after.x < 0.0) ||
         (backlash_mm.y > 0.0 && before.y * after.y < 0.0);
}

/// The piece `steps` before or after, if there is one.
const PathPiece *neighbour_of(const TimedPath &path, std::size_t here, bool before, std::size_t steps) {
  if (before ? here < steps : here + steps >= path.pieces.size())
    return nullptr;
  return &path.pieces[before ? here - steps : here + steps];
}

/// Not cutting along the wall: no piece at all, a rapid, or up and down.
bool is_off(const PathPiece *piece) {
  return !piece || piece->kind == MoveKind::rapid || steepness(*piece) != Steepness::level;
}

/// What happens at one end of the level piece `here`.
LineCause cause_at_end(const TimedPath &path, std::size_t here, bool at_begin) {
  const PathPiece &piece = path.pieces[here];
  const PathPiece *neighbour = neighbour_of(path, here, at_begin, 1);
  const LineCause off = at_begin ? LineCause::entry : LineCause::exit;
  if (!neighbour || neighbour->kind == MoveKind::rapid)
    return off;
  if (neighbour->kind == MoveKind::dwell)
    return LineCause::dwell;
  if (const Steepness steep = steepness(*neighbour); steep != Steepness::level)
    return steep == Steepness::down ? LineCause::plunge : off;
  const double turn = at_begin ? turn_between(*neighbour, piece) : turn_between(piece, *neighbour);
  if (turn > kReversal_rad)
    return LineCause::reversal;
  // A single move to or from the wall, square to it: the corner is where the cut begins or ends.
  if (turn > kCorner_rad)
    return is_off(neighbour_of(path, here, at_begin, 2)) ? off : LineCause::corner;
  const double speed = at_begin ? piece.v_in_mm_per_s : piece.v_out_mm_per_s;
  if (speed < kStopShare * piece.feed_mm_per_s)
    return LineCause::stop;
  return turn > kJoint_rad ? LineCause::joint : LineCause::unknown;
}

} // namespace

bool goes_down(const PathPiece &piece) { return steepness(piece) == Steepness::down; }

LineCause line_cause(const TimedPath &path, std::uint32_t owner, Vec2 foot, Vec2 backlash_mm) {
  if (owner >= path.pieces.size())
    return LineCause::unknown;
  const PathPiece &here = path.pieces[owner];
  if (here.kind == MoveKind::dwell)
    return LineCause::dwell;
  if (steepness(here) == Steepness::down)
    return LineCause::plunge;
  if (steepness(here) == Steepness::up)
    return LineCause::lift_out;

  // A level piece: the line lies at one of its ends, or an axis turns round, or it is slow there.
  const double u = nearest_u(here, foot);
  const double from_begin = u * here.length_mm, from_end = (1.0 - u) * here.length_mm;
  const bool is_loop = glm::length(plan(here.curve.begin) - plan(here.curve.end)) < 0.1;
  LineCause cause = LineCause::unknown;
  if (std::min(from_begin, from_end) < kEndReach_mm) {
    cause = cause_at_end(path, owner, from_begin <= from_end);
    // A closed loop begins and ends at the same place.
    if (is_loop && (cause == LineCause::unknown || cause == LineCause::joint))
      if (const LineCause other = cause_at_end(path, owner, from_begin > from_end);
          other != LineCause::unknown)
        cause = other;
  }
  if ((cause == LineCause::unknown || cause == LineCause::joint) && axis_turns(path, owner, u, backlash_mm))
    return LineCause::lost_motion;
  if (cause == LineCause::unknown && speed_share(here, u) < kSlowShare)
    return LineCause::slow;
  return cause;
}

double facet_height_mm(const TimedPath &path, std::uint32_t owner) {
  if (owner >= path.pieces.size())
    return 0.0;
  double turn = 0.0;
  if (const PathPiece *before = neighbour_of(path, owner, true, 1))
    turn = turn_between(*before, path.pieces[owner]);
  if (const PathPiece *after = neighbour_of(path, owner, false, 1))
    turn = std::max(turn, turn_between(path.pieces[owner], *after));
  return path.pieces[owner].length_mm * turn / 8.0;
}

std::string cause_words(LineCause cause, bool ridge) {
  switch (cause) {
  case LineCause::plunge:
    return "The cutter plunges beside the wall: with no side feed the side force drops, the cutter springs "
           "back and "
           "dips into the wall.";
  case LineCause::lift_out:
    return "The cutter is lifted out while it touches the wall: the side force drops and it springs into the "
           "wall.";
  case LineCause::dwell:
    return "The cutter stands still (dwell) at the wall and springs back into it.";
  case LineCause::reversal:
    return "The path turns back on itself here: the cutter stops for a moment and springs back into the "
           "wall.";
  case LineCause::entry:
    return "The cut begins here: the side force is still building up, so the cutter bends less than later "
           "on.";
  case LineCause::exit:
    return "The cut ends here: the side force falls away and the cutter springs towards the wall.";
  case LineCause::corner:
    return "The feed drops for a corner: the thinner chip pushes less and the cutter springs towards the "
           "wall.";
  case LineCause::stop:
    return "The machine stops between two moves here and the cutter springs back into the wall.";
  case LineCause::joint:
    return "Two short straight moves meet here at a slight angle.";
  case LineCause::slow:
    return "The machine is slow here: the thinner chip pushes less, so the cutter bends less.";
  case LineCause::lost_motion:
    return "An axis turns round here: until its lost motion (backlash) is taken up, the slide stands still.";
  case LineCause::unknown:
    break;
  }
  return ridge ? "Neighbouring cuts meet here and leave a ridge."
               : "The cutter bends less here than beside it.";
}

std::string remedy_words(LineCause cause) {
  switch (cause) {
  case LineCause::plunge:
  case LineCause::dwell:
    return "Enter by a ramp or a tangent lead-in arc, or plunge clear of the wall; a last pass at full depth "
           "leaves "
           "one line at most.";
  case LineCause::lift_out:
  case LineCause::exit:
    return "Leave by a tangent arc before lifting, and let the cut overlap its start by 1 to 3 mm.";
  case LineCause::entry:
    return "Enter by a tangent lead-in arc of at least half the cutter's diameter and let the cut overlap "
           "its start.";
  case LineCause::reversal:
    return "Let the ramp run on round the part instead of back and forth, or follow it with a full finishing "
           "pass.";
  case LineCause::corner:
    return "Round the corner of the path with an arc, allow blending (G64 with a tolerance), or finish at "
           "lower feed.";
  case LineCause::stop:
    return "Use continuous mode (G64) instead of exact stop, and join the moves tangentially.";
  case LineCause::joint:
    return "Use arcs (G2, G3) instead of short straight moves, or a finer chord tolerance.";
  case LineCause::slow:
    return "Give the machine room to keep its feed: larger radii, arcs instead of short moves, or a lower "
           "feed.";
  case LineCause::lost_motion:
    return "Take up the play (adjust the nut or belt), let the controller make up for it, or turn the start "
           "of the "
           "outline so that the mark falls where it does not matter.";
  case LineCause::unknown:
    break;
  }
  return "Take a lighter finishing pass at steady feed; step the start place round from level to level.";
}

} // namespace asperity
