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
  double merge_within_mm = kSameLine_mm;
  double goal = 0;  ///< with two threads
  double guard = 0; ///< with one
  double most_error_nm = 1.0;
  SweptPath path{};
  Seconds one{}, two{};
};

void try_once(Contender &way, int threads, FloorChart &chart) {
  const FloorChart fresh = chart_of(way.job);
  chart = fresh;
  (threads == 1 ? way.one : way.two).keep_least(time_of([&] {
    sweep_floor(chart, way.path, threads, Progress{}, way.merge_within_mm);
  }));
}

Seconds stamped(const Effort &effort) {
  const FloorCase job;
  FloorChart chart = chart_of(job);
  Seconds whole = time_of([&] { stamp(chart, job, effort.stamp_stride); });
  whole.processor *= effort.stamp_stride;
  whole.wall *= effort.stamp_stride;
  return whole;
}

double error_nm(Contender &way, const Effort &effort) {
  FloorChart chart;
  try_once(way, 1, chart);
  const int cells = way.job.moves_per_line > 1 ? effort.checked_cells / 10 : effort.checked_cells;
  return kNmPerMm * worst_error_mm(chart, way.job, cells);
}

} // namespace

std::vector<Measured> measure_floor(const Effort &effort) {
  constexpr double kMerged_mm = 5e-5;
  const FloorCase longs, tiny{.moves_per_line = 1000}, curved{.moves_per_line = 1000, .wave_mm = 0.35},
      grown{.grown_mm = 0.004};
  std::vector<Contender> ways{{"floor, 200 sloped moves", longs, kSameLine_mm, 700, 60},
                              {"the same, ball grown by 4 um", grown, kSameLine_mm, 0, 30},
                              {"the same in 200,000 tiny moves, merged", tiny, kSameLine_mm, 400, 45},
                              {"200,000 tiny moves, not merged", tiny, 0.0, 100, 11},
                              {"200,000 tiny moves on a curve, 50 nm", curved, kMerged_mm, 150, 14, 51.0},
                              {"200,000 tiny moves on a curve, exact", curved, kSameLine_mm, 0, 7}};
  for (Contender &way : ways)
    way.path = path_of(way.job);
  Seconds baseline;
  FloorChart chart;
  for (int i = 0; i < effort.tries; ++i) {
    if (i < effort.baseline_tries)
      baseline.keep_least(stamped(effort));
    for (Contender &way : ways)
      for (const int threads : {1, 2})
        try_once(way, threads, chart);
  }
  std::vector<Measured> rows;
  for (Contender &way : ways) {
    const double error = error_nm(way, effort);
    rows.push_back({way.name + ", 1 thread", "stamping / sweep", baseline.processor / way.one.processor, 0,
                    way.guard, false, error, way.most_error_nm});
    rows.push_back({way.name + ", 2 threads", "stamping / sweep", baseline.processor / way.two.wall, way.goal,
                    0, false, error, way.most_error_nm});
  }
  rows.push_back({"two threads against one, floor, 200 moves", "time of 1 / of 2",
                  ways[0].one.wall / ways[0].two.wall, 1.8});
  return rows;
}

std::vector<Measured> measure_growth(const Effort &effort) {
  std::vector<Contender> ways{{"base", {}},
                              {"twice the moves on the same floor", {.lines = 400}, kSameLine_mm, 1.5, 2.5},
                              {"half the cell", {.spacing_mm = 0.01}, kSameLine_mm, 3.4, 6.0}};
  FloorChart chart;
  for (Contender &way : ways)
    way.path = path_of(way.job);
  for (int i = 0; i < effort.tries; ++i)
    for (Contender &way : ways)
      try_once(way, 1, chart);
  std::vector<Measured> rows;
  for (std::size_t i = 1; i < ways.size(); ++i)
    rows.push_back({ways[i].name + ", 1 thread", "time / time before",
                    ways[i].one.processor / ways[0].one.processor, ways[i].goal, ways[i].guard, true});
  return rows;
}

} // namespace asperity::bench
