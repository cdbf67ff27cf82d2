// Counts cells, pieces and stations, and what each of them takes.
#include "memory_need.h"

#include "asperity/cut/walk.h"
#include "asperity/predict/chart_plan.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"
#include "asperity/texture/feature_roughness.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <variant>

namespace asperity {

namespace {

/// Marks of the finders and runs of marked cells, of the feature that has most cells.
constexpr double kFindingBytesPerCell = 2.0;
/// Tables, words, findings, whatever the job.
constexpr double kFixedBytes = 16e6;

/// Memory that can be had without swapping [bytes]; a large number where the system does not tell.
double free_memory_bytes() {
  std::ifstream meminfo("/proc/meminfo");
  std::string key, unit;
  double kib = 0;
  while (meminfo >> key >> kib >> unit)
    if (key == "MemAvailable:")
      return kib * 1024.0;
  return 1e18;
}

} // namespace

double MemoryNeed::most_bytes(bool charts_beside_cut) const {
  const double cutting = stock + (charts_beside_cut ? charts : 0.0);
  return path + record + std::max(cutting, charts + std::max(sweep, reading)) + kFixedBytes;
}

MemoryNeed memory_need(const Job &job, const TimedPath &path, std::span<const Feature> features) {
  MemoryNeed need;
  need.path = static_cast<double>(path.pieces.size() * sizeof(PathPiece));
  const RecordSize record = record_to_expect(job, path);
  const auto arcs = std::count_if(path.pieces.begin(), path.pieces.end(),
                                  [](const PathPiece &piece) { return !piece.curve.is_line(); });
  need.record = record.bytes() + static_cast<double>(arcs) * static_cast<double>(sizeof(Curve));
  need.stock = static_cast<double>(stock_bytes(job, path));
  double most_cells = 0;
  for (const Feature &feature : features) {
    const ChartSize size = chart_size(job, feature);
    const bool is_wall = std::holds_alternative<WallFeature>(feature);
    need.charts += size.cells() * (is_wall ? kWallBytesPerCell : kFloorBytesPerCell);
    need.sweep =
        std::max(need.sweep, record.pieces * (is_wall ? kWallSweepBytesPerPiece : kFloorSweepBytesPerPiece));
    need.reading += roughness_bytes(size.columns, size.rows, size.spacing_mm, is_wall ? record.pieces : 0.0);
    most_cells = std::max(most_cells, size.cells());
  }
  need.reading += most_cells * kFindingBytesPerCell;
  return need;
}

double held_bytes(const Outcome &outcome) {
  double bytes = static_cast<double>(outcome.path.pieces.size() * sizeof(PathPiece)) + bytes_of(outcome.cut);
  for (const Chart &chart : outcome.charts)
    bytes += std::holds_alternative<WallChart>(chart)
                 ? kWallBytesPerCell * static_cast<double>(std::get<WallChart>(chart).envelope_mm.size())
                 : kFloorBytesPerCell * static_cast<double>(std::get<FloorChart>(chart).envelope_mm.size());
  return bytes;
}

std::string memory_fault(double need_bytes, double held_bytes, std::size_t limit_bytes) {
  const double limit =
      limit_bytes > 0 ? static_cast<double>(limit_bytes) : held_bytes + 0.8 * free_memory_bytes();
  if (need_bytes <= limit)
    return {};
  return fmt::format("this needs up to {:.1f} GB of memory and {:.1f} GB can be had: choose "
                     "a coarser chart spacing",
                     need_bytes * 1e-9, limit * 1e-9);
}

} // namespace asperity
