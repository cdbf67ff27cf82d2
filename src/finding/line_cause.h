// Why a line stands on the wall: what the path does at the place where the line was made.
#pragma once

#include "asperity/motion/timed_path.h"

#include <optional>
#include <string>

namespace asperity {

enum class LineCause {
  plunge,
  lift_out,
  dwell,
  reversal,
  entry,
  exit,
  corner,
  stop,
  joint,
  slow,
  lost_motion,
  unknown
};

/// Steeper than 45 degrees downwards.
bool goes_down(const PathPiece &piece);

/// From the piece that made the line and its neighbours; `foot` is the line's place on the wall in plan,
/// backlash_mm the lost motion of the axes (where one turns round, the slide stands still for a moment).
LineCause line_cause(const TimedPath &path, std::uint32_t owner, Vec2 foot, Vec2 backlash_mm = Vec2(0.0));

/// Height of the facets that straight moves like this one leave on a curve [mm]: length x turn / 8 (sagitta
/// of a chord that turns by this angle into the next).
double facet_height_mm(const TimedPath &path, std::uint32_t owner);

std::string cause_words(LineCause cause, bool ridge);
std::string remedy_words(LineCause cause);

} // namespace asperity
