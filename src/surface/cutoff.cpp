// Tables of cutoffs, setting classes and grades.
#include "asperity/surface/cutoff.h"

#include "asperity/surface/profile_parameters.h"

#include <algorithm>
#include <array>
#include <cassert>

namespace asperity {

namespace {

/// ISO 3274:1996 bandwidths, the same as the setting classes of ISO 21920-3:2021. ls never goes below 2.5 um.
constexpr std::array<MeasuringSettings, 5> kSettings = {{
    {SettingClass::sc1, 0.08, 0.0025, 0.4, 2, 0.0005},
    {SettingClass::sc2, 0.25, 0.0025, 1.25, 2, 0.0005},
    {SettingClass::sc3, 0.8, 0.0025, 4, 2, 0.0005},
    {SettingClass::sc4, 2.5, 0.008, 12.5, 5, 0.0015},
    {SettingClass::sc5, 8, 0.025, 40, 10, 0.005},
}};

/// Upper ends of the first four rows; the fifth row takes the rest.
using RowEnds = std::array<double, 4>;
constexpr RowEnds kRaEnds_um = {0.02, 0.1, 2, 10};       // ISO 4288:1996 and ISO 21920-3:2021
constexpr RowEnds kRzEnds_um = {0.1, 0.5, 10, 50};       // ISO 4288:1996
constexpr RowEnds kRzLimitEnds_um = {0.16, 0.8, 16, 80}; // ISO 21920-3:2021
constexpr RowEnds kRsmEnds_mm = {0.04, 0.13, 0.4, 1.3};  // ISO 4288:1996

const MeasuringSettings &row_of(const RowEnds &ends, double value) {
  const auto row = std::lower_bound(ends.begin(), ends.end(), value); // a row's upper end belongs to it
  return kSettings[static_cast<std::size_t>(row - ends.begin())];
}

constexpr std::array<double, 12> kGradeLimits_um = {0.025, 0.05, 0.1, 0.2,  0.4, 0.8,
                                                    1.6,   3.2,  6.3, 12.5, 25,  50};

} // namespace

MeasuringSettings settings_of(SettingClass setting_class) {
  return kSettings[static_cast<std::size_t>(setting_class)];
}

MeasuringSettings settings_by_ra(double ra_um) { return row_of(kRaEnds_um, ra_um); }
MeasuringSettings settings_by_rz(double rz_um) { return row_of(kRzEnds_um, rz_um); }
MeasuringSettings settings_by_rsm(double rsm_mm) { return row_of(kRsmEnds_mm, rsm_mm); }
MeasuringSettings settings_by_ra_limit(double ra_um) { return row_of(kRaEnds_um, ra_um); }
MeasuringSettings settings_by_rz_limit(double rz_um) { return row_of(kRzLimitEnds_um, rz_um); }

double largest_tip_radius_um(SettingClass setting_class, double ra_um, double rz_um) {
  constexpr double kBluntFromRa_um = 0.5, kBluntFromRz_um = 3, kBluntTip_um = 5;
  if (setting_class == SettingClass::sc3 && (ra_um > kBluntFromRa_um || rz_um > kBluntFromRz_um))
    return kBluntTip_um;
  return settings_of(setting_class).tip_radius_um;
}

std::optional<int> roughness_grade(double ra_um) {
  const auto limit = std::lower_bound(kGradeLimits_um.begin(), kGradeLimits_um.end(), ra_um);
  if (limit == kGradeLimits_um.end())
    return std::nullopt;
  return static_cast<int>(limit - kGradeLimits_um.begin()) + 1;
}

double grade_limit_um(int grade) {
  assert(grade >= 1 && grade <= static_cast<int>(kGradeLimits_um.size()));
  return kGradeLimits_um[static_cast<std::size_t>(grade - 1)];
}

EvaluationFit evaluation_fit(double length_mm, ProfileEnds ends, const MeasuringSettings &settings) {
  EvaluationFit fit;
  fit.wanted_sections = sections_that_fit(settings.evaluation_mm, settings.cutoff_mm);
  fit.dropped_mm = ends == ProfileEnds::open ? settings.cutoff_mm / 2.0 : 0.0;
  fit.sections = sections_that_fit(length_mm - 2.0 * fit.dropped_mm, settings.cutoff_mm, fit.wanted_sections);
  return fit;
}

} // namespace asperity
