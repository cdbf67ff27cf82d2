// Builds the floor jobs and looks for errors in what was swept.
#include "bench/floor_paths.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace asperity::bench {

namespace {

constexpr double kHalf_mm = 0.5 * kSquare_mm;

Vec3 tip_at(const FloorCase &job, int line, int joint) {
  const double x = -kHalf_mm + kSquare_mm * joint / job.moves_per_line;
  return {x, line_y_mm(job, line), tip_mm(job, line, x)};
}

CutterProfile cutter_of(const FloorCase &job) { return CutterProfile::ball(kBall_mm).grown(job.grown_mm); }

/// Least height of the cutter's surface over p on the way from a to b, by golden section.
double lowest_mm(const CutterProfile &cutter, Vec3 a, Vec3 b, Vec2 p) {
  const auto height = [&](double u) {
    const Vec3 tip = a + u * (b - a);
    const double d2 = (tip.x - p.x) * (tip.x - p.x) + (tip.y - p.y) * (tip.y - p.y);
    const double d = std::sqrt(d2);
    // Beyond the rim the surface is continued by a slope, so that the search finds its way back.
    return d <= cutter.radius_mm() ? tip.z + cutter.height_at(d) : 1e3 + d2;
  };
  const double golden = 0.5 * (std::sqrt(5.0) - 1.0);
  double low = 0.0, high = 1.0, u = high - golden, v = low + golden, at_u = height(u), at_v = height(v);
  while (high - low > 1e-9) {
    if (at_u < at_v) {
      high = v, v = u, at_v = at_u;
      u = high - golden * (high - low), at_u = height(u);
    } else {
      low = u, u = v, at_u = at_v;
      v = low + golden * (high - low), at_v = height(v);
    }
  }
  return std::min({at_u, at_v, height(0.0), height(1.0)});
}

} // namespace

double line_y_mm(const FloorCase &job, int line) { return -kHalf_mm + kSquare_mm * (line + 0.5) / job.lines; }

double tip_mm(const FloorCase &job, int line, double x_mm) {
  const double y = line_y_mm(job, line);
  const double left = 0.7 * std::sin(0.3 * y), right = 0.7 * std::cos(0.2 * y);
  const double share = (x_mm + kHalf_mm) / kSquare_mm;
  return left + share * (right - left) + job.wave_mm * std::sin(2.0 * 3.14159265358979323846 * x_mm / 20.0);
}

SweptPath path_of(const FloorCase &job) {
  SweptPath path;
  path.cutters.push_back({.profile = cutter_of(job), .flute_length_mm = 20.0});
  for (int line = 0; line < job.lines; ++line)
    for (int i = 0; i < job.moves_per_line; ++i) {
      const bool is_back = line % 2 == 1;
      const int from = is_back ? job.moves_per_line - i : i, to = is_back ? from - 1 : from + 1;
      BentPiece piece;
      piece.curve = Curve::line(tip_at(job, line, from), tip_at(job, line, to));
      piece.owner = static_cast<std::uint32_t>(path.pieces.size());
      piece.joins_previous = i > 0;
      path.add(piece);
    }
  return path;
}

FloorChart chart_of(const FloorCase &job) {
  return make_floor_chart(Vec2(-kHalf_mm), Vec2(kHalf_mm), job.spacing_mm, 0.0);
}

double worst_error_mm(const FloorChart &chart, const FloorCase &job, int cells) {
  const CutterProfile cutter = cutter_of(job);
  std::mt19937 random(7);
  std::uniform_int_distribution<std::size_t> any(0, chart.nx * chart.ny - 1);
  double worst = 0.0;
  for (int n = 0; n < cells; ++n) {
    const std::size_t cell = any(random);
    const Vec2 p(chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx));
    double least = std::numeric_limits<double>::infinity();
    const auto joint_at = [&](double x) {
      return int(std::clamp((x + kHalf_mm) / kSquare_mm, 0.0, 1.0) * job.moves_per_line);
    };
    for (int line = 0; line < job.lines; ++line) {
      // A ball's diameter away no pass can be the lowest here: its neighbours are in reach.
      if (std::abs(line_y_mm(job, line) - p.y) > 0.4 * kBall_mm)
        continue;
      const int end = std::min(job.moves_per_line - 1, joint_at(p.x + kBall_mm) + 1);
      for (int i = std::max(0, joint_at(p.x - kBall_mm) - 1); i <= end; ++i)
        least = std::min(least, lowest_mm(cutter, tip_at(job, line, i), tip_at(job, line, i + 1), p));
    }
    worst = std::max(worst, std::abs(double(chart.envelope_mm[cell]) - least));
  }
  return worst;
}

} // namespace asperity::bench
