// Nonlinear least squares for a handful of parameters and a costly model.
#pragma once

#include "asperity/tolerance/linear_fit.h"

#include <functional>
#include <optional>
#include <span>
#include <vector>

namespace asperity {

/// Residuals, each already divided by its standard uncertainty; nothing where the model has no answer. Called
/// from several threads at once.
using Residuals = std::function<std::optional<std::vector<double>>(std::span<const double> parameters)>;

struct LeastSquaresOptions {
  std::vector<double> scale;  ///< a typical change of each parameter
  double difference = 0.5;    ///< step of the central differences, in scales
  double close_enough = 1e-3; ///< the last step, in scales
  int most_steps = 40;
  int threads = 0; ///< 0 = all cores
  /// At the start, where it is known already.
  std::optional<Matrix> first_jacobian = std::nullopt;
};

struct LeastSquares {
  bool converged = false;
  std::vector<double> parameters, residuals;
  Matrix jacobian; ///< of the residuals, at `parameters`
  double squared_residual = 0;
};

/// Central differences at a point.
std::optional<Matrix> jacobian_at(const Residuals &residuals, std::span<const double> point,
                                  const LeastSquaresOptions &options);

/// Gauss-Newton steps by a Jacobian that is brought along from step to step [Broyden 1965, Math. Comp. 19,
/// 577] and worked out anew where it no longer helps and at the end; shortened by Marquardt's damping where
/// they do not help [Marquardt 1963, J. SIAM 11, 431; from memory]. Nothing where the model has no answer at
/// the start.
std::optional<LeastSquares> least_squares(const Residuals &residuals, std::vector<double> start,
                                          const LeastSquaresOptions &options);

} // namespace asperity
