// Least-squares circle of a nearly round profile given as deviations by direction.
#include "least_squares_circle.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Sums of the normal equations for 1, cos, sin.
struct NormalSums {
  double n = 0, c = 0, s = 0, cc = 0, cs = 0, ss = 0, e = 0, ec = 0, es = 0;
};

NormalSums sums_of(std::span<const Vec2> direction, std::span<const double> e) {
  NormalSums m;
  for (std::size_t i = 0; i < e.size(); ++i) {
    if (std::isnan(e[i]))
      continue;
    const double c = direction[i].x, s = direction[i].y;
    m.n += 1, m.c += c, m.s += s, m.cc += c * c, m.cs += c * s, m.ss += s * s;
    m.e += e[i], m.ec += e[i] * c, m.es += e[i] * s;
  }
  return m;
}

double determinant(double a, double b, double c, double d, double e, double f, double g, double h, double i) {
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
}

} // namespace

CircleFit fit_circle(std::span<const Vec2> direction, std::span<const double> deviation_mm) {
  CircleFit fit;
  const NormalSums m = sums_of(direction, deviation_mm);
  fit.points = static_cast<std::size_t>(m.n);
  if (m.n == 0)
    return fit;

  // Cramer's rule; on an arc too short to place a centre only the mean is taken.
  const double whole = determinant(m.n, m.c, m.s, m.c, m.cc, m.cs, m.s, m.cs, m.ss);
  if (whole > 1e-6 * m.n * m.n * m.n) {
    fit.mean_mm = determinant(m.e, m.c, m.s, m.ec, m.cc, m.cs, m.es, m.cs, m.ss) / whole;
    fit.centre_x_mm = determinant(m.n, m.e, m.s, m.c, m.ec, m.cs, m.s, m.es, m.ss) / whole;
    fit.centre_y_mm = determinant(m.n, m.c, m.e, m.c, m.cc, m.ec, m.s, m.cs, m.es) / whole;
  } else {
    fit.mean_mm = m.e / m.n;
  }

  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t i = 0; i < deviation_mm.size(); ++i) {
    if (std::isnan(deviation_mm[i]))
      continue;
    const double rest =
        deviation_mm[i] - fit.mean_mm - fit.centre_x_mm * direction[i].x - fit.centre_y_mm * direction[i].y;
    low = std::min(low, rest);
    high = std::max(high, rest);
  }
  fit.roundness_mm = high - low;
  return fit;
}

} // namespace asperity
