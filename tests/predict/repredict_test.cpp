// Re-prediction: the same bits as a fresh prediction after any change, and no stage run without need.
#include "asperity/predict/repredictor.h"

#include "predict/every_field.h"
#include "predict/same_outcome.h"
#include "properties/small_job.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// The boss with everything that bends and errs, a hole in the blank, and sizes and finishes wanted.
Job bending_boss() {
  Job job = boss_job();
  job.effects = {};
  job.resolution = {0.2, 0.4};
  job.cutters[0].runout_mm = 0.01;
  job.machine.backlash_mm = {0.01, 0.02, 0.0};
  job.setup.z_zero_error_mm = 0.01;
  job.holding.grip_z_mm = 0.0;
  job.holding.clamp_force_N = 200.0;
  auto &wall = std::get<WallFeature>(job.features[0]);
  wall.size[0] = {20.0, 19.95, 20.05};
  wall.finish = {3.2, 0.05, 10.0};
  std::get<FloorFeature>(job.features[1]).height = {4.0, 3.9, 4.1};
  return job;
}

class Repredict : public testing::Test {
protected:
  std::shared_ptr<const Outcome> again(const Job &changed) {
    return repredictor.predict(changed, program, options, Progress{});
  }
  /// Starts from what is kept now, and keeps it.
  void expect_same_as_fresh(const std::string &where, const Job &changed, const PredictOptions &how) const {
    Repredictor from_here = repredictor;
    const auto outcome = from_here.predict(changed, program, how, Progress{});
    EXPECT_EQ(difference(*outcome, predict(changed, program, how, Progress{})), "") << where;
  }

  const PredictOptions options{.threads = 2};
  const Program program = program_of(boss_program());
  const Job job = bending_boss();
  Repredictor repredictor;
};

int total(const StageRuns &runs) {
  return runs.cut + runs.charts_made + runs.charts_swept + runs.sizes + runs.roughness + runs.findings;
}

// What a field does to the cut it does to roughness too, so that is read anew: left out here, it takes long.
TEST_F(Repredict, GivesTheBitsOfAFreshPredictionWhateverFieldOfTheCutIsChanged) {
  again(job);
  const auto check = [this](const std::string &where, const Job &changed) {
    expect_same_as_fresh(where, changed, {.threads = 2, .roughness = false});
  };
  change_every_field(
      job, "machine", [](Job &j) -> Machine & { return j.machine; }, check);
  change_every_field(
      job, "cutter", [](Job &j) -> Cutter & { return j.cutters[0]; }, check);
  change_every_field(
      job, "blank", [](Job &j) -> Blank & { return j.blank; }, check);
  change_every_field(
      job, "set-up", [](Job &j) -> asperity::Setup & { return j.setup; }, check);
  change_every_field(
      job, "effects", [](Job &j) -> Effects & { return j.effects; }, check);
  change_every_field(
      job, "resolution", [](Job &j) -> Resolution & { return j.resolution; }, check);
  change_every_field(
      job, "floor", [](Job &j) -> FloorFeature & { return std::get<FloorFeature>(j.features[1]); }, check);
}

TEST_F(Repredict, GivesTheBitsOfAFreshPredictionWhateverFieldOfMaterialHoldDownAndWantedIsChanged) {
  again(job);
  const auto check = [this](const std::string &where, const Job &changed) {
    expect_same_as_fresh(where, changed, {.threads = 2, .roughness = false});
  };
  change_every_field(
      job, "material", [](Job &j) -> Material & { return j.material; }, check);
  change_every_field(
      job, "hold-down", [](Job &j) -> HoldDown & { return j.holding; }, check);
  const auto wall = [](Job &j) -> WallFeature & { return std::get<WallFeature>(j.features[0]); };
  change_every_field(
      job, "finish", [&](Job &j) -> FinishWanted & { return wall(j).finish; }, check);
  change_every_field(
      job, "size", [&](Job &j) -> SizeWanted & { return *wall(j).size[0]; }, check);
}

TEST_F(Repredict, ReadsRoughnessAnewWhereTeethSpindleOrBlankAreChanged) {
  again(job);
  const auto check = [this](const std::string &where, const auto &change) {
    Job changed = job;
    change(changed);
    expect_same_as_fresh(where, changed, options);
  };
  check("what roughness does not read", [](Job &j) {
    Material &m = j.material;
    m.name += "x", m.break_stress_MPa += 1.0, m.softening_temperature_C += 1.0, m.friction += 0.01;
    m.conductivity_W_per_mK += 0.1, m.own_ra_high_um += 1.0, m.calibrated = !m.calibrated;
    j.holding.clamp_force_N = 150.0;
    std::get<WallFeature>(j.features[0]).finish.ra_um = 1.6;
  });
  check("tram", [](Job &j) { j.machine.tram_deg = 0.1; });
  check("runout", [](Job &j) { j.cutters[0].runout_mm = 0.03; });
  check("no runout", [](Job &j) { j.effects.runout = false; });
  check("helix", [](Job &j) { j.cutters[0].helix_deg = 10.0; });
  check("layers", [](Job &j) { j.blank.layer_height_mm = 0.3; });
  check("acceleration", [](Job &j) { j.machine.acceleration_mm_per_s2.x = 300.0; });
}

TEST_F(Repredict, FollowsAnotherProgram) {
  again(job);
  std::string other = boss_program();
  other.replace(other.find("F900"), 4, "F600");
  const Program changed = program_of(other);
  EXPECT_EQ(difference(*repredictor.predict(job, changed, options, Progress{}),
                       predict(job, changed, options, Progress{})),
            "");
}

TEST_F(Repredict, DoesNothingWhereNothingIsChanged) {
  again(job);
  EXPECT_EQ(total(repredictor.runs()), 1 + 2 + 2 + 2 + 2 + 1);
  again(job);
  EXPECT_EQ(total(repredictor.runs()), 0);
}

TEST_F(Repredict, LooksForFindingsAloneWhenTheBlanksStrengthIsChanged) {
  again(job);
  Job changed = job;
  changed.material.break_stress_MPa *= 0.8;
  again(changed);
  EXPECT_EQ(repredictor.runs().findings, 1);
  EXPECT_EQ(total(repredictor.runs()), 1);
}

TEST_F(Repredict, MeasuresAndJudgesAnewWhenAnotherSizeIsWanted) {
  again(job);
  Job changed = job;
  std::get<WallFeature>(changed.features[0]).size[0]->upper_mm += 0.1;
  again(changed);
  EXPECT_EQ(repredictor.runs().sizes, 1);
  EXPECT_EQ(repredictor.runs().findings, 1);
  EXPECT_EQ(total(repredictor.runs()), 2);
}

TEST_F(Repredict, KeepsChartsAndRoughnessWhenTheMaterialsOwnRoughnessIsChanged) {
  const double before = again(job)->roughness[0].ra_band.high_um;
  Job changed = job;
  changed.material.own_ra_high_um += 2.0;
  EXPECT_GT(again(changed)->roughness[0].ra_band.high_um, before);
  EXPECT_EQ(total(repredictor.runs()), 0);
}

TEST_F(Repredict, MakesOnlyTheChartOfTheFeatureThatIsChanged) {
  again(job);
  Job changed = job;
  std::get<FloorFeature>(changed.features[1]).z_mm += 0.05;
  again(changed);
  EXPECT_EQ(repredictor.runs().cut, 0);
  EXPECT_EQ(repredictor.runs().charts_made, 1);
  EXPECT_EQ(repredictor.runs().charts_swept, 1);
  EXPECT_EQ(repredictor.runs().roughness, 1);
}

TEST_F(Repredict, KeepsTheBlanksChartsWhenTheCutterRunsHigher) {
  again(job);
  Job changed = job;
  changed.setup.z_zero_error_mm += 0.01;
  again(changed);
  EXPECT_EQ(repredictor.runs().cut, 1);
  EXPECT_EQ(repredictor.runs().charts_made, 0);
  EXPECT_EQ(repredictor.runs().charts_swept, 2);
}

TEST_F(Repredict, HoldsOnToTheLastWholeOutcomeThroughACancelledRun) {
  again(job);
  Progress stopped;
  stopped.cancel();
  Job changed = job;
  changed.setup.z_zero_error_mm += 0.01;
  EXPECT_EQ(repredictor.predict(changed, program, options, stopped)->status, Status::cancelled);
  again(job);
  EXPECT_EQ(total(repredictor.runs()), 0);
}

TEST_F(Repredict, ReadsRoughnessThatTheRunBeforeLeftOut) {
  repredictor.predict(job, program, {.threads = 2, .roughness = false}, Progress{});
  EXPECT_TRUE(again(job)->roughness[0].measured);
  EXPECT_EQ(repredictor.runs().roughness, 2);
  EXPECT_EQ(total(repredictor.runs()), 2);
}

} // namespace
} // namespace asperity::test
