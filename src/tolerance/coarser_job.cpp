// Sets the chart spacings that would otherwise be chosen for each feature.
#include "asperity/tolerance/coarser_job.h"

#include "asperity/predict/chart_plan.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

Job coarser_job(const Job &job, double coarser) {
  Job result = job;
  double wall_mm = std::numeric_limits<double>::infinity(), floor_mm = wall_mm;
  for (const Feature &feature : job.features) {
    double &finest = std::holds_alternative<WallFeature>(feature) ? wall_mm : floor_mm;
    finest = std::min(finest, chart_spacing_mm(job, feature));
  }
  if (std::isfinite(wall_mm))
    result.resolution.wall_spacing_mm = wall_mm * coarser;
  if (std::isfinite(floor_mm))
    result.resolution.floor_spacing_mm = floor_mm * coarser;
  return result;
}

} // namespace asperity
