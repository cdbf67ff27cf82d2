#include "cutter_model.h"

#include "asperity/base/units.h"
#include "asperity/cut/chip.h"

#include <algorithm>

namespace asperity {

namespace {

/// Nodes at quarters of the stepdown, then thinning out towards the end of the flutes.
std::array<double, kBendNodes> node_heights(double stepdown_mm, double flute_length_mm) {
  constexpr std::array<double, kBendNodes - 1> kShares{0.0, 0.25, 0.5, 0.75, 1.0, 1.5, 2.5};
  const double step = std::min(stepdown_mm, flute_length_mm / 3.0);
  std::array<double, kBendNodes> heights{};
  for (std::size_t i = 0; i < kShares.size(); ++i)
    heights[i] = kShares[i] * step;
  heights.back() = flute_length_mm;
  return heights;
}

} // namespace

CutterModel make_cutter_model(const Job &job, const Cutter &cutter, double stepdown_mm) {
  const Material &m = job.material;
  const double edge = job.effects.edge_force ? 1.0 : 0.0;
  // The highest tooth makes the surface: runout (total reading) adds half of itself to the radius.
  const double grown_mm = (job.effects.diameter_error ? 0.5 * cutter.diameter_error_mm : 0.0) +
                          (job.effects.runout ? 0.5 * cutter.runout_mm : 0.0);
  CutterModel model;
  model.swept.profile = cutter.profile().grown(grown_mm);
  model.swept.flute_length_mm = cutter.flute_length_mm;
  model.swept.node_height_mm = node_heights(stepdown_mm, cutter.flute_length_mm);
  model.teeth = {0.5 * cutter.diameter_mm, cutter.flutes, rad_from_deg(cutter.helix_deg)};
  model.lag_rad_per_mm = lag_rad_per_mm(model.teeth);
  model.pitch_rad = 2.0 * kPi / model.teeth.flutes;
  for (const double wall_rad : {0.0, kPi})
    model.wall_tips.emplace_back(model.teeth, model.swept.node_height_mm, wall_rad);
  model.beam = {cutter.stick_out_mm, std::min(cutter.flute_length_mm, cutter.stick_out_mm),
                cutter.flute_core_ratio * cutter.diameter_mm, cutter.shank_diameter_mm,
                cutter.elastic_modulus_MPa()};
  model.force = {m.ktc_N_per_mm2,       m.krc_N_per_mm2,       m.kac_N_per_mm2,
                 edge * m.kte_N_per_mm, edge * m.kre_N_per_mm, edge * m.kae_N_per_mm};
  model.least_chip_mm = least_chip_mm(cutter.edge_radius_um);
  model.bends = job.effects.cutter_bending;
  return model;
}

} // namespace asperity
