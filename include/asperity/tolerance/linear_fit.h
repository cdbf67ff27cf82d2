// Small dense linear algebra: least squares, and the axes of a symmetric matrix.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace asperity {

/// Row by row.
struct Matrix {
  std::size_t rows = 0, columns = 0;
  std::vector<double> cells;

  Matrix() = default;
  Matrix(std::size_t row_count, std::size_t column_count)
      : rows(row_count), columns(column_count), cells(row_count * column_count, 0.0) {}
  double &operator()(std::size_t r, std::size_t c) { return cells[r * columns + c]; }
  double operator()(std::size_t r, std::size_t c) const { return cells[r * columns + c]; }
};

Matrix product(const Matrix &a, const Matrix &b);
Matrix transposed(const Matrix &a);

/// Coefficients c with the smallest |a c - y|.
struct LinearFit {
  std::vector<double> coefficients;
  Matrix inverse_normal; ///< (a^T a)^-1: times the variance of y it is the coefficients' covariance
  double squared_residual = 0;
};

/// By Householder reflections [Golub, Van Loan, Matrix Computations, 3rd ed., 5.3.2; from memory]. Nothing
/// when the columns are dependent within rounding, or rows are too few.
std::optional<LinearFit> linear_fit(Matrix a, std::vector<double> y);

/// Eigenvalues, largest first, and unit eigenvectors in the columns of `axes`.
struct SymmetricAxes {
  std::vector<double> values;
  Matrix axes;
};
/// Cyclic Jacobi rotations [Golub, Van Loan, 8.4; from memory].
SymmetricAxes symmetric_axes(Matrix a);

} // namespace asperity
