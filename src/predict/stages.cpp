// One chart after the other under the bent cutter.
#include "stages.h"

#include "asperity/predict/chart_plan.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

namespace asperity {

bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress) {
  return std::holds_alternative<WallChart>(chart)
             ? sweep_wall(std::get<WallChart>(chart), swept, threads, progress)
             : sweep_floor(std::get<FloorChart>(chart), swept, threads, progress);
}

std::optional<Chart> swept_chart(const Job &job, const Feature &feature, const SweptPath &swept, int threads,
                                 const Progress &progress) {
  Chart chart = make_chart(job, feature, threads);
  const bool done = sweep_chart(chart, swept, threads, progress);
  return done ? std::optional(std::move(chart)) : std::nullopt;
}

} // namespace asperity
