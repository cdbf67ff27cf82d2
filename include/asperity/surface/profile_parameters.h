// Height and spacing parameters of a profile, after ISO 21920-2:2021 or ISO 4287:1997 with ISO 4288:1996.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

/// iso_21920: Ra, Rq, Rsk, Rku over the whole evaluation length. iso_4287: each over one sampling length,
/// then their mean. Rz, Rp, Rv are means over the sections in both; Rt spans the evaluation length in both.
enum class Averaging { iso_21920, iso_4287 };

struct SectionPlan {
  double section_mm = 0.8; ///< section length lsc = sampling length lr = cutoff
  int sections = 5;        ///< nsc
  Averaging averaging = Averaging::iso_21920;
};

/// Heights are measured from z = 0, the mean line.
struct ProfileParameters {
  double ra_mm = 0, rq_mm = 0;
  double rp_mm = 0;  ///< highest peak of a section, mean over the sections
  double rv_mm = 0;  ///< deepest valley of a section, positive, mean over the sections
  double rz_mm = 0;  ///< rp + rv
  double rt_mm = 0;  ///< highest peak plus deepest valley over the evaluation length
  double rzx_mm = 0; ///< largest peak to valley of any one section
  double rsk = 0;    ///< 0 when flat
  double rku = 0;    ///< Gaussian heights give 3; 0 when flat
  double rsm_mm = 0; ///< mean width of a profile element; 0 when no whole element lies in the length
  int sections = 0;  ///< evaluated
};

/// Whole sections in a length, `wanted` at most; a length a hair short by rounding counts.
int sections_that_fit(double length_mm, double section_mm, int wanted = 5);

/// Of the middle plan.sections sections of the profile, or as many as fit; a profile shorter than one section
/// is one section. An empty profile gives zeros with 0 sections.
ProfileParameters profile_parameters(std::span<const double> roughness_mm, double spacing_mm,
                                     const SectionPlan &plan);
/// The whole profile as one section.
ProfileParameters profile_parameters(std::span<const double> roughness_mm, double spacing_mm);

/// Heights minus their arithmetic mean: the mean line of an unfiltered level profile.
std::vector<double> about_mean(std::span<const double> heights_mm);

/// A profile element is a peak with the valley beside it, between crossings of the mean line. Peaks not
/// higher than peak_mm, valleys not deeper than valley_mm and either narrower than width_mm belong to their
/// neighbour.
struct Discrimination {
  double peak_mm = 0, valley_mm = 0, width_mm = 0;
};
/// RSm [mm]: searched from left to right and from right to left, all widths averaged; 0 without an element.
double mean_element_width_mm(std::span<const double> roughness_mm, double spacing_mm,
                             const Discrimination &least);

} // namespace asperity
