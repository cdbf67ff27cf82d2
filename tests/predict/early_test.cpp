// Features that the rest of the path leaves alone are swept and read while it is still being cut: the same
// bits for any number of threads, and as if the whole path had been swept.
#include "predict/same_outcome.h"
#include "properties/small_job.h"

#include "last_visit.h"
#include "stages.h"

#include "asperity/predict/chart_plan.h"
#include "asperity/predict/one_feature.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr std::size_t kRim = 0, kTop = 1;

Job bending_boss(double stiffness_N_per_um) {
  Job job = boss_job();
  job.effects = {};
  job.resolution = {0.2, 0.2};
  job.cutters[0].runout_mm = 0.01;
  job.machine.stiffness_xy_N_per_um = stiffness_N_per_um;
  return job;
}

/// Which piece of the path begins to cut the rim.
std::size_t first_of_rim(const TimedPath &path) {
  for (std::size_t i = 0; i < path.pieces.size(); ++i)
    if (path.pieces[i].curve.end.z < 3.9)
      return i;
  return path.pieces.size();
}

TimedPath path_of(const Job &job, const std::string &program) {
  return plan_motion(program_of(program), job.machine, job.setup, job.effects);
}

/// The top in passes of short slanting moves, more than two stretches of them, then the rim in short ones.
std::string finely_cut() {
  std::string face, rim;
  for (int j = -10; j <= 10; ++j)
    for (int i = 1; i <= 900; ++i) {
      const int way = j % 2 == 0 ? 1 : -1;
      face += fmt::format("G1 X{:.3f} Y{} Z{:.3f} F900\n", way * (13.5 - 0.03 * i), j, 4.0 + 0.001 * (i % 7));
    }
  for (int i = 1; i <= 1500; ++i)
    rim += fmt::format("G1 X{:.4f} Y{:.4f} F900\n", 13 * std::cos(2 * kPi * i / 1500),
                       -13 * std::sin(2 * kPi * i / 1500));
  std::string program = boss_program();
  const auto put = [&program](const std::string &plain, const std::string &fine) {
    program.replace(program.rfind(plain), plain.size(), fine);
  };
  put("G1 X-20 F900\n", "G1 X13.5 Y-10 F900\n" + face);
  put("G2 X13 Y0 I-13 J0 F900\n", rim);
  return program;
}

TEST(LastVisit, OfTheTopIsBeforeTheRimIsCutAndOfTheRimAtTheEnd) {
  const Job job = bending_boss(0.5);
  const TimedPath path = path_of(job, boss_program());
  const std::size_t top = end_of_visits(job, path, job.features[kTop]),
                    rim = end_of_visits(job, path, job.features[kRim]);
  EXPECT_GT(top, 1u);
  EXPECT_LE(top, first_of_rim(path));
  EXPECT_GE(rim, path.pieces.size() - 1) << "but for the last retract";
}

TEST(LastVisit, GoingByHighAboveIsNone) {
  const Job job = bending_boss(0.5);
  std::string back_over = boss_program();
  back_over.replace(back_over.find("M30"), 3, "G0 X0 Y0\nM30");
  EXPECT_EQ(end_of_visits(job, path_of(job, back_over), job.features[kTop]),
            end_of_visits(job, path_of(job, boss_program()), job.features[kTop]));
}

TEST(LastVisit, AMoveOverTheTopAtTheEndIsOne) {
  const Job job = bending_boss(0.5);
  std::string again = boss_program();
  again.replace(again.find("M30"), 3, "G1 Z4.1 F300\nG1 X0\nM30");
  const TimedPath path = path_of(job, again);
  EXPECT_EQ(end_of_visits(job, path, job.features[kTop]), path.pieces.size());
}

TEST(LastVisit, ACutterBentMoreThanUsualComesBackAfterAll) {
  const Job job = bending_boss(0.5);
  const TimedPath path = path_of(job, boss_program());
  Stock stock = make_stock(job, path);
  SweptPath swept = walk_path(job, path, stock, Progress{}).swept;
  const std::size_t end = end_of_visits(job, path, job.features[kTop]);
  EXPECT_TRUE(keeps_away(job, swept, end, job.features[kTop]));
  for (PackedOffset &offset : swept.offsets)
    offset.units[0] += static_cast<std::int32_t>(0.2 * PackedOffset::kPerMm);
  EXPECT_FALSE(keeps_away(job, swept, end, job.features[kTop])) << "cells begin 0.1 mm from the edge";
}

TEST(LastVisit, ACutterThatSinksBelowItsPathIsFollowedThere) {
  // Beside the rim and 0.1 mm above its top, unbent and drawn down by 0.2 mm.
  const Job job = bending_boss(0.5);
  SweptPath swept;
  swept.cutters.push_back({CutterProfile::flat(3.0), 15.0, {}});
  BentPiece piece;
  piece.curve = Curve::line({13, -5, 4.1}, {13, 5, 4.1});
  swept.add(piece);
  EXPECT_TRUE(keeps_away(job, swept, 0, job.features[kRim]));
  piece.end.axial_mm = -0.2;
  swept.add(piece);
  EXPECT_FALSE(keeps_away(job, swept, 0, job.features[kRim]));
}

TEST(Early, PartOfThePathLeavesTheSameChartAsTheWhole) {
  const Job job = bending_boss(0.5);
  const Outcome outcome = predicted(job, boss_program(), 1);
  FeaturePath part(job, outcome.path, job.features[kTop]);
  ASSERT_TRUE(part.is_early());
  ASSERT_TRUE(part.settle(job, job.features[kTop], outcome.cut.swept));
  ASSERT_LT(part.of(outcome.cut.swept).pieces.size(), outcome.cut.swept.pieces.size());
  Chart whole = make_chart(job, job.features[kTop], 1);
  ASSERT_TRUE(sweep_chart(whole, outcome.cut.swept, 1, Progress{}));
  // What passes high above the blank is no cut, and not swept.
  const auto &a = std::get<FloorChart>(outcome.charts[kTop]), &b = std::get<FloorChart>(whole);
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell) {
    ASSERT_EQ(a.is_cut(cell), b.is_cut(cell)) << cell;
    if (!b.is_cut(cell))
      continue;
    ASSERT_EQ(a.envelope_mm[cell], b.envelope_mm[cell]) << cell;
    ASSERT_EQ(a.owner[cell], b.owner[cell]) << cell;
  }
}

TEST(Early, OutcomeIsTheSameForAnyNumberOfThreads) {
  // A stiff machine, and one so soft that the rim's laps come over the top's edge after all.
  for (const double stiffness : {0.5, 0.004}) {
    const Job job = bending_boss(stiffness);
    const Outcome one = predicted(job, boss_program(), 1);
    const std::size_t end = end_of_visits(job, one.path, job.features[kTop]);
    EXPECT_EQ(keeps_away(job, one.cut.swept, end, job.features[kTop]), stiffness == 0.5);
    for (const int threads : {2, 3, 0})
      EXPECT_EQ(difference(one, predicted(job, boss_program(), threads)), "") << stiffness << ", " << threads;
  }
}

TEST(Early, SoIsALongFaceSweptInStretches) {
  const Job job = bending_boss(0.5);
  const Outcome one = predicted(job, finely_cut(), 1);
  const FeaturePath path(job, one.path, job.features[kTop]);
  EXPECT_EQ(path.stretches(), 3u);
  EXPECT_EQ(FeaturePath(job, one.path, job.features[kRim]).stretches(), 1u);
  for (const int threads : {2, 3, 0})
    EXPECT_EQ(difference(one, predicted(job, finely_cut(), threads)), "") << threads;
  const OneFeature top = predict_one_feature(job, program_of(finely_cut()), kTop, {.threads = 2}, Progress{});
  EXPECT_EQ(std::get<FloorChart>(top.chart).envelope_mm, std::get<FloorChart>(one.charts[kTop]).envelope_mm);

  // The whole path at once: the same surface.
  Chart whole = make_chart(job, job.features[kTop], 1);
  ASSERT_TRUE(sweep_chart(whole, one.cut.swept, 1, Progress{}));
  const auto &a = std::get<FloorChart>(one.charts[kTop]), &b = std::get<FloorChart>(whole);
  std::size_t cut = 0;
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell) {
    ASSERT_EQ(a.is_cut(cell), b.is_cut(cell)) << cell;
    cut += b.is_cut(cell) ? 1 : 0;
    if (b.is_cut(cell)) {
      ASSERT_NEAR(a.envelope_mm[cell], b.envelope_mm[cell], 1e-6) << cell;
    }
  }
  EXPECT_GT(cut, a.envelope_mm.size() / 2);
}

TEST(Early, SoftMachinesComeBackToALongFaceToo) {
  const Job job = bending_boss(0.004);
  const Outcome one = predicted(job, finely_cut(), 1);
  FeaturePath path(job, one.path, job.features[kTop]);
  EXPECT_FALSE(path.settle(job, job.features[kTop], one.cut.swept));
  EXPECT_EQ(difference(one, predicted(job, finely_cut(), 2)), "");
}

TEST(Early, OneFeatureAloneIsTheSameToo) {
  const Job job = bending_boss(0.5);
  const Outcome whole = predicted(job, boss_program(), 2);
  const OneFeature top =
      predict_one_feature(job, program_of(boss_program()), kTop, {.threads = 2}, Progress{});
  EXPECT_EQ(std::get<FloorChart>(top.chart).envelope_mm,
            std::get<FloorChart>(whole.charts[kTop]).envelope_mm);
  EXPECT_EQ(std::get<FloorChart>(top.chart).owner, std::get<FloorChart>(whole.charts[kTop]).owner);
}

TEST(Early, AWishToStopIsHeeded) {
  const Job job = bending_boss(0.5);
  for (int k = 0; k < 5; ++k) {
    Progress progress;
    int reports = 0;
    progress.report = [&](std::string_view, double) {
      if (++reports == 2 + 3 * k)
        progress.cancel();
    };
    const Outcome outcome = predict(job, program_of(boss_program()), {.threads = 2}, progress);
    EXPECT_EQ(outcome.status, reports >= 2 + 3 * k ? Status::cancelled : Status::done) << k;
  }
}

} // namespace
} // namespace asperity::test
