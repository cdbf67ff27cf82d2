// Cutting force on the cutter: linear-edge model, helical teeth.
#include "asperity/cut/force.h"

#include "asperity/base/units.h"
#include "tooth_integral.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace asperity {

/// acos(1 - ae/r), the arc from the wall to where the stock ends.
static double engaged_arc_rad(double radial_depth_mm, double radius_mm) {
  return std::acos(std::clamp(1.0 - radial_depth_mm / radius_mm, -1.0, 1.0));
}

Immersion climb_immersion(double radial_depth_mm, double radius_mm) {
  return {kPi - engaged_arc_rad(radial_depth_mm, radius_mm), kPi};
}

Immersion conventional_immersion(double radial_depth_mm, double radius_mm) {
  return {0.0, engaged_arc_rad(radial_depth_mm, radius_mm)};
}

static EdgeSums mean_edge_on(const Immersion &arc, int flutes, double axial_depth_mm) {
  const Immersion cutting = cutting_part(arc);
  const EdgeSums over_arc = integral_to(turn_at(cutting.exit_rad)) - integral_to(turn_at(cutting.entry_rad));
  return mean_edge(over_arc, flutes, axial_depth_mm);
}

Vec3 mean_force_N(const ForceCoefficients &k, const Immersion &arc, int flutes, double axial_depth_mm,
                  double feed_per_tooth_mm) {
  return force_of(mean_edge_on(arc, flutes, axial_depth_mm), k, feed_per_tooth_mm);
}

Vec3 force_at_N(const ForceCoefficients &k, std::span<const ImmersedSlice> slices, const ToothGeometry &teeth,
                double feed_per_tooth_mm, double phi0_rad, std::span<Vec3> slice_force_N) {
  assert(slice_force_N.empty() || slice_force_N.size() == slices.size());
  assert(teeth.flutes > 0 && teeth.radius_mm > 0);
  Vec3 total{0.0};
  ReadySlices(slices, teeth)
      .forces_at(k, feed_per_tooth_mm, phi0_rad, [&](std::size_t i, const Vec3 &force_N) {
        total += force_N;
        if (!slice_force_N.empty())
          slice_force_N[i] = force_N;
      });
  return total;
}

double mean_torque_Nmm(const ForceCoefficients &k, const Immersion &arc, int flutes, double axial_depth_mm,
                       double feed_per_tooth_mm, double radius_mm) {
  return torque_of(mean_edge_on(arc, flutes, axial_depth_mm), k, feed_per_tooth_mm, radius_mm);
}

double power_W(double torque_Nmm, double spindle_rpm) {
  const double torque_Nm = torque_Nmm * 1e-3;
  return torque_Nm * 2.0 * kPi * rev_per_s_from_rpm(spindle_rpm);
}

double kienzle_kc_N_per_mm2(double kc11, double mc, double chip_thickness_mm) {
  return kc11 * std::pow(chip_thickness_mm, -mc);
}

} // namespace asperity
