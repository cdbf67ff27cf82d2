// Householder least squares and Jacobi's rotations.
#include "asperity/tolerance/linear_fit.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>
#include <numeric>

namespace asperity {

namespace {

/// A column counts as dependent when its rest after all earlier ones is below this share of its length.
constexpr double kDependent = 1e-10;

double norm_below(const Matrix &a, std::size_t row, std::size_t column) {
  double sum = 0.0;
  for (std::size_t r = row; r < a.rows; ++r)
    sum += a(r, column) * a(r, column);
  return std::sqrt(sum);
}

/// Reflects column k onto its head, and all later columns and y with it.
void reflect(Matrix &a, std::vector<double> &y, std::size_t k, double length) {
  const double head = a(k, k) > 0.0 ? -length : length;
  std::vector<double> v(a.rows, 0.0);
  for (std::size_t r = k; r < a.rows; ++r)
    v[r] = a(r, k);
  v[k] -= head;
  const double square = std::inner_product(v.begin(), v.end(), v.begin(), 0.0);
  const auto apply = [&](auto &&cell) {
    double along = 0.0;
    for (std::size_t r = k; r < a.rows; ++r)
      along += v[r] * cell(r);
    for (std::size_t r = k; r < a.rows; ++r)
      cell(r) -= 2.0 * along / square * v[r];
  };
  for (std::size_t c = k; c < a.columns; ++c)
    apply([&](std::size_t r) -> double & { return a(r, c); });
  apply([&](std::size_t r) -> double & { return y[r]; });
}

/// Inverse of the upper triangle at the head of a.
Matrix inverse_triangle(const Matrix &a) {
  Matrix inverse(a.columns, a.columns);
  for (std::size_t c = 0; c < a.columns; ++c)
    for (std::size_t r = c + 1; r-- > 0;) {
      double sum = r == c ? 1.0 : 0.0;
      for (std::size_t k = r + 1; k <= c; ++k)
        sum -= a(r, k) * inverse(k, c);
      inverse(r, c) = sum / a(r, r);
    }
  return inverse;
}

/// Turns rows and columns p and q so that a(p, q) vanishes.
void rotate(Matrix &a, Matrix &axes, std::size_t p, std::size_t q) {
  const double theta = (a(q, q) - a(p, p)) / (2.0 * a(p, q));
  const double t = (theta >= 0.0 ? 1.0 : -1.0) / (std::abs(theta) + std::sqrt(theta * theta + 1.0));
  const double c = 1.0 / std::sqrt(t * t + 1.0), s = t * c;
  const auto turn = [&](double &x, double &y) {
    const double old = x;
    x = c * old - s * y;
    y = s * old + c * y;
  };
  for (std::size_t k = 0; k < a.rows; ++k)
    turn(a(k, p), a(k, q));
  for (std::size_t k = 0; k < a.rows; ++k)
    turn(a(p, k), a(q, k));
  for (std::size_t k = 0; k < a.rows; ++k)
    turn(axes(k, p), axes(k, q));
}

SymmetricAxes sorted(const Matrix &a, const Matrix &axes) {
  std::vector<std::size_t> order(a.rows);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) { return a(i, i) > a(j, j); });
  SymmetricAxes result{{}, Matrix(a.rows, a.rows)};
  for (std::size_t c = 0; c < order.size(); ++c) {
    result.values.push_back(a(order[c], order[c]));
    for (std::size_t r = 0; r < a.rows; ++r)
      result.axes(r, c) = axes(r, order[c]);
  }
  return result;
}

} // namespace

Matrix product(const Matrix &a, const Matrix &b) {
  assert(a.columns == b.rows);
  Matrix result(a.rows, b.columns);
  for (std::size_t r = 0; r < a.rows; ++r)
    for (std::size_t k = 0; k < a.columns; ++k)
      for (std::size_t c = 0; c < b.columns; ++c)
        result(r, c) += a(r, k) * b(k, c);
  return result;
}

Matrix transposed(const Matrix &a) {
  Matrix result(a.columns, a.rows);
  for (std::size_t r = 0; r < a.rows; ++r)
    for (std::size_t c = 0; c < a.columns; ++c)
      result(c, r) = a(r, c);
  return result;
}

std::optional<LinearFit> linear_fit(Matrix a, std::vector<double> y) {
  assert(a.rows == y.size());
  if (a.rows < a.columns)
    return std::nullopt;
  for (std::size_t k = 0; k < a.columns; ++k) {
    const double whole = norm_below(a, 0, k), length = norm_below(a, k, k);
    if (!(length > kDependent * whole) || !std::isfinite(length))
      return std::nullopt;
    reflect(a, y, k, length);
  }
  LinearFit fit;
  const Matrix inverse = inverse_triangle(a);
  fit.coefficients.assign(a.columns, 0.0);
  for (std::size_t r = 0; r < a.columns; ++r)
    for (std::size_t c = r; c < a.columns; ++c)
      fit.coefficients[r] += inverse(r, c) * y[c];
  fit.inverse_normal = product(inverse, transposed(inverse));
  for (std::size_t r = a.columns; r < a.rows; ++r)
    fit.squared_residual += y[r] * y[r];
  return fit;
}

SymmetricAxes symmetric_axes(Matrix a) {
  assert(a.rows == a.columns);
  constexpr int kMostSweeps = 60;
  Matrix axes(a.rows, a.rows);
  double size = 0.0;
  for (std::size_t i = 0; i < a.rows; ++i)
    axes(i, i) = 1.0;
  for (const double cell : a.cells)
    size = std::max(size, std::abs(cell));
  for (int sweep = 0; sweep < kMostSweeps; ++sweep) {
    bool is_diagonal = true;
    for (std::size_t p = 0; p < a.rows; ++p)
      for (std::size_t q = p + 1; q < a.rows; ++q)
        if (std::abs(a(p, q)) > std::numeric_limits<double>::epsilon() * size) {
          rotate(a, axes, p, q);
          is_diagonal = false;
        }
    if (is_diagonal)
      break;
  }
  return sorted(a, axes);
}

} // namespace asperity
