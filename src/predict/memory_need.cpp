// Counts cells, pieces and stations, and what each of them takes.
#include "memory_need.h"

#include "last_visit.h"
#include "stages.h"

#include "asperity/base/free_memory.h"
#include "asperity/base/large_array.h"
#include "asperity/cut/walk.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"
#include "asperity/texture/feature_roughness.h"

#include <fmt/format.h>

#include <algorithm>
#include <variant>

namespace asperity {

namespace {

/// Marks of the finders and runs of marked cells, of the feature that has most cells.
constexpr double kFindingBytesPerCell = 2.0;
/// Tables, words, findings, whatever the job.
constexpr double kFixedBytes = 16e6;

/// Of disk and memory that are free, others may want some.
constexpr double kShareOfMemory = 0.8, kShareOfDisk = 0.9;

Bytes list_of(double count, std::size_t bytes_each) {
  return Bytes::of_list(count * static_cast<double>(bytes_each));
}

Bytes record_bytes(const RecordSize &size) {
  return list_of(size.samples, sizeof(CutSample)) + list_of(size.pieces, sizeof(SweptPiece)) +
         list_of(size.offsets, sizeof(PackedOffset)) + list_of(size.arcs, sizeof(Curve));
}

Bytes chart_bytes(double cells, bool is_wall) {
  // Lists of four bytes a cell.
  const double per_cell = is_wall ? kWallBytesPerCell : kFloorBytesPerCell;
  const Bytes list = list_of(cells, sizeof(float));
  const double lists = per_cell / static_cast<double>(sizeof(float));
  return {lists * list.in_memory, lists * list.on_disk};
}

/// What an outcome holds that is kept to take results from.
Bytes held_bytes(const Outcome &outcome) {
  Bytes bytes = list_of(static_cast<double>(outcome.path.pieces.size()), sizeof(PathPiece)) +
                record_bytes(size_of(outcome.cut));
  for (const Chart &chart : outcome.charts)
    bytes += chart_bytes(static_cast<double>(cell_count(chart)), std::holds_alternative<WallChart>(chart));
  return bytes;
}

} // namespace

Bytes Bytes::of_list(double bytes) {
  return bytes > static_cast<double>(kOnDiskFrom_bytes) ? Bytes{0.0, bytes} : Bytes{bytes, 0.0};
}

Bytes &Bytes::operator+=(const Bytes &more) {
  in_memory += more.in_memory;
  on_disk += more.on_disk;
  return *this;
}

MemoryBound Bytes::rounded() const {
  constexpr double kMost = 1e18;
  return {static_cast<std::size_t>(std::min(in_memory, kMost)),
          static_cast<std::size_t>(std::min(on_disk, kMost))};
}

Bytes operator+(Bytes a, const Bytes &b) { return a += b; }

Bytes MemoryNeed::most(bool beside_cut) const {
  const double reading_charts = charts.in_memory + std::max(sweep, reading);
  const double cutting = stock + (beside_cut ? reading_charts : 0.0);
  return path + record + early + Bytes{std::max(cutting, reading_charts) + kFixedBytes, charts.on_disk};
}

MemoryNeed memory_need(const Job &job, const TimedPath &path, std::span<const Feature> features) {
  MemoryNeed need;
  need.path = list_of(static_cast<double>(path.pieces.size()), sizeof(PathPiece));
  const RecordSize record = record_to_expect(job, path);
  need.record = record_bytes(record);
  need.stock = static_cast<double>(stock_bytes(job, path));
  double most_cells = 0;
  for (const Feature &feature : features) {
    const ChartSize size = chart_size(job, feature);
    const bool is_wall = std::holds_alternative<WallFeature>(feature);
    need.charts += chart_bytes(size.cells(), is_wall);
    need.sweep =
        std::max(need.sweep, is_wall ? wall_sweep_bytes(record.pieces) : floor_sweep_bytes(record.pieces));
    need.reading += roughness_bytes(size.columns, size.rows, size.spacing_mm, is_wall ? record.pieces : 0.0);
    most_cells = std::max(most_cells, size.cells());
    // The part that marks are read of, and of a long face its stretches that wait to be swept.
    const std::size_t pieces = path.pieces.size();
    const int copies = static_cast<double>(pieces) > kMostEarlyPieces ? 0
                       : is_wall || pieces <= kStretchPieces          ? 1
                                                                      : 2;
    for (int copy = 0; copy < copies; ++copy)
      need.early += record_bytes({0.0, record.pieces, record.offsets, record.arcs});
  }
  need.reading += most_cells * kFindingBytesPerCell;
  return need;
}

MemoryBound memory_bound(const Job &job, const Program &program) {
  const TimedPath path = plan_motion(program, job.machine, job.setup, job.effects);
  return memory_need(job, path, job.features).most(false).rounded();
}

MemoryCheck::MemoryCheck(const MemoryNeed &need, const Outcome *kept, const PredictOptions &options)
    : need_(need), limit_bytes_(options.memory_limit_bytes) {
  if (kept != nullptr)
    kept_ = held_bytes(*kept);
  beside_cut_ = options.threads != 1 && fault_of(kept_ + need_.most(true), kept_).empty();
  bound_ = kept_ + need_.most(beside_cut_);
}

std::string MemoryCheck::fault_after(const CutRecord &record) {
  const Bytes left = record_bytes(size_of(record));
  if (left.in_memory <= need_.record.in_memory && left.on_disk <= need_.record.on_disk)
    return {};
  need_.record = left;
  bound_ = kept_ + need_.most(beside_cut_);
  return fault_of(bound_, kept_ + left);
}

/// `taken`, part of the need, is taken already.
std::string MemoryCheck::fault_of(const Bytes &need, const Bytes &taken) const {
  // Where the disk cannot take the long lists, they lie in memory.
  const bool disk_takes_it = need.on_disk - taken.on_disk <= kShareOfDisk * disk_room_bytes();
  const double bytes = need.in_memory + (disk_takes_it ? 0.0 : need.on_disk - taken.on_disk);
  const double limit = limit_bytes_ > 0 ? static_cast<double>(limit_bytes_)
                                        : taken.in_memory + kShareOfMemory * free_memory_bytes();
  if (bytes <= limit)
    return {};
  return fmt::format("this needs up to {:.1f} GB of memory and {:.1f} GB can be had: choose "
                     "a coarser chart spacing{}",
                     bytes * 1e-9, limit * 1e-9,
                     disk_takes_it ? ""
                                   : fmt::format(", or set TMPDIR to a folder on a disk with {:.1f} GB free",
                                                 (need.on_disk - taken.on_disk) / kShareOfDisk * 1e-9));
}

} // namespace asperity
