// Where along a piece the cut is looked at, and which looks may be left out afterwards.
#pragma once

#include "walker.h"

namespace asperity {

inline constexpr double kBendStep_mm = 0.5e-3; ///< larger change between stations: look in between
inline constexpr double kStraight_mm = 1e-6;   ///< offsets this near a straight line in u need no station

inline constexpr double kStepShare = 1.0 / 6.0; ///< of the cutter's radius, between stations at steady speed

/// Unit vector of the motion; 0 where the piece has no length.
Vec3 heading(const PathPiece &piece, double u);
/// Is the bending carried round a joint between these headings?
bool runs_on(Vec3 before, Vec3 after);

/// Places u in (0, 1], rising, ending with 1: at the ends of speeding up and slowing down, and no farther
/// apart than a share of the cutter's radius (closer while the speed changes and on small arcs).
std::vector<double> planned_stations(const PathPiece &piece, double cutter_radius_mm);
int planned_station_count(const PathPiece &piece, double cutter_radius_mm);

/// The last of the straight pieces from `first` on that together are no longer than a step, run on without a
/// corner at steady speed and are cut the same way: `first` itself if the next is not one of them.
std::uint32_t last_in_step(const TimedPath &path, std::uint32_t first, double cutter_radius_mm);
/// Do the ends of these pieces lie so near the straight line from the first's begin to the last's end?
bool run_straight(const TimedPath &path, std::uint32_t first, std::uint32_t last, double within_mm);

/// The farthest station to which the offsets run straight from station `from`, within kStraight_mm.
std::size_t last_in_line(const std::vector<Station> &stations, std::size_t from);

} // namespace asperity
