// Sweeps a single column finely to find where the cut wall really ends.
#include "lip_probe.h"

#include "asperity/sweep/sweep_wall.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kRows = 33;

/// Envelope of one column at evenly spaced heights from low to high.
LargeArray<float> envelope_between(const WallChart &chart, const SweptPath &near, std::size_t column,
                                   double low_mm, double high_mm, std::vector<double> &z) {
  z.clear();
  for (int k = 0; k < kRows; ++k)
    z.push_back(low_mm + (high_mm - low_mm) * k / (kRows - 1));
  WallChart probe = make_wall_chart(chart.outline, chart.inside, {chart.s_mm[column]}, z);
  probe.band_mm = chart.band_mm;
  sweep_wall(probe, near, 1, Progress{});
  return probe.envelope_mm;
}

/// Lowest height from which on all is at or below the limit, between low and high; high must be.
double lowest_below(const WallChart &chart, const SweptPath &near, std::size_t column, ProbeRange range) {
  std::vector<double> z;
  while (true) {
    const LargeArray<float> e = envelope_between(chart, near, column, range.z_low_mm, range.z_high_mm, z);
    std::size_t k = z.size() - 1;
    while (k > 0 && e[k - 1] <= range.proud_limit_mm)
      --k;
    if (k == 0)
      return z[0];
    if (z[k] - z[k - 1] <= kProbeStep_mm)
      return z[k];
    range.z_low_mm = z[k - 1];
    range.z_high_mm = z[k];
  }
}

/// A piece's commanded curve lies within.
struct Ball {
  Vec3 middle{0.0};
  double radius_mm = 0;
};

Ball ball_about(const SweptPath &path, const SweptPiece &piece) {
  if (piece.is_line())
    return {0.5 * (piece.begin + piece.end), 0.5 * glm::distance(piece.begin, piece.end)};
  const Curve curve = path.curve(piece);
  return {curve.point(0.5), 0.5 * curve.length_mm()};
}

double bend_mm(const SweptPath &path, const SweptPiece &piece) {
  return std::abs(path.begin_offset(piece).axial_mm()) + std::abs(path.end_offset(piece).axial_mm());
}

} // namespace

SweptPath pieces_near(const SweptPath &path, Vec2 p, double reach_mm, double z_high_mm) {
  SweptPath near;
  near.cutters = path.cutters;
  bool kept_previous = false;
  for (const SweptPiece &piece : path.pieces) {
    const Ball about = ball_about(path, piece);
    const double reach = path.cutters[piece.cutter].profile.radius_mm() + reach_mm;
    // In plan first: offsets lie elsewhere in memory.
    const bool keep = glm::length(plan(about.middle) - p) - about.radius_mm <= reach &&
                      about.middle.z - about.radius_mm - bend_mm(path, piece) <= z_high_mm;
    if (keep) {
      near.add(path.bent(piece));
      near.pieces.back().joins_previous = piece.joins_previous && kept_previous;
    }
    kept_previous = keep;
  }
  return near;
}

std::optional<BaseEdge> probe_base(const WallChart &chart, const SweptPath &path, std::size_t column,
                                   const ProbeRange &range) {
  // Bending moves the axis by far less than the band within which e is followed.
  const SweptPath near = pieces_near(path, chart.foot[column], chart.band_mm, range.z_high_mm);
  std::vector<double> z;
  const LargeArray<float> e = envelope_between(chart, near, column, range.z_low_mm, range.z_high_mm, z);
  if (!std::isfinite(e.back()) || e.back() > range.proud_limit_mm)
    return std::nullopt;
  BaseEdge edge;
  edge.clean_mm = lowest_below(chart, near, column, range);
  // The reached part ends at or below the clean part.
  ProbeRange reached = range;
  reached.z_high_mm = edge.clean_mm;
  reached.proud_limit_mm = chart.band_mm;
  edge.reached_mm =
      edge.clean_mm > range.z_low_mm ? lowest_below(chart, near, column, reached) : edge.clean_mm;
  return edge;
}

} // namespace asperity
