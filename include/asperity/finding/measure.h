// What a gauge would read on a feature: sizes, roundness, taper.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/chart/wall_chart.h"
#include "asperity/finding/wall_references.h"
#include "asperity/job/feature.h"

#include <optional>
#include <string>
#include <vector>

namespace asperity {

enum class Verdict { not_asked, met, too_small, too_large, not_measured };

/// One size [mm]. Taken over cells a pass has cut; a lip is not part of it.
struct SizeMeasure {
  std::string what; ///< "diameter", "width along x", "height", "offset"
  double mean_mm = 0, smallest_mm = 0, largest_mm = 0;
  double roundness_mm =
      0; ///< circle: largest minus smallest radius about the least-squares centre, at the worst height
  double taper_mm = 0; ///< wall: size at the bottom of the cut zone minus size at its top
  std::optional<SizeWanted> wanted;
  Verdict verdict = Verdict::not_asked;
};

/// The reference is that of the chart; null: it is worked out.
std::vector<SizeMeasure> measure_wall(const WallFeature &wall, const WallChart &chart,
                                      const WallReference *reference = nullptr);
std::vector<SizeMeasure> measure_floor(const FloorFeature &floor, const FloorChart &chart);
std::vector<SizeMeasure> measure_dome(const DomeFeature &dome, const FloorChart &chart);

} // namespace asperity
