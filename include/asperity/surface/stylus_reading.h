// What a roughness tester would show for a profile: filters, ends dropped, sections, parameters.
#pragma once

#include "asperity/surface/cutoff.h"
#include "asperity/surface/profile_parameters.h"

#include <span>

namespace asperity {

struct StylusReading {
  ProfileParameters parameters;
  MeasuringSettings settings;
  EvaluationFit
      fit; ///< fit.too_short(): the feature holds fewer than five sections; say so beside the number
  /// The samples lie farther apart than the standard allows: the S-filter has less or nothing to do.
  bool spacing_coarse = false;
};

/// Heights [mm] at even spacing along the trace, form already removed. With no room for one section after the
/// ends are dropped, fit.sections is 0 and the whole profile is read as one short section.
StylusReading read_profile(std::span<const double> heights_mm, double spacing_mm, ProfileEnds ends,
                           const MeasuringSettings &settings, Averaging averaging = Averaging::iso_21920);

} // namespace asperity
