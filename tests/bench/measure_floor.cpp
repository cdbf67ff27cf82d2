// Floor cases against plain stamping, and how their time grows.
#include "bench/measure.h"

#include "bench/floor_paths.h"
#include "bench/timing.h"

#include "asperity/sweep/sweep_floor.h"

#include <memory>

namespace asperity::bench {

namespace {

constexpr double kNmPerMm = 1e6;

/// One way to sweep one floor, timed again and again in turn with the others.
struct Contender {
  std::string name;
  FloorCase job;
  int threads = 1;
  double goal = 0;
  SweptPath path{};
  Seconds best{};
  double error_nm = -1;
};

FloorChart swept(const Contender &way) {
  FloorChart chart = chart_of(way.job);
  sweep_floor(chart, way.path, way.threads, Progress{});
  return chart;
}

void try_once(Contender &way) {
  FloorChart chart = chart_of(way.job);
  way.best.keep_least(time_of([&] { sweep_floor(chart, way.path, way.threads, Progress{}); }));
}

void prepare(std::vector<Contender> &ways) {
  for (Contender &way : ways)
    way.path = path_of(way.job);
}

Seconds stamped(const Effort &effort) {
  const FloorCase job;
  FloorChart chart = chart_of(job);
  Seconds whole = time_of([&] { stamp(chart, job, effort.stamp_stride); });
  whole.processor *= effort.stamp_stride;
  whole.wall *= effort.stamp_stride;
  return whole;
}

} // namespace

std::vector<Measured> measure_floor(const Effort &effort) {
  const FloorCase longs, tiny{.moves_per_line = 1000}, curved{.moves_per_line = 1000, .wave_mm = 0.35};
  std::vector<Contender> ways{{"floor, 200 sloped moves, 1 thread", longs, 1, 0},
                              {"floor, 200 sloped moves, 2 threads", longs, 2, 700},
                              {"the same in 200,000 tiny moves, 2 threads", tiny, 2, 400},
                              {"200,000 tiny moves along a curve, 2 threads", curved, 2, 150}};
  prepare(ways);
  Seconds baseline;
  for (int i = 0; i < effort.tries; ++i) {
    if (i % std::max(1, effort.tries / effort.baseline_tries) == 0)
      baseline.keep_least(stamped(effort));
    for (Contender &way : ways)
      try_once(way);
  }
  std::vector<Measured> rows;
  for (Contender &way : ways) {
    const int cells = way.job.moves_per_line > 1 ? effort.checked_cells / 10 : effort.checked_cells;
    const double time = way.threads == 1 ? way.best.processor : way.best.wall;
    rows.push_back({way.name, baseline.processor / time,
                    kNmPerMm * worst_error_mm(swept(way), way.job, cells), way.goal, false,
                    "stamping / sweep"});
  }
  rows.push_back({"two threads against one, floor, 200 moves", ways[0].best.wall / ways[1].best.wall, -1, 1.8,
                  false, "time of 1 / of 2"});
  return rows;
}

std::vector<Measured> measure_growth(const Effort &effort) {
  std::vector<Contender> ways{{"base", {}},
                              {"twice the moves on the same floor", {.lines = 400}, 1, 1.5},
                              {"half the cell", {.spacing_mm = 0.01}, 1, 3.4}};
  prepare(ways);
  for (int i = 0; i < effort.tries; ++i)
    for (Contender &way : ways)
      try_once(way);
  std::vector<Measured> rows;
  for (std::size_t i = 1; i < ways.size(); ++i)
    rows.push_back({ways[i].name, ways[i].best.processor / ways[0].best.processor, -1, ways[i].goal, true,
                    "time / time before"});
  return rows;
}

} // namespace asperity::bench
