// The heights under a trace before any filter: where it runs, what stands there, who cut it.
#pragma once

#include "asperity/texture/feature_roughness.h"

namespace asperity {

struct TraceLine {
  double begin_mm = 0, spacing_mm = 0;
  bool closed = false;
  std::vector<double> height_mm;
  std::vector<std::uint32_t> owner;
  double pitch_mm = 0; ///< of tooth marks along it, where it runs along the feed
};

/// Points a trace may have; a longer closed one is cut down to an evaluation length.
inline constexpr std::size_t kMostTracePoints = 200'000;
/// Samples a tooth mark, and the coarsest spacing of a trace [mm].
inline constexpr double kPointsPerMark = 12, kCoarsest_mm = 0.005;

/// Empty when cancelled.
TraceLine wall_line(const WallFeature &wall, const WallChart &chart, const TextureSource &source,
                    const TraceRequest &request, int threads, const Progress &progress, std::string &why);
TraceLine floor_line(const Feature &feature, const FloorChart &chart, const TextureSource &source,
                     const TraceRequest &request, int threads, const Progress &progress, std::string &why);

/// Shortest distance between marks of the passes that cut the chart, at programmed feed; 0 where there are
/// none.
double floor_pitch_mm(const FloorChart &chart, const TextureSource &source);

} // namespace asperity
