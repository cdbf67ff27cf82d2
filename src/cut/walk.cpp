#include "asperity/cut/walk.h"

#include "station_plan.h"
#include "walker.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kThickestLayer_mm = 0.5;
constexpr std::size_t kMostLayers = 96;
constexpr double kMostBytes = 256e6;

struct StockPlan {
  std::vector<double> bounds_mm;
  double cell_mm = 0;
  double bytes = 0;
};

StockPlan plan_stock(const Job &job, const TimedPath &path) {
  double radius = 1e9;
  for (const Cutter &cutter : job.cutters)
    radius = std::min(radius, 0.5 * cutter.diameter_mm);
  StockPlan plan;
  plan.bounds_mm = layer_bounds(job.blank.z_bottom_mm, job.blank.z_top_mm, level_heights_mm(path),
                                kThickestLayer_mm, kMostLayers);
  const Vec2 extent = job.blank.high_mm() - job.blank.low_mm();
  const double layers = static_cast<double>(plan.bounds_mm.size());
  const double area = (extent.x + 1.0) * (extent.y + 1.0);
  plan.cell_mm =
      std::max(std::clamp(radius / 16.0, 0.1, 0.3), std::sqrt(area * layers * sizeof(float) / kMostBytes));
  plan.bytes = area / (plan.cell_mm * plan.cell_mm) * layers * sizeof(float);
  return plan;
}

} // namespace

std::vector<double> level_heights_mm(const TimedPath &path) {
  constexpr double kLeastLength_mm = 5.0; // shorter level moves make no level
  struct Level {
    double lowest_mm = 0, length_mm = 0;
  };
  std::map<long long, Level> by_um;
  for (const PathPiece &piece : path.pieces) {
    const double z_mm = piece.curve.begin.z;
    if (piece.kind != MoveKind::feed || std::abs(z_mm - piece.curve.end.z) >= 1e-6)
      continue;
    Level &level = by_um.try_emplace(std::llround(z_mm * 1e3), Level{z_mm, 0.0}).first->second;
    level.lowest_mm = std::min(level.lowest_mm, z_mm);
    level.length_mm += piece.length_mm;
  }
  std::vector<double> levels;
  for (const auto &[um, level] : by_um)
    if (level.length_mm > kLeastLength_mm)
      levels.push_back(level.lowest_mm);
  return levels;
}

double usual_stepdown_mm(const std::vector<double> &levels_mm, double otherwise_mm) {
  std::vector<double> gaps;
  for (std::size_t i = 1; i < levels_mm.size(); ++i)
    gaps.push_back(levels_mm[i] - levels_mm[i - 1]);
  if (gaps.empty())
    return otherwise_mm;
  std::nth_element(gaps.begin(), gaps.begin() + static_cast<std::ptrdiff_t>(gaps.size() / 2), gaps.end());
  return gaps[gaps.size() / 2];
}

Stock make_stock(const Job &job, const TimedPath &path, int threads) {
  StockPlan plan = plan_stock(job, path);
  double widest_mm = 0.0;
  for (const Cutter &cutter : job.cutters)
    widest_mm = std::max(widest_mm, 0.5 * cutter.diameter_mm);
  constexpr double kGrown_mm = 1.0; // by runout and worn tools' errors, with room
  return Stock(job.blank, std::move(plan.bounds_mm), plan.cell_mm, threads, widest_mm + kGrown_mm);
}

std::size_t stock_bytes(const Job &job, const TimedPath &path) {
  return static_cast<std::size_t>(plan_stock(job, path).bytes);
}

RecordSize record_to_expect(const Job &job, const TimedPath &path) {
  constexpr double kMoreOnAStep = 0.5, kFew = 1000;
  double stations = kFew, corners = 0, arcs = 0;
  Vec3 before(0.0);
  for (const PathPiece &piece : path.pieces) {
    const Cutter *cutter = job.cutter(piece.tool);
    const double radius_mm = 0.5 * (cutter != nullptr ? *cutter : job.cutters.front()).diameter_mm;
    stations +=
        planned_station_count(piece, radius_mm) + kMoreOnAStep * piece.length_mm / (kStepShare * radius_mm);
    corners += runs_on(before, heading(piece, 0.0)) ? 0.0 : 1.0;
    arcs += piece.curve.is_line() ? 0.0 : 1.0;
    before = heading(piece, 1.0);
  }
  return {stations, stations, stations + corners, arcs};
}

RecordSize size_of(const CutRecord &record) {
  const auto count = [](const auto &list) { return static_cast<double>(list.size()); };
  return {count(record.samples), count(record.swept.pieces), count(record.swept.offsets),
          count(record.swept.arcs)};
}

CutRecord walk_path(const Job &job, const TimedPath &path, Stock &stock, const Progress &progress,
                    std::span<const WalkStop> stops) {
  Walker walker(job, path, stock);
  walker.expect(record_to_expect(job, path));
  const std::size_t report_every = std::max<std::size_t>(1, path.pieces.size() / 100);
  std::size_t reported = 0;
  for (std::uint32_t i = 0; i < path.pieces.size() && !progress.cancelled(); i = walker.walk(i)) {
    for (; !stops.empty() && i >= stops.front().piece; stops = stops.subspan(1))
      stops.front().reached(walker.swept());
    if (i >= reported) {
      progress.at("cutting", static_cast<double>(i) / static_cast<double>(path.pieces.size()));
      reported = i + report_every;
    }
  }
  return walker.take();
}

} // namespace asperity
