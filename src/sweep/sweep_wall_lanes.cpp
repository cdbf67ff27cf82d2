// Branch-free loops over lanes, for the compiler to vectorise.
#include "sweep_wall_lanes.h"

#include "asperity/base/wide_vectors.h"
#include "sweep_wall_entries.h"
#include "sweep_wall_ray.h"

#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// The contact where it is met on the way, else the disc at the nearer end.
template <std::size_t kUsed>
inline __attribute__((always_inline)) void find_entries(const LaneDiscs &discs, const Ray &ray,
                                                        double band_mm, StrokeOwners owners,
                                                        LaneEntries &entries) {
  const double radius = discs.radius_mm;
  const double fx = ray.foot.x, fy = ray.foot.y, nx = ray.normal.x, ny = ray.normal.y;
#pragma omp simd
  for (std::size_t i = 0; i < kUsed; ++i) {
    const double gx = fx - discs.x_mm[i], gy = fy - discs.y_mm[i];
    const double ax = discs.along_x_mm[i], ay = discs.along_y_mm[i];
    const double facing = nx * discs.contact_x[i] + ny * discs.contact_y[i];
    const double e_contact = (radius - (gx * discs.contact_x[i] + gy * discs.contact_y[i])) / facing;
    const double u = ((gx + e_contact * nx) * ax + (gy + e_contact * ny) * ay) * discs.per_square_mm2[i];
    const double u_end = u < 0.0 ? 0.0 : 1.0;
    const double vx = u_end * ax - gx, vy = u_end * ay - gy;
    const double a = vx * nx + vy * ny, b = vx * ny - vy * nx;
    const double e_end = a - std::sqrt((radius - b) * (radius + b)); // no number where the ray misses
    const bool is_inside = u >= 0.0 && u <= 1.0;
    const double e = is_inside ? e_contact : e_end;
    const double held = e < -band_mm ? -band_mm : e;
    entries.e_mm[i] =
        static_cast<float>(e <= discs.most_mm[i] ? held : std::numeric_limits<double>::quiet_NaN());
    entries.owner[i] = u <= 0.0 ? owners.begin : owners.on;
  }
}

template <std::size_t kUsed>
inline __attribute__((always_inline)) void lower_columns(const LaneDiscs &discs, const WallChart &chart,
                                                         ColumnSpan span, StrokeOwners owners,
                                                         LaneCells &cells) {
  LaneEntries entries;
  for (std::size_t column = span.begin; column < span.end; ++column) {
    find_entries<kUsed>(discs, {chart.foot[column], chart.normal[column]}, chart.band_mm, owners, entries);
    lower_column<kUsed>(entries, column, cells);
  }
}

} // namespace

void add_bend(const BendNodes &nodes, const WallCutter &cutter, Vec2 point, const Lanes &height_mm,
              Lanes &x_mm, Lanes &y_mm) {
  const auto &node_height = cutter.node_height_mm;
  const std::size_t last = node_interval(node_height, height_mm.back());
  std::size_t from = 0;
  while (from < kLanes) {
    const std::size_t interval = node_interval(node_height, height_mm[from]);
    std::size_t to = interval == last ? kLanes : from + 1;
    while (to < kLanes && node_interval(node_height, height_mm[to]) == interval)
      ++to;
    const OffsetLaw law = offset_law(nodes, node_height, interval);
    for (std::size_t i = from; i < to; ++i) {
      x_mm[i] = point.x + (law.constant.x + height_mm[i] * law.slope.x);
      y_mm[i] = point.y + (law.constant.y + height_mm[i] * law.slope.y);
    }
    from = to;
  }
}

ASPERITY_WIDE
void set_contacts(LaneDiscs &discs, WallSide side) {
  const double sign = sign_of(side);
#pragma omp simd
  for (std::size_t i = 0; i < kLanes; ++i) {
    const double ax = discs.end_x_mm[i] - discs.x_mm[i], ay = discs.end_y_mm[i] - discs.y_mm[i];
    const double per_length = 1.0 / std::sqrt(ax * ax + ay * ay);
    discs.along_x_mm[i] = ax;
    discs.along_y_mm[i] = ay;
    discs.contact_x[i] = -sign * per_length * ay;
    discs.contact_y[i] = sign * per_length * ax;
    discs.per_square_mm2[i] = per_length * per_length;
  }
}

ASPERITY_WIDE
void lower_span(const LaneDiscs &discs, const WallChart &chart, ColumnSpan span, StrokeOwners owners,
                LaneCells &cells) {
  if (discs.count > kFewLanes)
    lower_columns<kLanes>(discs, chart, span, owners, cells);
  else
    lower_columns<kFewLanes>(discs, chart, span, owners, cells);
}

} // namespace asperity
