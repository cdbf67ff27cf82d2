// Walk the timed path through the stock: engagement, force and bending at every moment, and the bent path to
// sweep.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/cut/record.h"
#include "asperity/cut/stock.h"
#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"

#include <functional>
#include <span>

namespace asperity {

/// Tooth hits without a chip after which ploughing force has fallen to 1/e. [model assumption, no published
/// source]: a reversal lasts 2-5 hits and keeps its edge force, a plunge or dwell lasts tens to hundreds and
/// loses it.
inline constexpr double kHitsToRelease = 10.0;

/// Heights at which level feed moves run, rising, in the part frame [mm]; of heights that are the same to a
/// micrometre the lowest.
std::vector<double> level_heights_mm(const TimedPath &path);

/// The stock that fits the job: layers at the path's levels, cells a small share of the smallest cutter.
Stock make_stock(const Job &job, const TimedPath &path, int threads = 1);
/// Memory make_stock would take [bytes], without taking it.
std::size_t stock_bytes(const Job &job, const TimedPath &path);

/// How much a CutRecord holds.
struct RecordSize {
  double samples = 0, pieces = 0, offsets = 0, arcs = 0;
};
/// At most: the stations planned, and one more on every second step's length for where the bending changes
/// quickly (at most 0.42 on a step's length are seen in the sheave's scenes); an offset more at every corner.
RecordSize record_to_expect(const Job &job, const TimedPath &path);
RecordSize size_of(const CutRecord &record);

/// Called on the walking thread once all pieces before `piece` are cut: `so_far` holds what they left, and
/// may hold more.
struct WalkStop {
  std::size_t piece = 0;
  std::function<void(const SweptPath &so_far)> reached;
};

/// Cuts `stock` in time order. record.samples holds a sample wherever the state changes by more than a small
/// step; record.swept the bent path, its offsets linear between samples to 1 nm. Cancelled: what was done so
/// far. `stops` rise; those at the path's end are not called.
CutRecord walk_path(const Job &job, const TimedPath &path, Stock &stock, const Progress &progress,
                    std::span<const WalkStop> stops = {});

} // namespace asperity
