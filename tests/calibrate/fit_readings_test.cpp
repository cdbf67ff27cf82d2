// Fits of a closed-form wall: coverage of the stated errors, and what readings cannot tell.
#include "asperity/calibrate/fit_readings.h"

#include "asperity/tolerance/counter_draw.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

// A wall's error in closed form: mean force (edge part + chip part) over the machine's stiffness, as in the
// summary of mean forces; on a diameter twice. Values in deviates of stated standard uncertainties.
constexpr double kEdge_N = 1.3, kStiffness_N_per_um = 0.3;
constexpr double kU_edge = 0.35, kU_stiffness = 0.2, kU_chip = 0.2, kU_cutter_mm = 0.01;

double diameter_mm(double chip_N, double edge, double stiffness, double chip, double cutter) {
  const double force_N = kEdge_N * std::exp(kU_edge * edge) + chip_N * std::exp(kU_chip * chip);
  const double error_um = force_N / (kStiffness_N_per_um * std::exp(kU_stiffness * stiffness));
  return 62.0 + 2e-3 * error_um - kU_cutter_mm * cutter;
}

/// Readings: two diameters with little and much chip, a diameter without load, a pull of 20 N [um].
std::vector<double> bench(std::span<const double> g) {
  return {diameter_mm(0.3, g[0], g[1], g[2], g[3]), diameter_mm(2.5, g[0], g[1], g[2], g[3]),
          62.0 - kU_cutter_mm * g[3], 20.0 / (kStiffness_N_per_um * std::exp(kU_stiffness * g[1]))};
}

FitTask bench_task(std::vector<double> readings) {
  FitTask task;
  task.model = [](std::span<const double> g) { return std::optional(bench(g)); };
  task.readings = std::move(readings);
  task.standard_uncertainty = {0.0005, 0.0005, 0.0005, 2.0};
  task.values = {{"edge coefficients", "second pass"},
                 {"machine stiffness", "pull the nose"},
                 {"cutting coefficients", "two feeds"},
                 {"cutter diameter", "gauge it"}};
  task.fitted = 2;
  task.threads = 1;
  return task;
}

// 200 trials, each with its own truth and noise: the 95 % intervals of both fitted values must hold the truth
// in a number of trials within the central 99 % of the binomial distribution B(200, 0.95): 181 to 197 (SciPy
// 1.10.1 binom.ppf). The values held are drawn from what is stated of them, as the method takes them.
TEST(FitReadings, RecoversKnownValuesWithinItsOwnErrors) {
  constexpr int kTrials = 200, kFewest = 181, kMost = 197;
  int inside[2] = {0, 0};
  for (std::uint64_t trial = 0; trial < kTrials; ++trial) {
    std::vector<double> truth;
    for (const char *name : {"edge", "stiffness", "chip", "cutter"})
      truth.push_back(normal_draw(11, trial, name));
    FitTask task = bench_task(bench(truth));
    for (std::size_t i = 0; i < task.readings.size(); ++i)
      task.readings[i] +=
          task.standard_uncertainty[i] * normal_draw(12, trial, std::string(1, char('a' + i)));
    const FitOfReadings fit = fit_readings(task);
    ASSERT_EQ(fit.refusal, "") << trial;
    for (std::size_t i = 0; i < 2; ++i)
      inside[i] += std::abs(fit.deviates[i] - truth[i]) <= 1.96 * fit.standard_errors[i];
  }
  for (const int count : inside) {
    EXPECT_GE(count, kFewest);
    EXPECT_LE(count, kMost);
  }
}

TEST(FitReadings, ExactReadingsGiveTheExactValues) {
  const std::vector<double> truth{0.8, -1.1, 0.0, 0.0};
  const FitOfReadings fit = fit_readings(bench_task(bench(truth)));
  ASSERT_EQ(fit.refusal, "");
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(fit.deviates[i], truth[i], 2e-3) << "the last step was below 1e-2, and steps shrink fast";
  EXPECT_LT(fit.chi_squared, 1e-4);
  EXPECT_EQ(fit.freedom, 2);
}

// What is not known of the values held widens the errors of those fitted.
TEST(FitReadings, HeldValuesWidenTheErrors) {
  const std::vector<double> truth(4, 0.0);
  FitTask task = bench_task(bench(truth));
  const FitOfReadings uncertain = fit_readings(task);
  task.values.resize(2);
  task.model = [](std::span<const double> g) {
    const std::vector<double> all{g[0], g[1], 0.0, 0.0};
    return std::optional(bench(all));
  };
  const FitOfReadings certain = fit_readings(task);
  ASSERT_EQ(uncertain.refusal + certain.refusal, "");
  EXPECT_GT(uncertain.standard_errors[0], 1.05 * certain.standard_errors[0]);
}

// Force over stiffness: a diameter sees only their quotient.
TEST(FitReadings, RefusesWhatCannotBeToldApartInWords) {
  FitTask task = bench_task({diameter_mm(0.3, 0, 0, 0, 0)});
  task.model = [](std::span<const double> g) {
    return std::optional(std::vector<double>{diameter_mm(0.3, g[0], g[1], g[2], g[3])});
  };
  task.standard_uncertainty = {0.001};
  const FitOfReadings fit = fit_readings(task);
  EXPECT_NE(fit.refusal.find("cannot tell edge coefficients and machine stiffness apart"), std::string::npos)
      << fit.refusal;
  EXPECT_NE(fit.refusal.find("machine stiffness: pull the nose"), std::string::npos);
  EXPECT_TRUE(fit.deviates.empty());
}

TEST(FitReadings, RefusesWhatTheReadingsDoNotTouch) {
  FitTask task = bench_task({62.0});
  task.model = [](std::span<const double> g) {
    return std::optional(std::vector<double>{62.0 - 0.01 * g[1]});
  };
  task.standard_uncertainty = {0.001};
  task.values.resize(2);
  task.fitted = 1;
  const FitOfReadings fit = fit_readings(task);
  EXPECT_NE(fit.refusal.find("say less about edge coefficients than was known"), std::string::npos);
}

// Chi-squared quantiles 3.841, 5.991, 11.070, 18.307: printed tables; the cube-root form is right to 3 % at
// one degree of freedom and better above.
TEST(FitReadings, LimitOfChiSquaredIsTheTables) {
  EXPECT_NEAR(chi_squared_limit(1), 3.841, 0.03 * 3.841);
  EXPECT_NEAR(chi_squared_limit(2), 5.991, 0.01 * 5.991);
  EXPECT_NEAR(chi_squared_limit(5), 11.070, 0.01 * 11.070);
  EXPECT_NEAR(chi_squared_limit(10), 18.307, 0.01 * 18.307);
  EXPECT_EQ(chi_squared_limit(0), 0.0);
}

// A reading 10 standard uncertainties from all others.
TEST(FitReadings, ReadingsThatContradictEachOtherShow) {
  const std::vector<double> truth(4, 0.0);
  FitTask task = bench_task(bench(truth));
  task.readings.push_back(task.readings[3] + 20.0);
  task.standard_uncertainty.push_back(2.0);
  task.model = [](std::span<const double> g) {
    std::vector<double> all = bench(g);
    all.push_back(all[3]);
    return std::optional(all);
  };
  const FitOfReadings fit = fit_readings(task);
  ASSERT_EQ(fit.refusal, "");
  EXPECT_GT(fit.chi_squared, fit.chi_squared_limit);
}

} // namespace
} // namespace asperity
