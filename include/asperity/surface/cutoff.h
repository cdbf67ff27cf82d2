// Which cutoff and evaluation length a roughness is read with, and the old N grades.
#pragma once

#include "asperity/surface/gaussian_filter.h"

#include <optional>

namespace asperity {

/// ISO 21920-3:2021 setting classes; each is one row of ISO 3274's bandwidths too.
enum class SettingClass { sc1, sc2, sc3, sc4, sc5 };

struct MeasuringSettings {
  SettingClass setting_class = SettingClass::sc3;
  double cutoff_mm = 0.8;           ///< lc; section (sampling) length as well
  double short_mm = 0.0025;         ///< ls
  double evaluation_mm = 4;         ///< five sections
  double tip_radius_um = 2;         ///< largest
  double point_spacing_mm = 0.0005; ///< largest

  Bandwidth bandwidth() const { return {cutoff_mm, short_mm}; }
};

MeasuringSettings settings_of(SettingClass setting_class);

/// ISO 4288:1996, non-periodic profiles, by the expected Ra or Rz. Values outside the table get its end rows.
MeasuringSettings settings_by_ra(double ra_um);
MeasuringSettings settings_by_rz(double rz_um);
/// ISO 4288:1996, periodic profiles, by the mean width of the profile elements: keeps pitch / cutoff <= 0.52.
MeasuringSettings settings_by_rsm(double rsm_mm);
/// ISO 21920-3:2021 by the upper tolerance limit on the drawing (read in one secondary source only).
MeasuringSettings settings_by_ra_limit(double ra_um);
MeasuringSettings settings_by_rz_limit(double rz_um);
/// Largest stylus tip: class 3 allows 5 um where Ra > 0.5 um or Rz > 3 um (the Ra half is from memory).
double largest_tip_radius_um(SettingClass setting_class, double ra_um, double rz_um);

/// Smallest grade N1..N12 whose limit is not exceeded (a grade is an upper limit: 7.4 um is N10); nothing
/// above 50 um. [ISO 1302:1992; grades dropped in ISO 1302:2002]
std::optional<int> roughness_grade(double ra_um);
/// 1..12.
double grade_limit_um(int grade);

/// How much of an evaluation length a feature holds.
struct EvaluationFit {
  int wanted_sections = 5;
  int sections = 0;      ///< whole ones that fit; 0 = shorter than one cutoff
  double dropped_mm = 0; ///< at each end, for the filter to settle; none on closed profiles
  bool too_short() const { return sections < wanted_sections; }
};
/// An open profile loses half a cutoff at each end [common practice, no published source].
EvaluationFit evaluation_fit(double length_mm, ProfileEnds ends, const MeasuringSettings &settings);

} // namespace asperity
