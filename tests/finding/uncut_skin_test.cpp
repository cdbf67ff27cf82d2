// Skin left where the blank is too small, and stock left where no pass comes by.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

const double kLength_mm = kPi * kRimDiameter_mm;

Scene clean_rim() {
  return wall_scene(rim_wall(), 0.1, [](double, double) { return 0.01; });
}

/// Blank 0.08 mm too small over s 20..40, z 3..8, sloping down to that in the middle.
TEST(UncutSkin, ATooSmallBlankIsFoundWithAreaPlaceAndAmount) {
  Scene scene = clean_rim();
  WallChart &chart = scene.wall();
  std::size_t cells = 0;
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i)
      if (chart.s_mm[i] > 20 && chart.s_mm[i] < 40 && chart.z_mm[j] > 3 && chart.z_mm[j] < 8) {
        chart.blank_mm[chart.at(i, j)] = std::abs(chart.s_mm[i] - 30) < 1 ? -0.08f : -0.02f;
        ++cells;
      }
  const FoundList found = find_uncut_skin(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  const Finding &skin = found[0].finding;
  const double share = double(cells) / double(chart.envelope_mm.size());
  EXPECT_NEAR(quantity(skin, "share of the surface"), 100 * share, 1e-9);
  EXPECT_NEAR(share, 20.0 * 5.0 / (kLength_mm * 14.0), 1e-3);
  EXPECT_NEAR(quantity(skin, "missing"), 0.08, 1e-7);
  EXPECT_EQ(skin.weight, Weight::flaw);
  EXPECT_NE(skin.where.find("z 3.00 to 8.00 mm"), std::string::npos) << skin.where;
  // s 20 and 40 of a circle of radius 31 are 37.0 and 73.9 degrees.
  EXPECT_NE(skin.where.find("from 37.1 to 73.8 deg"), std::string::npos) << skin.where;
}

TEST(UncutSkin, APatchAcrossTheSeamIsOnePatch) {
  Scene scene = clean_rim();
  WallChart &chart = scene.wall();
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i)
      if (chart.s_mm[i] < 5 || chart.s_mm[i] > kLength_mm - 5)
        chart.blank_mm[chart.at(i, j)] = 0.0f;
  const FoundList found = find_uncut_skin(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].finding.where.find("patches"), std::string::npos) << found[0].finding.where;
  EXPECT_NE(found[0].finding.where.find("from 350.9 to 9.1 deg"), std::string::npos)
      << found[0].finding.where;
  EXPECT_EQ(quantity(found[0].finding, "missing"), 0.0);
}

TEST(UncutSkin, AFullyCutWallHasNone) { EXPECT_TRUE(find_uncut_skin(clean_rim().evidence()).empty()); }

TEST(UncutSkin, AStretchNoPassComesByIsStockLeft) {
  const FoundList found = find_uncut_skin(wall_scene(rim_wall(), 0.1, [](double s, double) {
                                            return s > 50 && s < 90 ? std::nan("") : 0.01;
                                          }).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "share of the surface"), 100 * 40 / kLength_mm, 0.1);
  EXPECT_NEAR(quantity(found[0].finding, "stock left"), kStock_mm, 1e-7);
  EXPECT_EQ(found[0].finding.weight, Weight::flaw);
}

TEST(UncutSkin, TheLipAtTheBaseIsNotSaidTwice) {
  EXPECT_TRUE(find_uncut_skin(
                  wall_scene(rim_wall(), 0.1, [](double, double z) { return z < 0.6 ? std::nan("") : 0.01; })
                      .evidence())
                  .empty());
}

TEST(UncutSkin, AFloorWithoutBlankSaysSoAndStaysFinite) {
  Scene scene;
  FloorFeature floor;
  scene.job.features = {floor};
  scene.charts = {make_floor_chart({0, 0}, {10, 10}, 0.5, 0)};
  scene.floor().envelope_mm.assign(scene.floor().envelope_mm.size(), 0.0f);
  scene.floor().blank_mm.assign(scene.floor().blank_mm.size(), 1.0f);
  for (std::size_t cell = 0; cell < 40; ++cell)
    scene.floor().blank_mm[cell] = -std::numeric_limits<float>::infinity();
  const FoundList found = find_uncut_skin(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "no blank at all"), 10.0, 0.01);
  for (const Quantity &q : found[0].finding.size)
    EXPECT_TRUE(std::isfinite(q.value)) << q.name;
}

} // namespace
} // namespace asperity::test
