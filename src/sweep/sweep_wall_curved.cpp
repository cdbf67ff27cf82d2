// Newton steps in all lanes at once.
#include "sweep_wall_curved.h"

#include "asperity/base/wide_vectors.h"
#include "sweep_wall_entries.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Where each lane stands, and the lowest entry as its last step foretells it.
struct LaneSteps {
  Lanes u, e_mm{}, gain_mm; ///< gain: what that step promised
};

/// A lane is settled when its last step was so small that what the step's parabola leaves out, of third
/// order, is below 1e-11 mm.
inline __attribute__((always_inline)) bool is_settled(double gain_mm) {
  constexpr double kLeastGain_mm = 1e-8;
  return gain_mm < kLeastGain_mm;
}

/// f = a - sqrt(r² - b²) along the ray and its derivatives in u, then a step towards f' = 0, held in 0..1.
/// Settled lanes stay as they are, so that no lane depends on others.
template <std::size_t kUsed>
inline __attribute__((always_inline)) void step(const LaneCurves &curves, const Ray &ray, LaneSteps &steps) {
  const double nx = ray.normal.x, ny = ray.normal.y, radius = curves.radius_mm, arm = curves.arm_mm;
  const double mx = curves.middle.x, my = curves.middle.y, rate = 2.0 * curves.half_sweep_rad;
#pragma omp simd
  for (std::size_t i = 0; i < kUsed; ++i) {
    const double u = steps.u[i];
    const Vec2 turn = cos_sin_of_small((u - 0.5) * rate);
    const double px = arm * (turn.x * mx - turn.y * my), py = arm * (turn.x * my + turn.y * mx);
    const double bx = curves.bend_x_mm[i], by = curves.bend_y_mm[i];
    const double vx = curves.x_mm[i] + px + u * (curves.along_x_mm[i] + u * bx) - ray.foot.x;
    const double vy = curves.y_mm[i] + py + u * (curves.along_y_mm[i] + u * by) - ray.foot.y;
    const double sx = curves.along_x_mm[i] + 2.0 * u * bx - rate * py;
    const double sy = curves.along_y_mm[i] + 2.0 * u * by + rate * px;
    const double cx = 2.0 * bx - rate * rate * px, cy = 2.0 * by - rate * rate * py;
    const double a = vx * nx + vy * ny, b = vy * nx - vx * ny;
    const double b1 = sy * nx - sx * ny, b2 = cy * nx - cx * ny;
    const double per_w = 1.0 / std::sqrt((radius - b) * (radius + b)); // no number where the ray misses
    const double w1 = -b * b1 * per_w, w2 = -(b1 * b1 + b * b2 + w1 * w1) * per_w;
    const double first = sx * nx + sy * ny - w1, second = cx * nx + cy * ny - w2;
    const double wanted = u - first / second;
    const double next = wanted < 0.0 ? 0.0 : (wanted > 1.0 ? 1.0 : wanted);
    const double way = second > 0.0 ? next - u : std::numeric_limits<double>::quiet_NaN();
    const double e = a - 1.0 / per_w + way * (first + 0.5 * second * way);
    const bool is_done = is_settled(steps.gain_mm[i]);
    steps.e_mm[i] = is_done ? steps.e_mm[i] : e;
    steps.u[i] = is_done ? u : next;
    steps.gain_mm[i] = is_done ? steps.gain_mm[i] : second * way * way;
  }
}

template <std::size_t kUsed> LaneBits unsettled(const LaneSteps &steps) {
  LaneBits bits = 0;
  for (std::size_t i = 0; i < kUsed; ++i)
    bits |= is_settled(steps.gain_mm[i]) ? 0u : 1u << i;
  return bits;
}

template <std::size_t kUsed>
inline __attribute__((always_inline)) LaneBits lower(const LaneCurves &curves, const WallChart &chart,
                                                     std::size_t column, double u_near, StrokeOwners owners,
                                                     LaneCells &cells) {
  constexpr int kMostSteps = 4;
  const Ray ray{chart.foot[column], chart.normal[column]};
  LaneSteps steps;
  steps.u.fill(std::clamp(u_near, 0.0, 1.0));
  steps.gain_mm.fill(std::numeric_limits<double>::infinity());
  LaneBits left = 1;
  for (int k = 0; k < kMostSteps && left != 0; ++k) {
    step<kUsed>(curves, ray, steps);
    left = unsettled<kUsed>(steps);
  }
  LaneEntries entries;
  const double band = chart.band_mm;
#pragma omp simd
  for (std::size_t i = 0; i < kUsed; ++i) {
    const double e = steps.e_mm[i], held = e < -band ? -band : e;
    const bool counts = e <= curves.most_mm[i] && is_settled(steps.gain_mm[i]);
    entries.e_mm[i] = static_cast<float>(counts ? held : std::numeric_limits<double>::quiet_NaN());
    entries.owner[i] = steps.u[i] <= 0.0 ? owners.begin : owners.on;
  }
  lower_column<kUsed>(entries, column, cells);
  return left;
}

} // namespace

void place_curves(const Stroke &stroke, const WallCutter &cutter, WallSide side, const Lanes &begin_height,
                  LaneCurves &curves) {
  const auto at = static_cast<std::size_t>(side);
  const Vec2 begin = stroke.is_arc ? stroke.centre : stroke.from;
  const Vec2 end = stroke.is_arc ? stroke.centre : stroke.from + stroke.along;
  Lanes end_height, end_x, end_y;
  for (std::size_t i = 0; i < kLanes; ++i)
    end_height[i] = begin_height[i] - stroke.z_rise_mm;
  add_bend(stroke.begin[at], cutter, begin, begin_height, curves.x_mm, curves.y_mm);
  add_bend(stroke.end[at], cutter, end, end_height, end_x, end_y);
  for (std::size_t i = 0; i < kLanes; ++i) {
    Vec2 bend(0.0);
    if (stroke.z_rise_mm != 0.0) {
      const double middle = 0.5 * (begin_height[i] + end_height[i]);
      const std::size_t interval = node_interval(cutter.node_height_mm, middle);
      bend = -stroke.z_rise_mm * (offset_law(stroke.end[at], cutter.node_height_mm, interval).slope -
                                  offset_law(stroke.begin[at], cutter.node_height_mm, interval).slope);
    }
    curves.bend_x_mm[i] = bend.x;
    curves.bend_y_mm[i] = bend.y;
    curves.along_x_mm[i] = end_x[i] - curves.x_mm[i] - bend.x;
    curves.along_y_mm[i] = end_y[i] - curves.y_mm[i] - bend.y;
  }
  curves.middle = stroke.middle;
  curves.arm_mm = stroke.is_arc ? stroke.radius_mm : 0.0;
  curves.half_sweep_rad = stroke.half_sweep_rad;
  curves.radius_mm = cutter.profile.radius_mm();
}

ASPERITY_WIDE
LaneBits lower_under_curves(const LaneCurves &curves, const WallChart &chart, std::size_t column,
                            double u_near, StrokeOwners owners, LaneCells &cells) {
  if (curves.count > kFewLanes)
    return lower<kLanes>(curves, chart, column, u_near, owners, cells);
  return lower<kFewLanes>(curves, chart, column, u_near, owners, cells);
}

} // namespace asperity
