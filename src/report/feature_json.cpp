// One feature's part of the JSON.
#include "feature_json.h"

#include "chart_profile.h"
#include "json_value.h"
#include "wanted.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

using nlohmann::json;

/// Enough to draw a profile as wide as a screen.
constexpr std::size_t kMostProfilePoints = 400;
/// Profiles are written to a thousandth of their unit: 1 um along, 1 nm deep.
constexpr double kProfileParts = 1000.0;

std::string snake(std::string_view words) {
  std::string out(words);
  for (char &c : out)
    if (c == ' ')
      c = '_';
  return out;
}

json size_json(const SizeMeasure &size) {
  json out = {{"what", size.what},
              {"mean_mm", number(size.mean_mm)},
              {"smallest_mm", number(size.smallest_mm)},
              {"largest_mm", number(size.largest_mm)},
              {"roundness_mm", number(size.roundness_mm)},
              {"taper_mm", number(size.taper_mm)},
              {"wanted", nullptr},
              {"verdict", snake(verdict_text(size.verdict))}};
  if (size.wanted)
    out["wanted"] = {{"nominal_mm", number(size.wanted->nominal_mm)},
                     {"lower_mm", number(size.wanted->lower_mm)},
                     {"upper_mm", number(size.wanted->upper_mm)}};
  return out;
}

json optional_number(const std::optional<double> &value) { return value ? number(*value) : json(); }

json finish_json(const FinishWanted &finish) {
  return {{"ra_um", optional_number(finish.ra_um)},
          {"lip_mm", optional_number(finish.lip_mm)},
          {"witness_depth_um", optional_number(finish.witness_depth_um)}};
}

json residual_json(const ResidualStatistics &r) {
  return {{"cells", r.cells},
          {"cut_cells", r.cut_cells},
          {"mean_um", number(r.mean_um)},
          {"standard_deviation_um", number(r.deviation_um)},
          {"lowest_um", number(r.lowest_um)},
          {"highest_um", number(r.highest_um)},
          {"percentile_1_um", number(r.percentile_1_um)},
          {"median_um", number(r.median_um)},
          {"percentile_99_um", number(r.percentile_99_um)}};
}

json profile_json(const Profile &profile, std::string_view axis) {
  return {{std::string(axis) + "_mm", numbers(profile.place_mm, kProfileParts)},
          {"mean_residual_um", numbers(profile.mean_um, kProfileParts)},
          {"cut_share", numbers(profile.cut_share, kProfileParts)}};
}

void add_chart(json &out, const Chart &chart) {
  const bool is_wall = std::holds_alternative<WallChart>(chart);
  const ChartProfiles profiles = chart_profiles(chart, kMostProfilePoints);
  out["residual"] = residual_json(residual_statistics(chart));
  out["profile_along"] = profile_json(profiles.across, is_wall ? "s" : "x");
  out["profile_up"] = profile_json(profiles.up, is_wall ? "z" : "y");
  if (const auto *wall = std::get_if<WallChart>(&chart))
    out["chart"] = {{"kind", "wall"}, {"columns", wall->columns()}, {"rows", wall->rows()}};
  else if (const auto *floor = std::get_if<FloorChart>(&chart))
    out["chart"] = {{"kind", "floor"},
                    {"columns", floor->nx},
                    {"rows", floor->ny},
                    {"spacing_mm", number(floor->spacing_mm)}};
}

json trace_json(const Trace &trace) {
  const ProfileParameters &p = trace.reading.parameters;
  const auto um = [](double mm) { return number(mm * 1e3); };
  return {{"along", trace.along},
          {"at_mm", number(trace.at_mm)},
          {"begin_mm", number(trace.begin_mm)},
          {"length_mm", number(trace.spacing_mm * static_cast<double>(trace.profile_mm.size()))},
          {"closed", trace.closed},
          {"cutoff_mm", number(trace.reading.settings.cutoff_mm)},
          {"sections", p.sections},
          {"too_short", trace.reading.fit.too_short()},
          {"ra_um", um(p.ra_mm)},
          {"rq_um", um(p.rq_mm)},
          {"rz_um", um(p.rz_mm)},
          {"rt_um", um(p.rt_mm)},
          {"rsm_mm", number(p.rsm_mm)},
          {"rsk", number(p.rsk)},
          {"rku", number(p.rku)},
          {"cusp_um", um(trace.cusp_mm)}};
}

/// A closed trace read over its whole length, with what the filter calls waviness.
json around_json(const Trace &trace) {
  if (trace.profile_mm.empty())
    return nullptr;
  const ProfileParameters whole = profile_parameters(trace.roughness_mm, trace.spacing_mm);
  const auto [low, high] = std::minmax_element(trace.waviness_mm.begin(), trace.waviness_mm.end());
  json out = trace_json(trace);
  out["whole_ra_um"] = number(whole.ra_mm * 1e3);
  out["whole_rt_um"] = number(whole.rt_mm * 1e3);
  out["whole_wt_um"] = number((*high - *low) * 1e3);
  return out;
}

json band_json(const RaBand &band) { return {{"low", number(band.low_um)}, {"high", number(band.high_um)}}; }

json roughness_json(const FeatureRoughness &r) {
  if (!r.measured)
    return nullptr;
  json map = json::array();
  for (const float ra : r.map_ra_um)
    map.push_back(number(std::round(static_cast<double>(ra) * kProfileParts) / kProfileParts));
  return {{"lay", r.lay},
          {"lay_deg", number(r.lay_deg)},
          {"along_lay", trace_json(r.along)},
          {"across_lay", trace_json(r.across)},
          {"around", around_json(r.around)},
          {"geometric_ra_um", number(r.ra_um)},
          {"geometric_rz_um", number(r.rz_um)},
          {"ra_band_um", band_json(r.ra_band)},
          {"n_grade_low", r.grade_low ? json(*r.grade_low) : json()},
          {"n_grade_high", r.grade_high ? json(*r.grade_high) : json()},
          {"sa_um", number(r.areal.sa_mm * 1e3)},
          {"sq_um", number(r.areal.sq_mm * 1e3)},
          {"sz_um", number(r.areal.sz_mm * 1e3)},
          {"worst_local_ra_um", number(r.worst_ra_um)},
          {"worst_place_mm", place(r.worst_place_mm)},
          {"worst_line", r.worst_line},
          {"uncut_skin_share", number(r.skin_share)},
          {"uncut_skin_ra_um", r.skin_share > 0.0 ? band_json(r.skin_ra) : json()},
          {"local_ra_map", {{"columns", r.map_columns}, {"rows", r.map_rows}, {"ra_um", std::move(map)}}}};
}

} // namespace

json feature_json(const Outcome &outcome, std::size_t index) {
  const Feature &feature = outcome.job.features[index];
  json out = {{"name", name_of(feature)},
              {"kind", kind_text(feature)},
              {"finish_wanted", finish_json(finish_of(feature))}};
  out["sizes"] = json::array();
  if (index < outcome.features.size()) {
    out["cut_share"] = number(outcome.features[index].cut_share);
    for (const SizeMeasure &size : outcome.features[index].sizes)
      out["sizes"].push_back(size_json(size));
  }
  if (index < outcome.roughness.size())
    out["roughness"] = roughness_json(outcome.roughness[index]);
  if (index < outcome.charts.size())
    add_chart(out, outcome.charts[index]);
  return out;
}

} // namespace asperity
