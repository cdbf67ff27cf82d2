// The path's geometry without its speed: moves placed in the part frame, corners rounded.
#pragma once

#include "asperity/motion/timed_path.h"

namespace asperity {

/// How far the program's frame lies from the part's: program zero and, where they count, the errors in
/// setting it.
Vec3 part_from_program_mm(const Setup &setup, const Effects &effects);

/// One piece a move, in order, moves of no length left out, rounding arcs put in. Length, programmed feed and
/// everything that comes from the move are set; speeds and times are not.
LargeArray<PathPiece> lay_out(const Program &program, const Machine &machine, const Setup &setup,
                              const Effects &effects);

/// True for an arc put in to round a corner: it meets its neighbours without a kink.
bool is_rounding(const PathPiece &piece, const Program &program);

/// True where the cutter must stand still between two pieces whatever the corner: dwell, exact stop, change
/// of tool or spindle, or a place where the second does not begin where the first ends.
bool must_stop_between(const PathPiece &first, const PathPiece &second, const Program &program);

} // namespace asperity
