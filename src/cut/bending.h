// From contact and chip load to force, and from force to where the bent axis stands.
#pragma once

#include "cutter_model.h"
#include "engagement.h"

#include "asperity/job/job.h"

namespace asperity {

/// What yields besides the cutter.
struct Yielding {
  double machine_xy_mm_per_N = 0, machine_z_mm_per_N = 0;
  bool blank_bends = false;
  double grip_z_mm = 0;
  double blank_second_moment_mm4 = 0, blank_area_mm2 = 0, blank_modulus_MPa = 0;
};

Yielding yielding_of(const Job &job);

struct Load {
  Vec3 mean_force_N{0.0}; ///< part frame; z positive down
  double torque_Nmm = 0;
  AxisOffset offset; ///< backlash not included
};

/// Side cutting along the unit vector feed. Wall-normal part only: bending along the feed moves no wall.
/// The cutter answers the instantaneous force at the moment a tooth makes the wall at each node's height
/// (left wall at phi = 0, right wall at phi = pi); machine and blank, far slower than the teeth, answer the
/// mean force.
/// `ready` is memory to work in; it holds the contact's slices afterwards.
Load side_load(const Contact &contact, const CutterModel &cutter, const ForceCoefficients &k,
               const Yielding &yielding, double tip_z_mm, Vec2 feed, double feed_per_tooth_mm,
               ReadySlices &ready);

/// Tip offset away from the wall being made [mm].
double away_mm(const AxisOffset &offset, Vec2 feed, bool right_wall);

/// Plunging: the end edges' mean force on cutter tip, machine and blank.
Load plunge_load(Vec3 force_N, const CutterModel &cutter, const Yielding &yielding, double tip_z_mm);

} // namespace asperity
