#include "bending.h"

#include "asperity/base/units.h"
#include "tooth_integral.h"

#include <cmath>

namespace asperity {

namespace {

/// Offset of machine and blank at each node height, normal to the feed (+ left) [mm].
std::array<double, kBendNodes> slow_offset_mm(const std::vector<double> &slice_normal_N,
                                              const Contact &contact, const CutterModel &cutter,
                                              const Yielding &yielding, double tip_z_mm) {
  std::array<double, kBendNodes> offset{};
  for (std::size_t s = 0; s < contact.slices.size(); ++s) {
    const double middle = 0.5 * (contact.slices[s].z_low_mm + contact.slices[s].z_high_mm);
    for (std::size_t i = 0; i < kBendNodes; ++i) {
      double compliance = yielding.machine_xy_mm_per_N;
      if (yielding.blank_bends) {
        const double z = tip_z_mm + cutter.swept.node_height_mm[i] - yielding.grip_z_mm;
        const double zc = tip_z_mm + middle - yielding.grip_z_mm;
        compliance +=
            blank_compliance_mm_per_N(std::max(z, 0.0), std::max(zc, 0.0), yielding.blank_second_moment_mm4,
                                      yielding.blank_area_mm2, yielding.blank_modulus_MPa);
      }
      offset[i] += compliance * slice_normal_N[s];
    }
  }
  return offset;
}

/// The cutter bent by its teeth: how far its axis stands off, normal to the feed (+ left), when a tooth makes
/// the wall at a node's height.
class BentByTeeth {
public:
  BentByTeeth(const Contact &contact, const CutterModel &cutter, const ForceCoefficients &k,
              double feed_per_tooth_mm)
      : contact_(contact), cutter_(cutter), k_(k), feed_per_tooth_mm_(feed_per_tooth_mm),
        ready_(contact.slices, cutter.teeth), lag_per_mm_of_radius_(std::tan(cutter.teeth.helix_rad)) {}

  double offset_mm(double node_mm, double wall_phi_rad) const {
    const double phi0 = wall_phi_rad + node_mm * lag_per_mm_of_radius_ / cutter_.teeth.radius_mm;
    double offset = 0.0;
    ready_.forces_at(k_, feed_per_tooth_mm_, phi0, [&](std::size_t s, const Vec3 &force_N) {
      const ImmersedSlice &slice = contact_.slices[s];
      const double middle = 0.5 * (slice.z_low_mm + slice.z_high_mm);
      if (force_N.y != 0.0)
        offset += cutter_compliance_mm_per_N(cutter_.beam, node_mm, middle) * force_N.y;
    });
    return offset;
  }

private:
  const Contact &contact_;
  const CutterModel &cutter_;
  const ForceCoefficients &k_;
  double feed_per_tooth_mm_;
  ReadySlices ready_;
  double lag_per_mm_of_radius_;
};

} // namespace

Yielding yielding_of(const Job &job) {
  Yielding y;
  if (job.effects.machine_bending) {
    y.machine_xy_mm_per_N = machine_compliance_mm_per_N(job.machine.stiffness_xy_N_per_um);
    y.machine_z_mm_per_N = machine_compliance_mm_per_N(job.machine.stiffness_z_N_per_um);
  }
  y.blank_bends = job.effects.blank_bending && job.material.elastic_modulus_MPa > 0.0;
  y.grip_z_mm = job.holding.grip_z_mm.value_or(job.blank.z_bottom_mm);
  y.blank_second_moment_mm4 = job.blank.second_moment_mm4();
  y.blank_area_mm2 = job.blank.section_area_mm2();
  y.blank_modulus_MPa = job.material.elastic_modulus_MPa;
  return y;
}

Load side_load(const Contact &contact, const CutterModel &cutter, const ForceCoefficients &k,
               const Yielding &yielding, double tip_z_mm, Vec2 feed, double feed_per_tooth_mm) {
  Load load;
  if (!contact.any())
    return load;
  const Vec2 left = left_of(feed);
  // Mean force, slice by slice, in the frame of the feed.
  Vec3 mean(0.0);
  std::vector<double> normal_N(contact.slices.size());
  for (std::size_t s = 0; s < contact.slices.size(); ++s) {
    const ImmersedSlice &slice = contact.slices[s];
    const double length = slice.z_high_mm - slice.z_low_mm;
    const Vec3 f = mean_force_N(k, slice.arc, cutter.teeth.flutes, length, feed_per_tooth_mm);
    mean += f;
    normal_N[s] = f.y;
    load.torque_Nmm +=
        mean_torque_Nmm(k, slice.arc, cutter.teeth.flutes, length, feed_per_tooth_mm, cutter.teeth.radius_mm);
  }
  load.mean_force_N = Vec3(mean.x * feed + mean.y * left, mean.z);

  // Where the axis stands when each wall is made.
  const auto slow = slow_offset_mm(normal_N, contact, cutter, yielding, tip_z_mm);
  const BentByTeeth teeth(contact, cutter, k, feed_per_tooth_mm);
  const bool both = contact.makes_left_wall == contact.makes_right_wall;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    const double node = cutter.swept.node_height_mm[i];
    const auto bend = [&](double phi) { return cutter.bends ? teeth.offset_mm(node, phi) : 0.0; };
    const double at_left = both || contact.makes_left_wall ? slow[i] + bend(0.0) : 0.0;
    const double at_right = both || contact.makes_right_wall ? slow[i] + bend(kPi) : 0.0;
    load.offset.left[i] = (both || contact.makes_left_wall ? at_left : at_right) * left;
    load.offset.right[i] = (both || contact.makes_right_wall ? at_right : at_left) * left;
  }
  load.offset.axial_mm = -mean.z * yielding.machine_z_mm_per_N;
  load.away_mm =
      contact.makes_right_wall ? glm::dot(load.offset.right[0], left) : -glm::dot(load.offset.left[0], left);
  return load;
}

Load plunge_load(Vec3 force_N, const CutterModel &cutter, const Yielding &yielding, double tip_z_mm) {
  Load load;
  load.mean_force_N = force_N;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    const double node = cutter.swept.node_height_mm[i];
    double compliance = yielding.machine_xy_mm_per_N;
    if (cutter.bends)
      compliance += cutter_compliance_mm_per_N(cutter.beam, node, 0.0);
    if (yielding.blank_bends)
      compliance += blank_compliance_mm_per_N(
          std::max(tip_z_mm + node - yielding.grip_z_mm, 0.0), std::max(tip_z_mm - yielding.grip_z_mm, 0.0),
          yielding.blank_second_moment_mm4, yielding.blank_area_mm2, yielding.blank_modulus_MPa);
    load.offset.left[i] = load.offset.right[i] = compliance * plan(force_N);
  }
  load.offset.axial_mm = -force_N.z * yielding.machine_z_mm_per_N;
  return load;
}

} // namespace asperity
