// Places and reservations in plain words.
#pragma once

#include "asperity/chart/wall_chart.h"
#include "asperity/job/job.h"

#include <string>

namespace asperity {

/// Direction from the circle's centre to the column's foot [deg], 0 = +x, counter-clockwise, 0 <= angle <
/// 360.
double angle_deg(const WallFeature &wall, const WallChart &chart, std::size_t column);
/// "at 12.3 deg round the wall" for a circle, else "at x 1.2, y 3.4 mm".
std::string words_at(const WallFeature &wall, const WallChart &chart, std::size_t column);
/// "z 0.00 to 14.00 mm".
std::string words_z(double low_mm, double high_mm);
/// "x 1.2, y 3.4 mm".
std::string words_xy(Vec2 p);
/// "x 1.2, y 3.4, z 5.6 mm".
std::string words_xyz(Vec3 p);
Vec3 place_on(const WallChart &chart, std::size_t column, double z_mm);

/// What a number drawn from cutting force rests on; empty once the user has calibrated.
std::string force_rests_on(const Job &job);
/// The same for a number drawn from bending: adds default stiffness. Empty when all bending is switched off.
std::string bending_rests_on(const Job &job);

} // namespace asperity
