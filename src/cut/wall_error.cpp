// Where a side-milled wall really comes to stand.
#include "asperity/cut/wall_error.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace asperity {

/// Slices over the engaged length; only the lever arms depend on it, the force itself is exact.
static constexpr std::size_t kWallSlices = 32;
static constexpr int kMostSteps = 200;
/// Far below anything a wall shows.
static constexpr double kSettled_mm = 1e-9;

static Immersion wall_arc(const WallCut &cut, double radial_depth_mm) {
  return cut.climb ? climb_immersion(radial_depth_mm, cut.teeth.radius_mm)
                   : conventional_immersion(radial_depth_mm, cut.teeth.radius_mm);
}

WallLoad wall_load(const WallCut &cut, double radial_depth_mm, double z_mm) {
  const Immersion arc = wall_arc(cut, radial_depth_mm);
  std::array<ImmersedSlice, kWallSlices> slices;
  std::array<Vec3, kWallSlices> slice_force_N;
  for (std::size_t i = 0; i < kWallSlices; ++i) {
    const double share = cut.axial_depth_mm / kWallSlices;
    slices[i] = {share * static_cast<double>(i), share * static_cast<double>(i + 1), arc};
  }

  // The wall point is made when the edge at its height passes the wall: phi = pi in climb, 0 in conventional.
  const double lag_rad = z_mm * std::tan(cut.teeth.helix_rad) / cut.teeth.radius_mm;
  const double tip_rad = (cut.climb ? kPi : 0.0) + lag_rad;
  const Vec3 at_once_N = force_at_N(cut.k, slices, cut.teeth, cut.feed_per_tooth_mm, tip_rad, slice_force_N);
  const Vec3 mean_N = mean_force_N(cut.k, arc, cut.teeth.flutes, cut.axial_depth_mm, cut.feed_per_tooth_mm);

  // Left is away from a climb wall and towards a conventional one.
  const double away = cut.climb ? 1.0 : -1.0;
  WallLoad load{away * at_once_N.y, away * mean_N.y, 0.0};
  for (std::size_t i = 0; i < kWallSlices; ++i) {
    load.cutter_bend_mm +=
        away * slice_force_N[i].y * cutter_compliance_mm_per_N(cut.beam, z_mm, slices[i].middle_mm());
  }
  return load;
}

WallError wall_error(const WallCut &cut, double z_mm) {
  const double deepest_overcut_mm = cut.radial_depth_mm - 2.0 * cut.teeth.radius_mm;
  WallError wall;
  double step = 0.5, last_change_mm = 0;
  for (int i = 0; i < kMostSteps; ++i) {
    wall.real_radial_depth_mm = cut.radial_depth_mm - wall.error_mm;
    wall.load = wall_load(cut, wall.real_radial_depth_mm, z_mm);
    const double yield_mm = wall.load.cutter_bend_mm + wall.load.mean_N * cut.steady_compliance_mm_per_N;
    const double change_mm = std::clamp(yield_mm, deepest_overcut_mm, cut.radial_depth_mm) - wall.error_mm;
    if (std::abs(change_mm) < kSettled_mm)
      break;
    // A very soft machine overshoots; smaller steps settle it.
    if (i > 0 && std::abs(change_mm) > std::abs(last_change_mm))
      step /= 2.0;
    wall.error_mm += step * change_mm;
    last_change_mm = change_mm;
  }
  return wall;
}

} // namespace asperity
