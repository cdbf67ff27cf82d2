// The roughness of a whole feature: read along and across the lay at sampled places, with its material band.
#pragma once

#include "asperity/chart/chart.h"
#include "asperity/surface/areal_parameters.h"
#include "asperity/surface/material_band.h"
#include "asperity/surface/stylus_reading.h"
#include "asperity/texture/floor_texture.h"

#include <string>
#include <vector>

namespace asperity {

/// One trace as a stylus would run it.
struct Trace {
  std::string along;            ///< "s", "z", "x" or "y"
  double at_mm = 0;             ///< the other coordinate
  double begin_mm = 0, spacing_mm = 0;
  bool closed = false;          ///< runs once round a closed wall
  std::vector<double> profile_mm;   ///< residual e along the trace, form removed
  std::vector<double> waviness_mm;  ///< mean line
  std::vector<double> roughness_mm; ///< profile - waviness (after the S-filter)
  std::vector<std::uint32_t> owner; ///< TimedPath piece under each point; kNobody = uncut
  StylusReading reading;
  double cusp_mm = 0;           ///< unfiltered cusp height along the trace: greatest height of single marks
};

/// What is asked of a trace; unset values are chosen by the standards' tables.
struct TraceRequest {
  std::string along = "s";
  double at_mm = 0;
  double from_mm = 0;
  std::optional<double> length_mm;     ///< unset: the whole closed outline or the whole feature
  std::optional<double> cutoff_mm;
  Averaging averaging = Averaging::iso_21920;
};

/// Lays a trace on a feature, tooth marks included. Empty profile where the request misses the feature; `why` says so.
Trace lay_trace(const Feature &feature, const Chart &chart, const TextureSource &source, const TraceRequest &request,
                int threads, std::string &why);

struct FeatureRoughness {
  bool measured = false;           ///< false: nothing of the feature is cut
  std::string lay;                 ///< in words: "upright lines, 90 deg to s", with angle
  double lay_deg = 0;              ///< direction of the dominant grain, from the s (or x) axis
  Trace along, across;             ///< along and across the lay, at a usual place
  double ra_um = 0, rz_um = 0;     ///< geometric floor, the larger of both directions
  RaBand ra_band;                  ///< with the material's own contribution
  std::optional<int> grade_low, grade_high; ///< N grades of the band
  ArealParameters areal;           ///< over a patch with marks
  double worst_ra_um = 0;          ///< local Ra at the worst place
  Vec3 worst_place_mm{0.0};
  std::uint32_t worst_line = 0;    ///< program line that made it
  /// Local Ra [um] on a coarse map over the chart (row-major, columns x rows), NaN where nothing is cut.
  std::size_t map_columns = 0, map_rows = 0;
  std::vector<float> map_ra_um;
  double skin_share = 0;           ///< of the surface, uncut printed skin
  RaBand skin_ra;                  ///< its own estimate from the layer height
};

FeatureRoughness roughness_of(const Feature &feature, const Chart &chart, const TextureSource &source, int threads,
                              const Progress &progress);

} // namespace asperity
