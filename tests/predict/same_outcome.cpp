// Two predictions compared bit for bit.
#include "predict/same_outcome.h"

#include "same_bits.h"

namespace asperity::test {

namespace {

auto forces(const CutSample &s) {
  return std::tie(s.piece, s.u, s.time_s, s.speed_mm_per_s, s.axial_depth_mm, s.radial_depth_mm,
                  s.thickest_chip_mm, s.mean_force_N[0], s.mean_force_N[1], s.mean_force_N[2], s.peak_force_N,
                  s.tip_bend_mm, s.chip_temperature_C, s.power_W, s.in_contact, s.climb, s.plunging);
}

bool same_samples(const CutRecord &a, const CutRecord &b) {
  if (a.samples.size() != b.samples.size())
    return false;
  for (std::size_t i = 0; i < a.samples.size(); ++i)
    if (!fields::same_each(forces(a.samples[i]), forces(b.samples[i])))
      return false;
  return true;
}

bool same_chart(const Chart &a, const Chart &b) {
  if (a.index() != b.index())
    return false;
  return std::visit(
      [&b](const auto &chart) {
        const auto &other = std::get<std::decay_t<decltype(chart)>>(b);
        return same_bits(chart.envelope_mm, other.envelope_mm) && same_bits(chart.blank_mm, other.blank_mm) &&
               same_bits(chart.owner, other.owner);
      },
      a);
}

bool same_trace(const Trace &a, const Trace &b) {
  return same_bits(a.at_mm, b.at_mm) && same_bits(a.begin_mm, b.begin_mm) &&
         same_bits(a.profile_mm, b.profile_mm) && same_bits(a.waviness_mm, b.waviness_mm) &&
         same_bits(a.roughness_mm, b.roughness_mm) && same_bits(a.owner, b.owner) &&
         same_bits(a.cusp_mm, b.cusp_mm) && same_bits(a.reading.parameters, b.reading.parameters);
}

bool same_roughness(const FeatureRoughness &a, const FeatureRoughness &b) {
  return a.measured == b.measured && a.lay == b.lay && same_trace(a.along, b.along) &&
         same_trace(a.across, b.across) && same_trace(a.around, b.around) && same_bits(a.ra_um, b.ra_um) &&
         same_bits(a.rz_um, b.rz_um) && same_bits(a.ra_band, b.ra_band) && a.grade_low == b.grade_low &&
         a.grade_high == b.grade_high && same_bits(a.areal, b.areal) &&
         same_bits(a.worst_ra_um, b.worst_ra_um) && same_bits(a.worst_place_mm, b.worst_place_mm) &&
         a.worst_line == b.worst_line && same_bits(a.map_ra_um, b.map_ra_um) &&
         same_bits(a.skin_share, b.skin_share) && same_bits(a.skin_ra, b.skin_ra);
}

} // namespace

std::string difference(const Outcome &a, const Outcome &b) {
  if (!same_bits(a.path, b.path))
    return "path";
  if (!same_samples(a.cut, b.cut))
    return "samples of the cut";
  if (!same_bits(a.cut.swept, b.cut.swept))
    return "swept path";
  if (a.charts.size() != b.charts.size())
    return "number of charts";
  for (std::size_t i = 0; i < a.charts.size(); ++i) {
    const std::string name = name_of(a.job.features[i]);
    if (!same_chart(a.charts[i], b.charts[i]))
      return "chart of " + name;
    if (!same_roughness(a.roughness[i], b.roughness[i]))
      return "roughness of " + name;
  }
  if (!same_bits(a.features, b.features))
    return "sizes";
  if (!same_bits(a.findings, b.findings))
    return "findings";
  if (!same_bits(a.checks, b.checks) || a.notes != b.notes)
    return "checks and notes";
  return {};
}

} // namespace asperity::test
