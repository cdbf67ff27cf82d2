// Weighted least squares of the readings, with the values that are not fitted held by what is stated of them.
#include "asperity/calibrate/fit_readings.h"

#include "asperity/calibrate/least_squares.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Components of a direction below this share of it are not named.
constexpr double kWorthNaming = 0.3;
/// A direction counts as determined when its standard error is below the stated standard uncertainty.
constexpr double kLeastInformation = 1.0;
constexpr double kNormal95 = 1.6448536269514722;

/// Residuals of the readings, then one for each value that is held.
Residuals residuals_of(const FitTask &task) {
  return [&task](std::span<const double> deviates) -> std::optional<std::vector<double>> {
    auto model = task.model(deviates);
    if (!model)
      return std::nullopt;
    for (std::size_t i = 0; i < model->size(); ++i)
      (*model)[i] = ((*model)[i] - task.readings[i]) / task.standard_uncertainty[i];
    model->insert(model->end(), deviates.begin() + static_cast<std::ptrdiff_t>(task.fitted), deviates.end());
    return model;
  };
}

Matrix columns_of(const Matrix &a, std::size_t begin, std::size_t end) {
  Matrix part(a.rows, end - begin);
  for (std::size_t r = 0; r < a.rows; ++r)
    for (std::size_t c = begin; c < end; ++c)
      part(r, c - begin) = a(r, c);
  return part;
}

Matrix with_held_rows(const Matrix &readings, std::size_t fitted) {
  Matrix all(readings.rows + readings.columns - fitted, readings.columns);
  std::copy(readings.cells.begin(), readings.cells.end(), all.cells.begin());
  for (std::size_t c = fitted; c < readings.columns; ++c)
    all(readings.rows + c - fitted, c) = 1.0;
  return all;
}

/// Information on the fitted values, the held ones averaged out (Schur complement).
Matrix information_on_fitted(const Matrix &readings, std::size_t fitted) {
  const Matrix all = with_held_rows(readings, fitted);
  const Matrix free = columns_of(all, 0, fitted);
  Matrix information = product(transposed(free), free);
  if (fitted == all.columns)
    return information;
  const Matrix held = columns_of(all, fitted, all.columns);
  const auto solved = linear_fit(held, std::vector<double>(held.rows, 0.0)); // held has full rank: unit rows
  const Matrix cross = product(transposed(held), free);
  const Matrix lost = product(transposed(cross), product(solved->inverse_normal, cross));
  for (std::size_t i = 0; i < information.cells.size(); ++i)
    information.cells[i] -= lost.cells[i];
  return information;
}

std::string in_words(const std::vector<std::string> &names) {
  if (names.size() == 1)
    return names[0];
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i)
    text += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + names[i];
  return text;
}

/// The value whose effect on the readings is most like that of value i.
std::size_t closest_to(const Matrix &information, std::size_t i) {
  std::size_t closest = i == 0 ? 1 : 0;
  double most = -1.0;
  for (std::size_t k = 0; k < information.rows; ++k) {
    const double size = std::sqrt(information(i, i) * information(k, k));
    if (k != i && size > 0.0 && std::abs(information(i, k)) / size > most) {
      most = std::abs(information(i, k)) / size;
      closest = k;
    }
  }
  return closest;
}

FitOfReadings refused(std::string why) {
  FitOfReadings fit;
  fit.refusal = std::move(why);
  return fit;
}

} // namespace

double chi_squared_limit(int freedom) {
  if (freedom <= 0)
    return 0.0;
  const double part = 2.0 / (9.0 * freedom);
  return freedom * std::pow(1.0 - part + kNormal95 * std::sqrt(part), 3);
}

std::string what_stays_open(const Matrix &jacobian, const std::vector<NamedValue> &values,
                            std::size_t fitted) {
  const Matrix information = information_on_fitted(jacobian, fitted);
  const SymmetricAxes axes = symmetric_axes(information);
  const std::size_t weakest = fitted - 1;
  if (axes.values[weakest] >= kLeastInformation)
    return {};
  std::vector<std::size_t> open;
  for (std::size_t i = 0; i < fitted; ++i)
    if (std::abs(axes.axes(i, weakest)) >= kWorthNaming)
      open.push_back(i);
  // One that the readings would determine by itself is hidden by the one it goes along with most.
  if (open.size() == 1 && fitted > 1 && information(open[0], open[0]) >= kLeastInformation)
    open.push_back(closest_to(information, open[0]));
  std::vector<std::string> names;
  std::string measures;
  for (const std::size_t i : open) {
    names.push_back(values[i].what);
    measures += fmt::format("\n  - {}: {}", values[i].what, values[i].measure);
  }
  if (names.size() == 1)
    return fmt::format(
        "the readings say less about {} than was known before. Take it out of fit, or measure:{}", names[0],
        measures);
  return fmt::format(
      "the readings cannot tell {} apart: what one does to them another undoes. Fit fewer of them, "
      "or measure one by itself:{}",
      in_words(names), measures);
}

FitOfReadings fit_readings(const FitTask &task) {
  const std::size_t count = task.values.size();
  LeastSquaresOptions options;
  options.scale.assign(count, 1.0);
  options.close_enough = 1e-2; // of a stated standard uncertainty
  options.threads = task.threads;
  const Residuals residuals = residuals_of(task);
  const auto readings_part = [&](const Matrix &jacobian) {
    Matrix part(task.readings.size(), jacobian.columns);
    std::copy_n(jacobian.cells.begin(), part.cells.size(), part.cells.begin());
    return part;
  };

  // What cannot be determined is said before any fitting, and asked again where the fit has come to.
  const std::vector<double> stated(count, 0.0);
  const auto before = task.model(stated);
  const auto first = jacobian_at(residuals, stated, options);
  if (!before || !first)
    return refused("the job cannot be predicted with its values moved by what is stated of them.");
  if (std::string open = what_stays_open(readings_part(*first), task.values, task.fitted); !open.empty())
    return refused(std::move(open));
  options.first_jacobian = *first;
  const auto found = least_squares(residuals, stated, options);
  if (!found || !found->converged)
    return refused("no values fit the readings: check them, and what the job states.");
  if (std::string open = what_stays_open(readings_part(found->jacobian), task.values, task.fitted);
      !open.empty())
    return refused(std::move(open));

  FitOfReadings fit;
  fit.before = *before;
  fit.after = task.model(found->parameters).value_or(*before);
  fit.deviates = found->parameters;
  const auto linear = linear_fit(found->jacobian, found->residuals);
  if (!linear)
    return refused("the readings do not determine the values.");
  fit.covariance = linear->inverse_normal;
  for (std::size_t i = 0; i < count; ++i)
    fit.standard_errors.push_back(std::sqrt(fit.covariance(i, i)));
  fit.chi_squared = found->squared_residual;
  fit.freedom = static_cast<int>(task.readings.size()) - static_cast<int>(task.fitted);
  fit.chi_squared_limit = chi_squared_limit(fit.freedom);
  return fit;
}

} // namespace asperity
