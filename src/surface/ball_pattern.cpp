// The two-way pattern of a ball cutter: paraboloids on a square or staggered grid.
#include "asperity/surface/kinematic.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A dent's share of the plane in a staggered grid: 0 <= x <= half_feed, 0 <= y <= top(x), mirrored.
struct StaggeredCell {
  double feed = 0, step = 0; ///< step >= feed / 2
  double top(double x) const { return step / 2.0 + (feed * feed / 4.0 - feed * x) / (2.0 * step); }
};

/// Integrals of u = x^2 + y^2, of u^2, and of (level - u) where positive, up a strip at x to the height top.
struct StripSums {
  double first = 0, second = 0, below = 0;
};

StripSums strip_sums(double x, double top, double level) {
  const double x2 = x * x, y2 = top * top;
  StripSums sums;
  sums.first = top * (x2 + y2 / 3.0);
  sums.second = top * (x2 * x2 + x2 * y2 * 2.0 / 3.0 + y2 * y2 / 5.0);
  const double reach = std::min(top, std::sqrt(std::max(0.0, level - x2)));
  sums.below = reach * (level - x2 - reach * reach / 3.0);
  return sums;
}

/// Means over the cell by the midpoint rule on strips.
StripSums cell_means(const StaggeredCell &cell, double level) {
  constexpr int kStrips = 4000; // error below 1e-7 of the result
  const double width = cell.feed / 2.0 / kStrips;
  StripSums sums;
  double area = 0;
  for (int i = 0; i < kStrips; ++i) {
    const double x = (i + 0.5) * width, top = cell.top(x);
    const StripSums strip = strip_sums(x, top, level);
    sums.first += strip.first;
    sums.second += strip.second;
    sums.below += std::max(0.0, strip.below);
    area += top;
  }
  return {sums.first / area, sums.second / area, sums.below / area};
}

} // namespace

PatternHeights square_ball_pattern(const BallPattern &pattern) {
  const double a = parabola_cusp_mm(pattern.radius_mm, pattern.stepover_mm);
  const double b = parabola_cusp_mm(pattern.radius_mm, pattern.feed_mm);
  const double high = std::max(a, b), low = std::min(a, b);
  PatternHeights heights{.sa_mm = cusp_ra_mm(high), .sq_mm = cusp_rq_mm(std::hypot(a, b)), .sz_mm = a + b};
  if (low <= 0)
    return heights;

  // Sa = twice the mean of what lies below the mean plane: high u^2 + low v^2 < mean on the unit square. The
  // ellipse never passes u = 1; it passes v = 1 where low < high / 2.
  const double mean = (a + b) / 3.0;
  const double angle = std::asin(std::min(1.0, std::sqrt(low / mean)));
  const double fourth_powers = 3.0 * angle / 8.0 + std::sin(2.0 * angle) / 4.0 + std::sin(4.0 * angle) / 32.0;
  heights.sa_mm = 4.0 / 3.0 * mean * mean / std::sqrt(high * low) * fourth_powers;
  return heights;
}

PatternHeights staggered_ball_pattern(const BallPattern &pattern) {
  if (pattern.stepover_mm <= 0 || pattern.feed_mm <= 0)
    return square_ball_pattern(pattern);
  // The grid turned a quarter is staggered too: take the view in which a dent's cell reaches x = half a feed.
  StaggeredCell cell{pattern.feed_mm, pattern.stepover_mm};
  if (cell.step < cell.feed / 2.0)
    cell = {2.0 * pattern.stepover_mm, pattern.feed_mm / 2.0};

  const double height_per_u = 1.0 / (2.0 * pattern.radius_mm);
  const double mean = cell_means(cell, 0.0).first;
  const StripSums means = cell_means(cell, mean);
  // The highest points stand where three dents meet: at the circumcentre of their middles.
  const double corner = cell.top(cell.feed / 2.0);
  const double farthest = cell.feed * cell.feed / 4.0 + std::pow(std::max(corner, 0.0), 2);
  const double other = std::pow(cell.top(0.0), 2);
  return {.sa_mm = 2.0 * means.below * height_per_u,
          .sq_mm = std::sqrt(means.second - mean * mean) * height_per_u,
          .sz_mm = std::max(farthest, other) * height_per_u};
}

} // namespace asperity
