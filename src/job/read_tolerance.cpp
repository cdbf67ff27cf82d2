// [uncertainty]: how far what the job states may be from the truth.
#include "job_sections.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr Range kUncertain_mm{0, 5};
constexpr Range kUncertainShare{0, 9};
constexpr std::string_view kPractice = "common practice, no published source";

/// A default with its reason. Where the value itself is only a default, it is worth less.
struct Default {
  double expanded = 0;
  std::string_view source;
};

bool is_default(const Job &job, std::string_view key) {
  return std::any_of(job.defaults_used.begin(), job.defaults_used.end(),
                     [key](const std::string &each) { return each.find(key) != std::string::npos; });
}

Default runout_default(const Job &job) {
  if (is_default(job, ".runout_mm ="))
    return {1.5, "runout left to its default; spring collets 0.008 to 0.05 mm, from memory"};
  return {0.3, "common practice, no published source: an indicator read to a few um"};
}

Default stiffness_default(const Job &job) {
  if (is_default(job, "machine.stiffness_xy_N_per_um ="))
    return {1.5, "stiffness left to its default; gantry routers 0.2 to 1.2 N/um, from memory"};
  return {0.3, "common practice, no published source: a spring scale and a dial gauge"};
}

Default cutting_default(const Job &job) {
  if (job.material.calibrated)
    return {0.15, kPractice};
  return {0.5, "table values of plastics and wood, right to half: no published milling coefficients"};
}

Default edge_default(const Job &job) {
  if (job.material.calibrated)
    return {0.2, kPractice};
  return {1.0, "sharp to worn edge 2 to 2.5 times, from memory"};
}

Default blank_default(const Job &job) {
  if (job.blank.layer_height_mm > 0.0)
    return {0.15, "printed blank, 0.1 to 0.2 mm, from memory"};
  return {0.1, kPractice};
}

struct UncertaintyKey {
  std::string_view name;
  double Uncertainty::*place;
  Range range;
  Default (*fallback)(const Job &);
};

Default zero_default(const Job &) {
  return {0.05, "common practice, no published source: paper or edge finder"};
}
Default diameter_default(const Job &) {
  return {0.025, "half of h10 for 3 to 6 mm, 0.048 mm (ISO 286-2, from memory)"};
}

const UncertaintyKey kKeys[] = {
    {"x_zero_mm", &Uncertainty::x_zero_mm, kUncertain_mm, zero_default},
    {"y_zero_mm", &Uncertainty::y_zero_mm, kUncertain_mm, zero_default},
    {"z_zero_mm", &Uncertainty::z_zero_mm, kUncertain_mm, zero_default},
    {"cutter_diameter_mm", &Uncertainty::cutter_diameter_mm, kUncertain_mm, diameter_default},
    {"runout_share", &Uncertainty::runout_share, kUncertainShare, runout_default},
    {"cutting_force_share", &Uncertainty::cutting_force_share, kUncertainShare, cutting_default},
    {"edge_force_share", &Uncertainty::edge_force_share, kUncertainShare, edge_default},
    {"stiffness_share", &Uncertainty::stiffness_share, kUncertainShare, stiffness_default},
    {"blank_allowance_mm", &Uncertainty::blank_allowance_mm, kUncertain_mm, blank_default},
};

} // namespace

Uncertainty read_uncertainty(KeyReader &reader, const Job &job) {
  Uncertainty uncertainty;
  for (const UncertaintyKey &key : kKeys) {
    const Default fallback = key.fallback(job);
    const auto value = reader.number(key.name, key.range, Need::optional);
    uncertainty.*key.place = value.value_or(fallback.expanded);
    uncertainty.source[std::string(key.name)] =
        value ? reader.source_of(key.name) : "default: " + std::string(fallback.source);
  }
  return uncertainty;
}

} // namespace asperity
