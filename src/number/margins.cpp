// The smallest margins over the cut, by the laws the strength findings use.
#include "margins.h"

#include "asperity/cut/strength.h"

#include <algorithm>

namespace asperity {

namespace {

void keep_smallest(std::optional<double> &margin, double strength, double load) {
  if (load > 0.0)
    margin = std::min(margin.value_or(std::max(0.0, strength) / load), std::max(0.0, strength) / load);
}

} // namespace

std::optional<double> break_margin(const Job &job, const CutRecord &cut) {
  const double modulus_mm3 = job.blank.section_modulus_mm3();
  if (!job.holding.grip_z_mm || modulus_mm3 <= 0.0 || job.material.break_stress_MPa <= 0.0)
    return std::nullopt;
  std::optional<double> margin;
  for (const CutSample &sample : cut.samples) {
    const double height_mm = sample.position_mm.z + sample.axial_depth_mm - *job.holding.grip_z_mm;
    if (sample.in_contact && height_mm > 0.0)
      keep_smallest(margin, job.material.break_stress_MPa,
                    base_bending_stress_MPa(kImpactFactor * sample.peak_force_N, height_mm, modulus_mm3,
                                            kSquareCornerConcentration));
  }
  return margin;
}

std::optional<double> slip_margin(const Job &job, const CutRecord &cut) {
  if (!job.holding.clamp_force_N || job.material.friction <= 0.0)
    return std::nullopt;
  std::optional<double> margin;
  for (const CutSample &sample : cut.samples)
    if (sample.in_contact)
      keep_smallest(margin,
                    holding_force_N(*job.holding.clamp_force_N, job.material.friction,
                                    std::max(0.0, static_cast<double>(sample.mean_force_N[2]))),
                    sample.peak_force_N);
  return margin;
}

} // namespace asperity
