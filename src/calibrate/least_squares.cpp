// Damped Gauss-Newton steps; every step solves a linear least-squares problem, no normal equations.
#include "asperity/calibrate/least_squares.h"

#include "asperity/base/parallel.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace asperity {

namespace {

constexpr double kFirstDamping = 1e-3, kLeastDamping = 1e-12, kMostDamping = 1e12;
constexpr double kEase = 0.1, kHarden = 10.0;
/// Damping that leaves a step nearly the undamped one.
constexpr double kLightDamping = 1e-2;
/// Steps this share of the wanted accuracy are not worth another call of the model.
constexpr double kShortest = 0.1;
/// A fifth of a standard error, squared.
constexpr double kHardlyAnything = 0.04;

double square_of(const std::vector<double> &r) {
  return std::inner_product(r.begin(), r.end(), r.begin(), 0.0);
}

/// Step that minimises |J d + r|^2 + damping |d/scale|^2.
std::optional<std::vector<double>> damped_step(const Matrix &jacobian, const std::vector<double> &residuals,
                                               const std::vector<double> &scale, double damping) {
  Matrix a(jacobian.rows + jacobian.columns, jacobian.columns);
  std::copy(jacobian.cells.begin(), jacobian.cells.end(), a.cells.begin());
  std::vector<double> y(a.rows, 0.0);
  for (std::size_t r = 0; r < residuals.size(); ++r)
    y[r] = -residuals[r];
  for (std::size_t c = 0; c < a.columns; ++c)
    a(jacobian.rows + c, c) = std::sqrt(damping) / scale[c];
  auto fit = linear_fit(std::move(a), std::move(y));
  return fit ? std::optional(std::move(fit->coefficients)) : std::nullopt;
}

double longest(const std::vector<double> &step, const std::vector<double> &scale) {
  double most = 0.0;
  for (std::size_t i = 0; i < step.size(); ++i)
    most = std::max(most, std::abs(step[i]) / scale[i]);
  return most;
}

/// What the undamped step would still take off the squared residual, by the linear model.
double still_to_gain(const LeastSquares &state) {
  std::vector<double> y;
  for (const double r : state.residuals)
    y.push_back(-r);
  const auto fit = linear_fit(state.jacobian, y);
  return fit ? state.squared_residual - fit->squared_residual : state.squared_residual;
}

/// The squared residual that one standard error stands for; more than 1 where residuals are not weighted.
double gain_unit(const LeastSquares &state) {
  const auto count = static_cast<double>(std::max<std::size_t>(state.residuals.size(), 1));
  return std::max(1.0, state.squared_residual / count);
}

/// Broyden's update: along the step taken the Jacobian is what the residuals did.
void bring_along(LeastSquares &state, const LeastSquares &before, const std::vector<double> &scale) {
  const std::size_t count = scale.size();
  std::vector<double> step(count);
  double square = 0.0;
  for (std::size_t c = 0; c < count; ++c) {
    step[c] = (state.parameters[c] - before.parameters[c]) / scale[c];
    square += step[c] * step[c];
  }
  if (square == 0.0)
    return;
  for (std::size_t r = 0; r < state.residuals.size(); ++r) {
    double miss = state.residuals[r] - before.residuals[r];
    for (std::size_t c = 0; c < count; ++c)
      miss -= state.jacobian(r, c) * step[c] * scale[c];
    for (std::size_t c = 0; c < count; ++c)
      state.jacobian(r, c) += miss * step[c] / (square * scale[c]);
  }
}

/// One accepted step, or none left to take. Updates damping. Where no step helps, as with a model that is not
/// quite smooth, the fit counts as converged when hardly anything is left to gain.
bool improve(const Residuals &model, LeastSquares &state, double &damping,
             const LeastSquaresOptions &options) {
  for (; damping < kMostDamping; damping *= kHarden) {
    const auto step = damped_step(state.jacobian, state.residuals, options.scale, damping);
    if (!step)
      continue;
    const double length = longest(*step, options.scale);
    std::vector<double> next = state.parameters;
    for (std::size_t i = 0; i < next.size(); ++i)
      next[i] += (*step)[i];
    const auto residuals = model(next);
    if (residuals && square_of(*residuals) < state.squared_residual) {
      state.parameters = std::move(next);
      state.residuals = *residuals;
      state.squared_residual = square_of(*residuals);
      state.converged = length <= options.close_enough && damping <= kLightDamping;
      damping = std::max(damping * kEase, kLeastDamping);
      return true;
    }
    if (length <= kShortest * options.close_enough)
      break;
  }
  state.converged = still_to_gain(state) <= kHardlyAnything * gain_unit(state);
  return false;
}

} // namespace

std::optional<Matrix> jacobian_at(const Residuals &residuals, std::span<const double> point,
                                  const LeastSquaresOptions &options) {
  const std::size_t count = point.size();
  std::vector<std::optional<std::vector<double>>> sides(2 * count);
  for_each_band(2 * count, 1, options.threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i) {
      std::vector<double> moved(point.begin(), point.end());
      moved[i / 2] += (i % 2 == 0 ? -1.0 : 1.0) * options.difference * options.scale[i / 2];
      sides[i] = residuals(moved);
    }
  });
  if (count == 0 || std::any_of(sides.begin(), sides.end(), [](const auto &each) { return !each; }))
    return std::nullopt;
  Matrix jacobian(sides[0]->size(), count);
  for (std::size_t c = 0; c < count; ++c)
    for (std::size_t r = 0; r < jacobian.rows; ++r)
      jacobian(r, c) =
          ((*sides[2 * c + 1])[r] - (*sides[2 * c])[r]) / (2.0 * options.difference * options.scale[c]);
  return jacobian;
}

std::optional<LeastSquares> least_squares(const Residuals &residuals, std::vector<double> start,
                                          const LeastSquaresOptions &options) {
  LeastSquares state;
  state.parameters = std::move(start);
  auto first = residuals(state.parameters);
  if (!first)
    return std::nullopt;
  state.residuals = std::move(*first);
  state.squared_residual = square_of(state.residuals);
  const auto renew = [&] {
    auto jacobian = jacobian_at(residuals, state.parameters, options);
    if (jacobian)
      state.jacobian = std::move(*jacobian);
    return jacobian.has_value();
  };
  if (options.first_jacobian)
    state.jacobian = *options.first_jacobian;
  else if (!renew())
    return std::nullopt;
  double damping = kFirstDamping;
  bool is_fresh = true;
  for (int step = 0; step < options.most_steps; ++step) {
    const LeastSquares before = state;
    if (improve(residuals, state, damping, options)) {
      bring_along(state, before, options.scale);
      is_fresh = false;
      if (!state.converged)
        continue;
    } else if (is_fresh) {
      break;
    }
    // Here the brought Jacobian has done what it can: judge, and end, by a fresh one.
    if (!renew())
      return std::nullopt;
    is_fresh = true;
    state.converged = still_to_gain(state) <= options.close_enough * options.close_enough * gain_unit(state);
    if (state.converged)
      break;
    damping = kFirstDamping;
  }
  if (!is_fresh && !renew())
    return std::nullopt;
  return state;
}

} // namespace asperity
