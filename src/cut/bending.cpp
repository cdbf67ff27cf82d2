#include "bending.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Adds the offset of machine and blank at each node height under one slice's force [mm], normal to the feed
/// (+ left).
void add_slow(double height_mm, double normal_N, const CutterModel &cutter, const Yielding &yielding,
              double tip_z_mm, Eight &offset_mm) {
  Eight compliance{};
  if (yielding.blank_bends) {
    Eight z;
    for (std::size_t i = 0; i < kBendNodes; ++i)
      z[i] = std::max(tip_z_mm + cutter.swept.node_height_mm[i] - yielding.grip_z_mm, 0.0);
    compliance = blank_compliance_mm_per_N(z, std::max(tip_z_mm + height_mm - yielding.grip_z_mm, 0.0),
                                           yielding.blank_second_moment_mm4, yielding.blank_area_mm2,
                                           yielding.blank_modulus_MPa);
  }
  for (std::size_t i = 0; i < kBendNodes; ++i)
    offset_mm[i] += (yielding.machine_xy_mm_per_N + compliance[i]) * normal_N;
}

/// Where the axis stands when each wall is made, normal to the feed (+ left).
struct WallOffsets {
  Eight left_mm{}, right_mm{};
};

/// The cutter bent by its teeth.
WallOffsets bent_by_teeth(const Contact &contact, const ReadySlices &ready, const CutterModel &cutter,
                          const ForceCoefficients &k, double feed_per_tooth_mm, bool at_left, bool at_right) {
  WallOffsets bend;
  for (std::size_t s = 0; s < contact.slices.size(); ++s) {
    const Eight compliance =
        cutter_compliance_mm_per_N(cutter.beam, cutter.swept.node_height_mm, contact.slices[s].middle_mm());
    if (at_left)
      cutter.wall_tips[0].add_bend(ready[s], k, feed_per_tooth_mm, compliance, bend.left_mm);
    if (at_right)
      cutter.wall_tips[1].add_bend(ready[s], k, feed_per_tooth_mm, compliance, bend.right_mm);
  }
  return bend;
}

} // namespace

Yielding yielding_of(const Job &job) {
  Yielding y;
  if (job.effects.machine_bending) {
    y.machine_xy_mm_per_N = machine_compliance_mm_per_N(job.machine.stiffness_xy_N_per_um);
    y.machine_z_mm_per_N = machine_compliance_mm_per_N(job.machine.stiffness_z_N_per_um);
  }
  y.blank_bends = job.effects.blank_bending && job.material.elastic_modulus_MPa > 0.0;
  y.grip_z_mm = job.holding.grip_z_mm.value_or(job.blank.z_bottom_mm);
  if (y.blank_bends) {
    const BlankSection weakest = job.blank.weakest_section();
    y.blank_second_moment_mm4 = weakest.second_moment_mm4;
    y.blank_area_mm2 = weakest.area_mm2;
  }
  y.blank_modulus_MPa = job.material.elastic_modulus_MPa;
  return y;
}

Load side_load(const Contact &contact, const CutterModel &cutter, const ForceCoefficients &k,
               const Yielding &yielding, double tip_z_mm, Vec2 feed, double feed_per_tooth_mm,
               ReadySlices &ready) {
  Load load;
  if (!contact.any())
    return load;
  const Vec2 left = left_of(feed);
  // Mean force, slice by slice, in the frame of the feed; machine and blank answer to it.
  Vec3 mean(0.0);
  Eight slow{};
  ready.take(contact.slices, cutter.lag_rad_per_mm, cutter.pitch_rad);
  for (std::size_t s = 0; s < contact.slices.size(); ++s) {
    const ImmersedSlice &slice = contact.slices[s];
    const EdgeSums edge = mean_edge(ready[s].over_arc(), cutter.teeth.flutes, slice.length_mm());
    const Vec3 f = force_of(edge, k, feed_per_tooth_mm);
    mean += f;
    add_slow(slice.middle_mm(), f.y, cutter, yielding, tip_z_mm, slow);
    load.torque_Nmm += torque_of(edge, k, feed_per_tooth_mm, cutter.teeth.radius_mm);
  }
  load.mean_force_N = Vec3(mean.x * feed + mean.y * left, mean.z);

  // Where the axis stands when each wall is made.
  const bool both = contact.makes_left_wall == contact.makes_right_wall;
  const bool at_left = both || contact.makes_left_wall, at_right = both || contact.makes_right_wall;
  WallOffsets bend;
  if (cutter.bends)
    bend = bent_by_teeth(contact, ready, cutter, k, feed_per_tooth_mm, at_left, at_right);
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    const double left_mm = slow[i] + bend.left_mm[i], right_mm = slow[i] + bend.right_mm[i];
    load.offset.left[i] = (at_left ? left_mm : right_mm) * left;
    load.offset.right[i] = (at_right ? right_mm : left_mm) * left;
  }
  load.offset.axial_mm = -mean.z * yielding.machine_z_mm_per_N;
  return load;
}

double away_mm(const AxisOffset &offset, Vec2 feed, bool right_wall) {
  return right_wall ? glm::dot(offset.right[0], left_of(feed)) : -glm::dot(offset.left[0], left_of(feed));
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
