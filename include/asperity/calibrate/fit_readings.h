// Fits uncertain values to readings, and says what the readings cannot tell.
#pragma once

#include "asperity/tolerance/linear_fit.h"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace asperity {

/// What the readings should be when every value stands at that deviate (in stated standard uncertainties).
using ReadingModel = std::function<std::optional<std::vector<double>>(std::span<const double> deviates)>;

struct NamedValue {
  std::string what;    ///< in words: "machine stiffness"
  std::string measure; ///< how to know it better
};

/// The first `fitted` values are fitted freely, by the readings alone. All others are held near their stated
/// values by their stated uncertainties (JCGM 101 terms: they keep their distributions as prior), so that
/// what is not known of them widens the standard errors of those fitted.
struct FitTask {
  ReadingModel model;
  std::vector<double> readings, standard_uncertainty;
  std::vector<NamedValue> values;
  std::size_t fitted = 0;
  int threads = 0;
};

struct FitOfReadings {
  std::string refusal; ///< empty, or what the readings cannot determine and what to measure
  std::vector<double> deviates, standard_errors; ///< of all values
  Matrix covariance;                             ///< of all deviates
  std::vector<double> before, after;             ///< readings by the model, stated and fitted
  double chi_squared = 0, chi_squared_limit = 0; ///< limit: 95 % quantile; 0 without degrees of freedom
  int freedom = 0;                               ///< readings minus fitted values
};

FitOfReadings fit_readings(const FitTask &task);

/// 95 % quantile of chi-squared, within 1 % [Wilson, Hilferty 1931, PNAS 17, 684; from memory].
double chi_squared_limit(int freedom);

/// Empty where every direction of the fitted values is known better from the readings than it was stated;
/// else which values cannot be told apart, in words. `jacobian`: of the readings over their standard
/// uncertainties, all values side by side.
std::string what_stays_open(const Matrix &jacobian, const std::vector<NamedValue> &values,
                            std::size_t fitted);

} // namespace asperity
