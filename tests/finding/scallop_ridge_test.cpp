// Scallops of a drawn floor against the closed forms, and ridges along single profiles.
#include "../../src/finding/ridge.h"
#include "rim_scene.h"

#include "asperity/cut/scallop.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr double kSpacing_mm = 0.02;
constexpr double kRadius_mm = 3.0;

/// Floor cut by a ball in straight passes `stepover` apart, their lay turned by `turn_rad` from +y.
Scene raster_floor(double stepover, double turn_rad) {
  Scene scene;
  scene.job.features = {FloorFeature{}};
  Cutter ball = flat_cutter();
  ball.kind = CutterKind::ball;
  scene.job.cutters = {ball};
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 0}, {0, 9, 0}), 5)};
  FloorChart chart = make_floor_chart({0, 0}, {8, 8}, kSpacing_mm, 0);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      const double across = chart.x_mm(i) * std::cos(turn_rad) + chart.y_mm(j) * std::sin(turn_rad);
      const double x = std::remainder(across, stepover);
      chart.envelope_mm[chart.at(i, j)] =
          static_cast<float>(kRadius_mm - std::sqrt(kRadius_mm * kRadius_mm - x * x));
    }
  chart.blank_mm.assign(chart.blank_mm.size(), 1.0f);
  chart.owner.assign(chart.owner.size(), 0);
  scene.charts = {std::move(chart)};
  return scene;
}

TEST(ScallopRidge, ABallsScallopsHaveTheHeightAndDistanceOfTheFormula) {
  for (const double turn : {0.0, kPi / 2, kPi / 6, kPi / 4}) {
    const FoundList found = find_scallops(raster_floor(0.6, turn).evidence());
    ASSERT_EQ(found.size(), 1u) << turn;
    const Finding &scallop = found[0].finding;
    const double height_um = um_from_mm(ball_scallop_mm(kRadius_mm, 0.6)); // 15.04 um
    const double sampling = quantity(scallop, "sampling error");
    // Half a cell times the crest's slope: 0.01 x 0.3/sqrt(9 - 0.09) mm.
    EXPECT_NEAR(sampling, 1e3 * 0.01 * 0.3 / std::sqrt(8.91), 0.1) << turn;
    EXPECT_LE(quantity(scallop, "height"), height_um + 0.01) << turn;
    EXPECT_GE(quantity(scallop, "height"), height_um - sampling - 0.1) << turn;
    EXPECT_NEAR(quantity(scallop, "distance"), 0.6, 0.03) << turn;
    EXPECT_NEAR(quantity(scallop, "height by formula"), height_um, 0.1 * height_um)
        << "the pitch is met to a cell";
    // Ra of circular cusps: 0.2566 of their height to first order (4/(9 sqrt 3)).
    EXPECT_NEAR(quantity(scallop, "Ra of the ridges alone"), 0.2566 * quantity(scallop, "height"), 0.001);
  }
}

TEST(ScallopRidge, TheWeightFollowsTheRaWanted) {
  Scene scene = raster_floor(0.6, 0);
  EXPECT_EQ(find_scallops(scene.evidence())[0].finding.weight, Weight::note);
  std::get<FloorFeature>(scene.job.features[0]).finish.ra_um = 3.2;
  EXPECT_EQ(find_scallops(scene.evidence())[0].finding.weight, Weight::flaw) << "Ra 3.9 um";
  std::get<FloorFeature>(scene.job.features[0]).finish.ra_um = 6.3;
  EXPECT_EQ(find_scallops(scene.evidence())[0].finding.weight, Weight::note);
}

TEST(ScallopRidge, AFlatFloorHasNone) {
  Scene scene = raster_floor(0.6, 0);
  scene.floor().envelope_mm.assign(scene.floor().envelope_mm.size(), 0.004f);
  EXPECT_TRUE(find_scallops(scene.evidence()).empty());
}

TEST(ScallopRidge, StepsOfAFlatCutterOnAFloorAreNotScallops) {
  Scene scene = raster_floor(0.6, 0);
  scene.job.cutters = {flat_cutter()};
  EXPECT_TRUE(find_scallops(scene.evidence()).empty());
}

TEST(Ridge, CrestsBetweenHollowsAreCountedAndEndsAreNot) {
  std::vector<double> profile;
  for (int k = 0; k <= 100; ++k)
    profile.push_back(
        std::cos(2 * kPi * k / 20.0)); // crests at 0, 20, ... 100; the ends have one hollow only
  const std::vector<Ridge> ridges = ridges_in(profile, 0.1);
  ASSERT_EQ(ridges.size(), 4u);
  EXPECT_EQ(ridges[0].at, 20u);
  EXPECT_NEAR(ridges[0].height, 2.0, 1e-12);
  profile[50] = std::nan("");
  EXPECT_EQ(ridges_in(profile, 0.1).size(), 2u) << "the crests at 40 and 60 lost their hollow at 50";
}

TEST(Ridge, RipplesBelowTheLeastAreNotRidges) {
  std::vector<double> profile;
  for (int k = 0; k <= 200; ++k)
    profile.push_back(std::sin(0.1 * k) + 0.04 * (k % 2));
  EXPECT_EQ(ridges_in(profile, 0.1).size(), 2u)
      << "crests at 79 and 141; the one at 16 has no hollow before it";
}

} // namespace
} // namespace asperity::test
