// Numbers of one feature: sizes, flaws by their worst, roughness.
#include "job_numbers.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace asperity {

namespace {

struct Sink {
  std::vector<KeyNumber> &numbers;
  const std::string &name;

  void put(const std::string &key, std::string what, std::string unit, double value,
           Better better = Better::lower, double wanted = 0) const {
    asperity::put(numbers, {name + '/' + key, name, std::move(what), std::move(unit), value, better, wanted});
  }
};

/// "width along x" -> "width_along_x".
std::string key_of(std::string words) {
  std::replace(words.begin(), words.end(), ' ', '_');
  return words;
}

/// Neither asked for nor measured: nothing of the feature could be gauged.
bool is_unmeasured(const SizeMeasure &size) {
  const bool may_be_nought = size.what == "offset" || size.what == "error along the normal";
  return size.verdict == Verdict::not_measured ||
         (!may_be_nought && size.mean_mm == 0.0 && size.smallest_mm == 0.0 && size.largest_mm == 0.0);
}

void put_shape(const Sink &sink, const SizeMeasure &size, bool is_wall) {
  if (size.what == "diameter")
    sink.put("roundness_um", "roundness", "um", um_from_mm(size.roundness_mm));
  if (is_wall)
    sink.put(size.what == "diameter" ? "taper_um" : key_of(size.what) + "_taper_um",
             "taper of the " + size.what + ", bottom minus top", "um", um_from_mm(size.taper_mm),
             Better::nearer_wanted, 0.0);
  else
    sink.put(key_of(size.what) + "_spread_um", "spread of the " + size.what, "um",
             um_from_mm(size.largest_mm - size.smallest_mm));
}

void put_sizes(const Sink &sink, const FeatureResult &result, bool is_wall) {
  for (const SizeMeasure &size : result.sizes) {
    if (is_unmeasured(size))
      continue;
    sink.put(key_of(size.what) + "_mm", size.what, "mm", size.mean_mm,
             size.wanted ? Better::nearer_wanted : Better::neither,
             size.wanted ? size.wanted->nominal_mm : 0.0);
    put_shape(sink, size, is_wall);
  }
}

/// The leading size of the feature's worst finding of a kind; 0 where there is none.
double worst(const Outcome &outcome, std::size_t feature, FindingKind kind) {
  double most = 0.0;
  for (const Finding &finding : outcome.findings)
    if (finding.feature == static_cast<int>(feature) && finding.kind == kind && !finding.size.empty())
      most = std::max(most, std::abs(finding.size.front().value));
  return most;
}

void put_flaws(const Sink &sink, const Outcome &outcome, std::size_t i) {
  const auto of = [&](FindingKind kind) { return worst(outcome, i, kind); };
  if (std::holds_alternative<WallFeature>(outcome.job.features[i])) {
    sink.put("lip_mm", "lip at the base", "mm", of(FindingKind::base_lip));
    sink.put("witness_depth_um", "deepest witness line", "um", of(FindingKind::witness_line));
    sink.put("level_step_um", "largest step between levels", "um", of(FindingKind::level_step));
  } else {
    sink.put("scallop_um", "scallop height", "um", of(FindingKind::scallop));
  }
  sink.put("gouge_um", "deepest gouge", "um", um_from_mm(of(FindingKind::gouge)));
}

void put_roughness(const Sink &sink, const FeatureRoughness &roughness) {
  sink.put("ra_um", "Ra, geometry alone", "um", roughness.ra_um);
  sink.put("ra_high_um", "Ra with the material, upper end", "um", roughness.ra_band.high_um);
  sink.put("rz_um", "Rz, geometry alone", "um", roughness.rz_um);
  const auto both = [&](const Trace &trace, const std::string &key, const std::string &words) {
    if (trace.profile_mm.empty())
      return;
    const ProfileParameters &read = trace.reading.parameters;
    sink.put("ra_" + key + "_um", "Ra " + words, "um", um_from_mm(read.ra_mm));
    sink.put("rz_" + key + "_um", "Rz " + words, "um", um_from_mm(read.rz_mm));
  };
  both(roughness.along, "along", "along the lay");
  both(roughness.across, "across", "across the lay");
}

} // namespace

void put_feature_numbers(std::vector<KeyNumber> &numbers, const Outcome &outcome, std::size_t i,
                         const std::string &name) {
  const Sink sink{numbers, name};
  const FeatureResult &result = outcome.features[i];
  sink.put("uncut_percent", "surface no pass reaches", "%", 100.0 * (1.0 - result.cut_share));
  if (result.cut_share <= 0.0)
    return;
  put_sizes(sink, result, std::holds_alternative<WallFeature>(outcome.job.features[i]));
  put_flaws(sink, outcome, i);
  if (i < outcome.roughness.size() && outcome.roughness[i].measured)
    put_roughness(sink, outcome.roughness[i]);
}

} // namespace asperity
