// Height parameters of a profile, over its sections and over the evaluation length.
#include "asperity/surface/profile_parameters.h"

#include "moments.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace asperity {

namespace {

/// Where each section begins, and where the last one ends [samples].
std::vector<std::size_t> section_bounds(std::size_t samples, double spacing_mm, const SectionPlan &plan) {
  const double length_mm = static_cast<double>(samples) * spacing_mm;
  const int sections = sections_that_fit(length_mm, plan.section_mm, plan.sections);
  if (sections == 0)
    return {0, samples};
  const double section_samples =
      std::min(plan.section_mm / spacing_mm, static_cast<double>(samples) / sections);
  const double start = (static_cast<double>(samples) - section_samples * sections) / 2.0;
  std::vector<std::size_t> bounds;
  for (int i = 0; i <= sections; ++i)
    bounds.push_back(std::min(samples, static_cast<std::size_t>(std::lround(start + section_samples * i))));
  return bounds;
}

void add_section(const Moments &section, ProfileParameters &sum) {
  sum.ra_mm += section.mean_absolute();
  sum.rq_mm += section.root_mean_square();
  sum.rsk += section.skewness();
  sum.rku += section.kurtosis();
  sum.rp_mm += section.highest;
  sum.rv_mm -= section.lowest;
  sum.rzx_mm = std::max(sum.rzx_mm, section.highest - section.lowest);
}

void divide_by_sections(ProfileParameters &sum) {
  for (double *value : {&sum.ra_mm, &sum.rq_mm, &sum.rsk, &sum.rku, &sum.rp_mm, &sum.rv_mm})
    *value /= sum.sections;
  sum.rz_mm = sum.rp_mm + sum.rv_mm;
}

/// 10 % of the height and 1 % of the section length. [ISO 4287:1997, 4.3.1; ISO 21920-2 takes peaks and
/// valleys each by its own height]
Discrimination least_element(const ProfileParameters &p, const SectionPlan &plan) {
  constexpr double kHeightShare = 0.1, kSpacingShare = 0.01;
  const bool by_rz = plan.averaging == Averaging::iso_4287;
  return {kHeightShare * (by_rz ? p.rz_mm : p.rp_mm), kHeightShare * (by_rz ? p.rz_mm : p.rv_mm),
          kSpacingShare * plan.section_mm};
}

} // namespace

int sections_that_fit(double length_mm, double section_mm, int wanted) {
  constexpr double kRounding = 1e-9;
  if (section_mm <= 0 || length_mm <= 0)
    return 0;
  return static_cast<int>(
      std::min(static_cast<double>(wanted), std::floor(length_mm / section_mm + kRounding)));
}

ProfileParameters profile_parameters(std::span<const double> roughness_mm, double spacing_mm,
                                     const SectionPlan &plan) {
  assert(spacing_mm > 0);
  ProfileParameters result;
  if (roughness_mm.empty())
    return result;

  // Each section by itself, and all of them together.
  const std::vector<std::size_t> bounds = section_bounds(roughness_mm.size(), spacing_mm, plan);
  Moments whole;
  for (std::size_t i = 0; i + 1 < bounds.size(); ++i) {
    Moments section;
    for (const double z : roughness_mm.subspan(bounds[i], bounds[i + 1] - bounds[i]))
      section.add(z);
    if (section.count == 0)
      continue;
    add_section(section, result);
    ++result.sections;
    whole.add(section);
  }
  divide_by_sections(result);

  // What belongs to the evaluation length as a whole.
  result.rt_mm = whole.highest - whole.lowest;
  if (plan.averaging == Averaging::iso_21920) {
    result.ra_mm = whole.mean_absolute();
    result.rq_mm = whole.root_mean_square();
    result.rsk = whole.skewness();
    result.rku = whole.kurtosis();
  }
  const auto evaluated = roughness_mm.subspan(bounds.front(), bounds.back() - bounds.front());
  result.rsm_mm = mean_element_width_mm(evaluated, spacing_mm, least_element(result, plan));
  return result;
}

ProfileParameters profile_parameters(std::span<const double> roughness_mm, double spacing_mm) {
  return profile_parameters(roughness_mm, spacing_mm,
                            {static_cast<double>(roughness_mm.size()) * spacing_mm, 1, Averaging::iso_21920});
}

std::vector<double> about_mean(std::span<const double> heights_mm) {
  double sum = 0;
  for (const double z : heights_mm)
    sum += z;
  const double mean = heights_mm.empty() ? 0.0 : sum / static_cast<double>(heights_mm.size());
  std::vector<double> level(heights_mm.begin(), heights_mm.end());
  for (double &z : level)
    z -= mean;
  return level;
}

} // namespace asperity
