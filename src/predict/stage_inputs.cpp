// Each stage sees a copy of the job in which what it does not read is blanked.
#include "stage_inputs.h"

#include "same_bits.h"

namespace asperity {

namespace {

/// Words, the program's name and what made it, and how well values are known: no stage computes with them.
void blank_words(Job &job) {
  job.file.clear();
  job.title.clear();
  job.program.clear();
  job.passes.clear();
  job.between_passes = {};
  job.uncertainty = {};
  job.included.clear();
}

/// What only the path depends on.
void blank_motion(Job &job) {
  job.setup = {};
  const Machine usual;
  job.machine.acceleration_mm_per_s2 = usual.acceleration_mm_per_s2;
  job.machine.max_feed_mm_per_min = usual.max_feed_mm_per_min;
  job.machine.rapid_mm_per_min = usual.rapid_mm_per_min;
  job.machine.corner_deviation_mm = usual.corner_deviation_mm;
  job.machine.blend_tolerance_mm = usual.blend_tolerance_mm;
  job.machine.spindle_max_rpm = usual.spindle_max_rpm;
  job.effects.zero_error = job.effects.acceleration = job.effects.blending = true;
}

/// Names, strength and own roughness.
void blank_unforced(Material &material) {
  material.name.clear();
  material.source.clear();
  material.printed = material.calibrated = false;
  material.own_ra_low_um = material.own_ra_high_um = 0;
  material.break_stress_MPa = material.softening_temperature_C = 0;
  material.conductivity_W_per_mK = material.friction = 0;
}

void blank_names(std::vector<Cutter> &cutters) {
  for (Cutter &cutter : cutters) {
    cutter.name.clear();
    cutter.length_offset_mm = 0;
  }
}

/// Of the hold-down the cut reads the grip alone.
void blank_all_but_grip(HoldDown &holding) {
  holding.keep_outs.clear();
  holding.spoilboard_top_z_mm.reset();
  holding.spoilboard_cut_allowed_mm = 0;
  holding.clamp_force_N.reset();
}

Job seen_by_cut(Job job) {
  blank_words(job);
  blank_motion(job);
  blank_unforced(job.material);
  blank_names(job.cutters);
  blank_all_but_grip(job.holding);
  job.defaults_used.clear();
  job.features.clear();
  job.resolution = {};
  job.machine.tram_deg = 0;
  return job;
}

void blank_wanted(Feature &feature) {
  std::visit([](auto &f) { f.name.clear(), f.finish = {}; }, feature);
  if (auto *wall = std::get_if<WallFeature>(&feature))
    wall->size[0].reset(), wall->size[1].reset();
  else if (auto *floor = std::get_if<FloorFeature>(&feature))
    floor->height.reset(), floor->measured_from_z_mm = 0;
  else
    std::get<DomeFeature>(feature).height.reset(), std::get<DomeFeature>(feature).measured_from_z_mm = 0;
}

/// The feature stands alone in the job that it is compared by.
void keep_only(Job &job, std::size_t feature) {
  Feature kept = job.features[feature];
  job.features = {std::move(kept)};
}

/// The surface and the blank, and nothing of how it is cut.
Job seen_by_chart(Job job, std::size_t feature) {
  blank_words(job);
  job.defaults_used.clear();
  job.material = {};
  job.machine = {};
  job.cutters.clear();
  job.holding = {};
  job.setup = {};
  job.effects = {};
  keep_only(job, feature);
  blank_wanted(job.features[0]);
  return job;
}

Job seen_by_roughness(Job job, std::size_t feature) {
  blank_words(job);
  blank_motion(job);
  blank_names(job.cutters);
  job.defaults_used.clear();
  job.holding = {};
  job.resolution = {};
  job.material = {}; // its own roughness is added last
  keep_only(job, feature);
  blank_wanted(job.features[0]);
  return job;
}

Job seen_by_findings(Job job) {
  blank_words(job);
  job.material.own_ra_low_um = job.material.own_ra_high_um = 0;
  return job;
}

} // namespace

bool same_for_cut(const Job &a, const Job &b) { return same_bits(seen_by_cut(a), seen_by_cut(b)); }

bool same_for_chart(const Job &a, const Job &b, std::size_t feature) {
  return same_bits(seen_by_chart(a, feature), seen_by_chart(b, feature));
}

bool same_for_roughness(const Job &a, const Job &b, std::size_t feature) {
  return same_bits(seen_by_roughness(a, feature), seen_by_roughness(b, feature));
}

bool same_own_roughness(const Job &a, const Job &b) {
  return same_bits(a.material.own_ra_low_um, b.material.own_ra_low_um) &&
         same_bits(a.material.own_ra_high_um, b.material.own_ra_high_um);
}

bool same_for_sizes(const Job &a, const Job &b, std::size_t feature) {
  return same_bits(a.features[feature], b.features[feature]);
}

bool same_for_findings(const Job &a, const Job &b) {
  return same_bits(seen_by_findings(a), seen_by_findings(b));
}

} // namespace asperity
