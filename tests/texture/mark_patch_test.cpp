// Small patches with every tooth mark: heights by the closed form, places, edges, stopping.
#include "asperity/texture/mark_patch.h"
#include "texture/bench.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;
using bench::Bench;

namespace {

/// The sampled peak is missed by up to half a column of 50 a mark: (1/50)^2 of the height, plus float
/// rounding.
constexpr double kPeakShare = 0.011;

Bench up_milled(double fz_mm) {
  Bench bench(bench::plain_cutter());
  const double y = bench.beside_y_mm();
  bench.feed({-25, y, -10}, {25, y, -10}, {2 * fz_mm * 500, 30000});
  return bench;
}

} // namespace

TEST(MarkPatch, MarksOfAWallAreAsHighAsTheTrochoidSays) {
  // R 3, 2 flutes, fz 0.5, up: 9.407302 um. [exact trochoid of side milling, neighbouring tooth paths
  // crossed]
  const Bench bench = up_milled(0.5);
  const double s = bench.s_at_mm(0);
  const auto patch =
      mark_patch(bench.wall(), bench.source(), {{s - 2, -5.01}, {s + 2, -4.99}, 0.0025}, 1, {});
  ASSERT_TRUE(patch);
  EXPECT_NEAR(um_from_mm(bench::height_mm(patch->envelope_mm)), 9.407302, kPeakShare * 9.407302);
  EXPECT_NEAR(patch->x_mm(0), s - 2, 0.011) << "columns stand at their arc length";
  EXPECT_NEAR(patch->y_mm(0), -5.01, 0.011);
}

TEST(MarkPatch, AStretchOverTheOutlinesEndIsTheSameAsTheOneAtItsBeginning) {
  const Bench bench = up_milled(0.5);
  const double round_mm = bench.wall().outline.length_mm(), s = bench.s_at_mm(0);
  const auto plain = mark_patch(bench.wall(), bench.source(), {{s - 1, -5}, {s + 1, -4}, 0.02}, 1, {});
  const auto later =
      mark_patch(bench.wall(), bench.source(), {{s - 1 + round_mm, -5}, {s + 1 + round_mm, -4}, 0.02}, 1, {});
  ASSERT_TRUE(plain && later);
  ASSERT_EQ(plain->envelope_mm.size(), later->envelope_mm.size());
  for (std::size_t cell = 0; cell < plain->envelope_mm.size(); ++cell)
    EXPECT_NEAR(plain->envelope_mm[cell], later->envelope_mm[cell], 1e-6) << cell; // floats of 10 um
}

TEST(MarkPatch, ABoxBesideTheFeatureGivesNothing) {
  const Bench bench = up_milled(0.1);
  EXPECT_FALSE(mark_patch(bench.wall(), bench.source(), {{0, 5}, {1, 6}, 0.01}, 1, {}));
  EXPECT_FALSE(mark_patch(bench.job.features[1], bench.source(), {{90, 90}, {91, 91}, 0.01}, 1, {}));
}

TEST(MarkPatch, AStoppedRunGivesNothing) {
  const Bench bench = up_milled(0.1);
  Progress stopped;
  stopped.cancel();
  EXPECT_FALSE(mark_patch(bench.wall(), bench.source(), {{0, -5}, {1, -4}, 0.01}, 1, stopped));
  std::string why;
  const Chart chart = bench.wall_chart();
  EXPECT_TRUE(lay_trace(bench.wall(), chart, bench.source(),
                        {.along = "s", .at_mm = -5, .length_mm = 4.8, .cutoff_mm = {}}, 1, why, stopped)
                  .profile_mm.empty());
}
