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
  std::string along; ///< "s", "z", "x" or "y"
  double at_mm = 0;  ///< the other coordinate
  double begin_mm = 0, spacing_mm = 0;
  bool closed = false;              ///< runs once round a closed wall
  std::vector<double> profile_mm;   ///< residual e along the trace, form removed
  std::vector<double> waviness_mm;  ///< mean line of the profile after the S-filter
  std::vector<double> roughness_mm; ///< what the S-filter leaves of the profile, minus the waviness
  std::vector<std::uint32_t> owner; ///< TimedPath piece under each point; kNobody = uncut
  StylusReading reading;
  /// Greatest height, unfiltered, of a ridge above the higher of the two hollows beside it.
  double cusp_mm = 0;
};

/// What is asked of a trace. Walls: along "s" (at a height z) or "z" (at an arc length s); floors and domes:
/// along "x" (at y) or "y" (at x). Part frame.
struct TraceRequest {
  std::string along = "s";
  double at_mm = 0;
  double from_mm = 0; ///< place along the trace where it begins; only with length_mm
  /// Unset: the whole closed outline, or the whole feature. An outline too long for 200,000 points: 4.8 mm.
  std::optional<double> length_mm;
  /// Unset: the longer of the cutoffs that ISO 4288:1996 gives for the tooth marks' pitch (as RSm) and for
  /// Ra, which is read at 0.8 mm first; it grows until the Ra read with it asks for no longer one.
  std::optional<double> cutoff_mm;
  /// Of the tooth marks on the feature, where it is known already.
  std::optional<double> pitch_mm = std::nullopt;
  Averaging averaging = Averaging::iso_21920;
};

/// Lays a trace on a feature, tooth marks included: points a twelfth of the marks' pitch apart, 5 um at most;
/// round a wall over up to 6 mm, 0.5 um as ISO 3274 asks. Form off, by what is cut: the mean, on open traces
/// the least-squares line. On floors the longest stretch inside the feature is taken. Empty profile where the
/// request misses the feature (`why` says so) or when cancelled (it says nothing). Short features: see
/// reading.fit.
Trace lay_trace(const Feature &feature, const Chart &chart, const TextureSource &source,
                const TraceRequest &request, int threads, std::string &why,
                const Progress &progress = Progress());

struct FeatureRoughness {
  bool measured = false; ///< false: nothing of the feature is cut
  std::string lay;       ///< in words: "upright lines, 90 deg to s", with angle
  double lay_deg = 0;    ///< direction of the dominant grain, from the s (or x) axis
  /// Along and across the lay, six cutoffs long, at a usual place: on walls at mid height, a quarter of the
  /// outline from the roughest place; on floors where the local Ra is the median. Uncut ground is avoided
  /// where possible.
  Trace along, across;
  /// Walls: once round the whole outline at the same height, through everything that stands there. Else
  /// empty.
  Trace around;
  double ra_um = 0, rz_um = 0;              ///< geometric floor, the larger of both directions
  RaBand ra_band;                           ///< with the material's own contribution
  std::optional<int> grade_low, grade_high; ///< N grades of the band
  ArealParameters areal; ///< over 3 x 3 mm with marks there, minus its mean surface at 0.8 mm
  /// Local Ra at the worst place: mean deviation of the smooth sweep from its mean surface (0.8 mm) over 0.8
  /// mm squares and the Ra of the single marks of the pass that made it, by root of sum of squares.
  double worst_ra_um = 0;
  Vec3 worst_place_mm{0.0};
  std::uint32_t worst_line = 0; ///< program line that made it
  /// Local Ra [um] on a coarse map over the chart (row-major, columns x rows), NaN where nothing is cut.
  std::size_t map_columns = 0, map_rows = 0;
  std::vector<float> map_ra_um;
  double skin_share = 0; ///< of the surface, uncut printed skin
  RaBand skin_ra;        ///< its own estimate from the layer height; walls only, else 0
};

/// Most memory that reading it takes [bytes], of a chart of that size and, round a wall, a path of so many
/// pieces.
double roughness_bytes(double columns, double rows, double spacing_mm, double pieces_round);

FeatureRoughness roughness_of(const Feature &feature, const Chart &chart, const TextureSource &source,
                              int threads, const Progress &progress);

} // namespace asperity
