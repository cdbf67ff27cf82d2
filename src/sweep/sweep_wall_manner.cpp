// Turns and gaps between strokes, bounded for all heights at once.
#include "sweep_wall_manner.h"

#include "sweep_wall_section.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

double square_of(Vec2 v) { return glm::dot(v, v); }

/// Largest distance between two bent axes at any height [mm].
double apart_mm(const std::array<BendNodes, 2> &a, const std::array<BendNodes, 2> &b) {
  double most = 0.0;
  for (std::size_t side = 0; side < 2; ++side)
    for (std::size_t i = 0; i < kBendNodes; ++i)
      most = std::max(most, square_of(a[side][i] - b[side][i]));
  return std::sqrt(most);
}

/// Largest lean of the bent axis: mm aside for a mm up.
double steepest(const std::array<BendNodes, 2> &axis, const WallCutter &cutter) {
  double most = 0.0;
  for (const BendNodes &nodes : axis)
    for (std::size_t i = 1; i < kBendNodes; ++i)
      most = std::max(most, square_of(offset_law(nodes, cutter.node_height_mm, i).slope));
  return std::sqrt(most);
}

double angle_between(Vec2 a, Vec2 b) { return std::abs(std::atan2(cross(a, b), glm::dot(a, b))); }

Manner manner_of(const Stroke &stroke, const WallCutter &cutter) {
  constexpr double kMostDrift = 0.2;
  Manner manner;
  const double length = stroke.plan_length_mm();
  if (!(length > 0.0))
    return {.drift_rad = kMostDrift};
  double change = apart_mm(stroke.begin, stroke.end);
  if (stroke.z_rise_mm != 0.0)
    change +=
        std::abs(stroke.z_rise_mm) * std::max(steepest(stroke.begin, cutter), steepest(stroke.end, cutter));
  manner.drift_rad = 1.5 * change / length;
  manner.is_moving = manner.drift_rad < kMostDrift;
  manner.is_plain = manner.is_moving && !stroke.has_varying_radius;
  return manner;
}

/// Where both have a steady radius, every row sees the joint alike: closed, and turning less than
/// kSmoothTurn_rad.
bool is_smooth_joint(const Stroke &a, const Stroke &b, const Manner &before, const Manner &after,
                     const WallCutter &cutter) {
  if (!b.joins_previous || a.cutter != b.cutter || !before.is_moving || !after.is_moving ||
      after.turn_rad + before.drift_rad + after.drift_rad >= 0.8 * kSmoothTurn_rad)
    return false;
  const double step = std::abs(a.z_begin_mm + a.z_rise_mm - b.z_begin_mm);
  return glm::length(a.plan_point(1.0) - b.plan_point(0.0)) + apart_mm(a.end, b.begin) +
             step * std::max(1.0, steepest(b.begin, cutter)) <
         0.5 * kSamePlace_mm;
}

} // namespace

std::vector<Manner> manners_of(const StrokeList &strokes, const std::vector<WallCutter> &cutters,
                               int threads) {
  constexpr std::size_t kBlock = 512;
  std::vector<Manner> manners(strokes.size());
  for_each_band(strokes.size(), kBlock, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      manners[i] = manner_of(strokes[i], cutters[strokes[i].cutter]);
  });
  // A joint looks at the stroke before, but at nothing that is written here.
  for_each_band(strokes.size(), kBlock, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = std::max<std::size_t>(begin, 1); i < end; ++i) {
      const Stroke &before = strokes[i - 1], &stroke = strokes[i];
      if (!stroke.joins_previous || !(stroke.plan_length_mm() > 0.0))
        continue;
      Manner &manner = manners[i];
      manner.turn_rad = angle_between(before.plan_velocity(1.0), stroke.plan_velocity(0.0));
      manner.begins_smoothly =
          is_smooth_joint(before, stroke, manners[i - 1], manner, cutters[stroke.cutter]);
    }
  });
  return manners;
}

} // namespace asperity
