// Builds the paths of the floor tests.
#include "sweep/floor_jobs.h"

#include "asperity/base/units.h"
#include "asperity/sweep/sweep_floor.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::floor_test {

std::vector<NamedProfile> all_profiles() {
  return {{"ball", CutterProfile::ball(1.5)},
          {"grown ball", CutterProfile::ball(1.5).grown(0.004)},
          {"shrunk ball", CutterProfile::ball(1.5).grown(-0.01)},
          {"flat", CutterProfile::flat(1.5)},
          {"corner radius", CutterProfile::corner_radius(1.5, 0.3)},
          {"tapered ball", CutterProfile(1.5, 0.0, 0.4, rad_from_deg(10.0))},
          {"tapered corner radius", CutterProfile(1.5, 0.3, 0.4, rad_from_deg(20.0))},
          {"sharp vee", CutterProfile(1.5, 0.0, 0.0, rad_from_deg(45.0))},
          {"vee with a flat", CutterProfile(1.5, 0.1, 0.0, rad_from_deg(30.0))}};
}

SweptPath path_with(const CutterProfile &profile) {
  SweptPath path;
  SweptCutter cutter;
  cutter.profile = profile;
  cutter.flute_length_mm = 20.0;
  path.cutters.push_back(cutter);
  return path;
}

AxisOffset offset(Vec2 in_plan, double axial_mm) {
  AxisOffset result;
  // Left and right differ, so that only their mean gives the right answer.
  result.left.fill(in_plan + Vec2(0.3, -0.1));
  result.right.fill(in_plan - Vec2(0.3, -0.1));
  result.axial_mm = axial_mm;
  return result;
}

void add(SweptPath &path, const Curve &curve, bool joins_previous) {
  add(path, curve, offset({0, 0}, 0), offset({0, 0}, 0), joins_previous);
}

void add(SweptPath &path, const Curve &curve, const AxisOffset &begin, const AxisOffset &end,
         bool joins_previous) {
  BentPiece piece;
  piece.curve = curve;
  piece.begin = begin;
  piece.end = end;
  piece.owner = static_cast<std::uint32_t>(path.pieces.size());
  piece.joins_previous = joins_previous;
  path.add(piece);
}

FloorChart square_chart(double half_mm, double spacing_mm, double base_mm) {
  return make_floor_chart(Vec2(-half_mm), Vec2(half_mm), spacing_mm, base_mm);
}

void sweep(FloorChart &chart, const SweptPath &path, int threads) {
  EXPECT_TRUE(sweep_floor(chart, path, threads, Progress()));
}

SweptPath wandering_path(const CutterProfile &profile, unsigned number, int pieces, double turn_rad,
                         double slope, double bend_mm) {
  std::mt19937 random(number);
  std::uniform_real_distribution<double> unit(-1.0, 1.0);
  SweptPath path = path_with(profile);
  Vec3 at(unit(random), unit(random), 0.0);
  AxisOffset bend = offset({0, 0}, 0);
  double heading = kPi * unit(random);
  for (int i = 0; i < pieces; ++i) {
    heading += turn_rad * unit(random);
    if (glm::length(plan(at)) > 3.0) // turn back towards the middle
      heading = std::atan2(-at.y, -at.x) + 0.3 * unit(random);
    const AxisOffset next = offset(bend_mm * Vec2(unit(random), unit(random)), bend_mm * unit(random));
    const double length = 0.05 + 0.25 * std::abs(unit(random)), rise = slope * unit(random) * length;
    const Vec2 along(std::cos(heading), std::sin(heading));
    if (i % 3 == 2) {
      const double radius = 0.5 + 4.0 * std::abs(unit(random)), side = unit(random) > 0.0 ? 1.0 : -1.0;
      const Vec2 centre = plan(at) + side * radius * left_of(along);
      const double sweep_rad = side * length / radius;
      const double a = std::atan2(at.y - centre.y, at.x - centre.x) + sweep_rad;
      const Vec2 end = centre + radius * Vec2(std::cos(a), std::sin(a));
      add(path, Curve::plan_arc(at, {end.x, end.y, at.z + rise}, centre, sweep_rad), bend, next, i > 0);
      heading += sweep_rad;
    } else {
      add(path, Curve::line(at, at + Vec3(length * along, rise)), bend, next, i > 0);
    }
    at = path.pieces.back().end;
    bend = next;
  }
  return path;
}

} // namespace asperity::floor_test
