// Whole predictions fitted: a bush is "measured" on a job with other values, and those values come back.
#include "asperity/calibrate/calibration.h"

#include "asperity/job/job_change.h"
#include "asperity/number/key_number.h"
#include "asperity/tolerance/counter_draw.h"
#include "tolerance/bush_job.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>

namespace asperity {
namespace {

using test_support::bush_job;
using test_support::BushJob;

constexpr double kGauge_mm = 0.0006; ///< expanded uncertainty: the mean of many micrometer readings

/// What the bush cut with `truth` reads, with noise within the stated uncertainty.
Reading diameter_of(const Job &truth, const Program &program, std::uint64_t trial) {
  Reading reading;
  reading.number = "side/diameter_mm";
  const auto numbers = key_numbers(predict(truth, program, {.roughness = false}, Progress{}));
  reading.value =
      find_number(numbers, reading.number)->value + 0.5 * kGauge_mm * normal_draw(21, trial, "diameter");
  reading.expanded = kGauge_mm;
  return reading;
}

Reading pull_of(const Job &truth, std::uint64_t trial) {
  Reading reading;
  reading.kind = ReadingKind::pull;
  reading.force_N = 20.0;
  reading.expanded = 2.0;
  reading.value = 20.0 / truth.machine.stiffness_xy_N_per_um + 1.0 * normal_draw(21, trial, "pull");
  return reading;
}

Measured measured_of(std::vector<FitWanted> fit, std::vector<Reading> readings) {
  return {"bush-measured.toml", std::move(fit), std::move(readings)};
}

Calibration run(const BushJob &bush, const Measured &measured) {
  return calibrate(bush.job, bush.program, measured, {.coarser = 1.0}, Progress{});
}

// A machine softer and an edge duller than stated; the 99.9 % band of each fitted value (3.3 standard errors)
// holds the truth in every trial.
TEST(Calibration, FindsTheMachineAndEdgeBehindAMeasuredBush) {
  BushJob bush = bush_job();
  bush.job.machine.stiffness_xy_N_per_um = 0.6;
  Job truth = bush.job;
  truth.machine.stiffness_xy_N_per_um *= 0.8;
  truth.machine.stiffness_z_N_per_um *= 0.8;
  truth.material.kte_N_per_mm *= 1.5;
  truth.material.kre_N_per_mm *= 1.5;
  truth.material.kae_N_per_mm *= 1.5;
  for (std::uint64_t trial = 0; trial < 3; ++trial) {
    const Calibration found =
        run(bush, measured_of({{"edge_force_share", 0}, {"stiffness_share", 0}},
                              {diameter_of(truth, bush.program, trial), pull_of(truth, trial)}));
    ASSERT_EQ(found.why, "");
    ASSERT_EQ(found.fitted.size(), 2u);
    const double truths[] = {1.5, 0.8};
    for (std::size_t i = 0; i < 2; ++i) {
      const double standard_error = standard_uncertainty_of(found.fitted[i].expanded, true);
      EXPECT_LT(std::abs(std::log(found.fitted[i].value / truths[i])), 3.3 * standard_error) << trial;
    }
    EXPECT_NEAR(found.job.machine.stiffness_xy_N_per_um, 0.6 * found.fitted[1].value, 1e-9);
  }
}

// One disc's size cannot tell a larger cutter from more bending.
TEST(Calibration, ADiameterAloneCannotTellCutterFromBending) {
  const BushJob bush = bush_job();
  const Calibration refused = run(bush, measured_of({{"cutter_diameter_mm", 1}, {"stiffness_share", 0}},
                                                    {diameter_of(bush.job, bush.program, 1)}));
  EXPECT_NE(refused.why.find("cannot tell"), std::string::npos) << refused.why;
  EXPECT_NE(refused.why.find("machine stiffness"), std::string::npos) << refused.why;
}

TEST(Calibration, NumbersTheJobHasNotAreListed) {
  const BushJob bush = bush_job();
  Reading reading;
  reading.number = "side/bore_mm";
  reading.expanded = 0.01;
  const Calibration refused = run(bush, measured_of({{"stiffness_share", 0}}, {reading}));
  EXPECT_NE(refused.why.find("\"side/bore_mm\" is not a number"), std::string::npos);
  EXPECT_NE(refused.why.find("side/diameter_mm"), std::string::npos);
}

TEST(Calibration, IndicatorAndGaugeSpeakForThemselves) {
  const BushJob bush = bush_job();
  Reading indicator, gauge;
  indicator.kind = ReadingKind::indicator;
  gauge.kind = ReadingKind::gauge;
  indicator.cutter = gauge.cutter = 1;
  indicator.value = 0.03;
  indicator.expanded = 0.004;
  gauge.value = 5.98;
  gauge.expanded = 0.004;
  const Calibration found =
      run(bush, measured_of({{"runout_share", 1}, {"cutter_diameter_mm", 1}}, {indicator, gauge}));
  ASSERT_EQ(found.why, "");
  EXPECT_NEAR(found.job.cutters[0].runout_mm, 0.03, 1e-4);
  EXPECT_NEAR(found.job.cutters[0].diameter_error_mm, -0.02, 1e-4);
  EXPECT_NEAR(found.fitted[1].expanded, 0.004, 1e-6);
}

/// The job with the written file included, read back.
std::optional<Job> read_with(const std::string &included, Problems &problems) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / "asperity_calibrated_bush";
  fs::create_directories(folder);
  std::ofstream(folder / "bush.ngc") << "M2\n";
  std::ofstream(folder / "measured.toml") << included;
  std::ofstream(folder / "bush.toml")
      << "include = \"measured.toml\"\nprogram = \"bush.ngc\"\n[material]\nname = \"PETG (printed)\"\n"
         "[[cutter]]\nnumber = 1\nkind = \"flat\"\ndiameter_mm = 6.0\nflutes = 2\nflute_length_mm = 22\n"
         "shank_diameter_mm = 6.0\nstick_out_mm = 25\n[blank]\nshape = \"cylinder\"\ndiameter_mm = 21.0\n"
         "bottom_mm = 0.0\ntop_mm = 5.0\n[[wall]]\nname = \"side\"\noutline = \"circle\"\ncentre_mm = [0, "
         "0]\n"
         "diameter_mm = 20.0\nside = \"outside\"\nbottom_mm = 0.0\ntop_mm = 4.0\n";
  auto job = read_job(folder / "bush.toml", problems);
  fs::remove_all(folder);
  return job;
}

TEST(Calibration, TheWrittenFileGivesTheFittedValuesToAJob) {
  const BushJob bush = bush_job();
  Calibration found;
  found.job = bush.job;
  found.job.material.kte_N_per_mm = 4.56789;
  found.job.uncertainty.cutting_force_share = 0.5;
  found.job.machine.stiffness_xy_N_per_um = 0.2345;
  found.job.cutters[0].runout_mm = 0.0312;
  found.fitted = {{uncertain_input(bush.job, InputKind::edge_force, 0, 1.0), 1.5, 0.1234, 1.0},
                  {uncertain_input(bush.job, InputKind::stiffness, 0, 1.0), 0.8, 0.2, 1.0},
                  {uncertain_input(bush.job, InputKind::runout, 1, 1.0), 1.5, 0.1, 1.0},
                  {uncertain_input(bush.job, InputKind::z_zero, 0, 0.1), 0.03, 0.01, 0.1}};
  const std::string text = included_text(found, measured_of({}, {}));
  EXPECT_NE(text.find("# zero in z was off by 0.03 mm"), std::string::npos) << text;
  Problems problems;
  const auto job = read_with(text, problems);
  ASSERT_TRUE(job) << text << (problems.all().empty() ? "" : text_of(problems.all().front()));
  EXPECT_TRUE(problems.all().empty());
  EXPECT_TRUE(job->material.calibrated);
  EXPECT_EQ(job->material.kte_N_per_mm, 4.56789);
  EXPECT_EQ(job->machine.stiffness_xy_N_per_um, 0.2345);
  EXPECT_EQ(job->cutters[0].runout_mm, 0.0312);
  EXPECT_EQ(job->uncertainty.edge_force_share, 0.13) << "rounded up to two digits";
  EXPECT_EQ(job->uncertainty.cutting_force_share, 0.5) << "not fitted: as stated";
  EXPECT_EQ(job->material.source.find("kte_N_per_mm")->second, "measured.toml");
}

TEST(Calibration, KeysTheJobStatesItselfAreNamed) {
  const BushJob bush = bush_job();
  Calibration found;
  found.job = bush.job;
  found.fitted = {{uncertain_input(bush.job, InputKind::stiffness, 0, 1.0), 0.8, 0.2, 1.0},
                  {uncertain_input(bush.job, InputKind::cutter_diameter, 1, 0.1), 0.01, 0.01, 0.1}};
  EXPECT_EQ(keys_in_the_way(found, bush.job), std::vector<std::string>{"machine.stiffness_xy_N_per_um"});
}

} // namespace
} // namespace asperity
