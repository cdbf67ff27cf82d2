// Memory first, then cut in time order, then sweep in any order.
#include "stages.h"

#include "asperity/predict/chart_plan.h"
#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>

namespace asperity {

namespace {

/// Beside the charts while they are read, all features at once: heights, mean surface and weights of the
/// local roughness (18), views and rows of the finders.
constexpr double kReadingBytesPerCell = 32.0;
/// Patches, traces and tables, whatever the job.
constexpr double kFixedBytes = 32e6;

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

double memory_bound_bytes(const Job &job, const TimedPath &path, std::span<const Feature> features) {
  // A station leaves one sample and at most one swept piece; stations stand a small share of a radius apart.
  double stations = 0.0, smallest_radius_mm = 1e9;
  for (const Cutter &cutter : job.cutters)
    smallest_radius_mm = std::min(smallest_radius_mm, 0.5 * cutter.diameter_mm);
  for (const PathPiece &piece : path.pieces)
    stations += 2.0 + piece.length_mm / (smallest_radius_mm / 12.0);
  // A piece of path comes from one move, and both are kept.
  double bytes =
      static_cast<double>(stock_bytes(job, path)) +
      stations * static_cast<double>(sizeof(CutSample) + sizeof(SweptPiece) + sizeof(PackedOffset)) +
      static_cast<double>(path.pieces.size()) * static_cast<double>(sizeof(PathPiece) + sizeof(Move));
  for (const Feature &feature : features)
    bytes += chart_cells(job, feature) * (kBytesPerCell + kReadingBytesPerCell);
  return bytes + kFixedBytes;
}

std::string memory_fault(double bound_bytes, std::size_t limit_bytes) {
  const double limit = limit_bytes > 0 ? static_cast<double>(limit_bytes) : 0.8 * free_memory_bytes();
  if (bound_bytes <= limit)
    return {};
  return fmt::format("this needs up to {:.1f} GB of memory and {:.1f} GB can be had: choose "
                     "a coarser chart spacing",
                     bound_bytes * 1e-9, limit * 1e-9);
}

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
