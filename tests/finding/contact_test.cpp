// Rapids in stock, rubbing and heat from hand-made samples.
#include "rim_scene.h"

#include "asperity/cut/heat.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// A straight feed move of 100 mm, sampled every millimetre; all samples alike until the test changes them.
Scene sampled_move() {
  Scene scene;
  scene.job.cutters = {flat_cutter()}; // edge radius 6 um: chips under 1.8 um rub
  scene.job.material.name = "PETG";
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 0}, {100, 0, 0}), 12)};
  for (int k = 0; k <= 100; ++k) {
    CutSample sample;
    sample.position_mm = {k, 0, 0};
    sample.u = 0.01 * k;
    sample.in_contact = true;
    sample.thickest_chip_mm = 0.02f;
    sample.chip_temperature_C = 60;
    scene.cut.samples.push_back(sample);
  }
  return scene;
}

TEST(RapidInStock, OnlyRapidsInContactAreDangers) {
  Scene scene = sampled_move();
  EXPECT_TRUE(find_rapids_in_stock(scene.evidence()).empty());
  scene.path.pieces[0].kind = MoveKind::rapid;
  scene.cut.samples[40].axial_depth_mm = 1.5f;
  const FoundList found = find_rapids_in_stock(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].finding.weight, Weight::danger);
  EXPECT_EQ(found[0].finding.place_mm, Vec3(40, 0, 0));
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 1.5, 1e-6);
  EXPECT_EQ(found[0].finding.lines, std::vector<std::uint32_t>{12});
  for (CutSample &sample : scene.cut.samples)
    sample.in_contact = false;
  EXPECT_TRUE(find_rapids_in_stock(scene.evidence()).empty());
}

TEST(Rubbing, TheShareIsThatOfThePathLengthInContact) {
  Scene scene = sampled_move();
  for (int k = 20; k < 50; ++k)
    scene.cut.samples[static_cast<std::size_t>(k)].thickest_chip_mm = 0.0017f;
  const FoundList found = find_rubbing(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "share of the path in contact"), 30.0, 1e-9);
  EXPECT_NEAR(quantity(found[0].finding, "thinnest chip that cuts"), 1.8, 1e-9)
      << "0.3 times the edge radius";
  EXPECT_EQ(found[0].finding.weight, Weight::note);
}

TEST(Rubbing, ChipsJustThickEnoughAndShortStretchesAreLeftUnsaid) {
  Scene scene = sampled_move();
  for (CutSample &sample : scene.cut.samples)
    sample.thickest_chip_mm = 0.0019f;
  EXPECT_TRUE(find_rubbing(scene.evidence()).empty());
  for (int k = 0; k < 4; ++k)
    scene.cut.samples[static_cast<std::size_t>(k)].thickest_chip_mm = 0.0f;
  EXPECT_TRUE(find_rubbing(scene.evidence()).empty()) << "4 % of the path: entries always rub";
}

TEST(Overheating, AHotStretchIsFoundWithItsLength) {
  Scene scene = sampled_move();
  Material &petg = scene.job.material;
  petg.flow_temperature_C = 160;
  petg.ktc_N_per_mm2 = 110, petg.kte_N_per_mm = 3, petg.density_kg_per_m3 = 1270,
  petg.heat_capacity_J_per_kgK = 1200;
  EXPECT_TRUE(find_overheating(scene.evidence()).empty());
  for (int k = 10; k < 30; ++k)
    scene.cut.samples[static_cast<std::size_t>(k)].chip_temperature_C = 170;
  scene.cut.samples[15].chip_temperature_C = 210;
  const FoundList found = find_overheating(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "length"), 20.0, 1e-9);
  EXPECT_NEAR(quantity(found[0].finding, "longest stretch"), 20.0, 1e-9);
  EXPECT_NEAR(quantity(found[0].finding, "hottest chip"), 210.0, 1e-9);
  EXPECT_EQ(found[0].finding.place_mm, Vec3(15, 0, 0));
  // kte / (rho c (160 - 23) - ktc) = 3 / (208.8 - 110) = 30 um: derived, and stated so for sharp cutters in
  // PETG.
  EXPECT_NE(found[0].finding.cause.find("30 um"), std::string::npos) << found[0].finding.cause;
  EXPECT_NE(found[0].finding.rests_on.find("PETG"), std::string::npos);
}

TEST(Overheating, HotSpotsShorterThanTwoMillimetresAreLeftUnsaid) {
  Scene scene = sampled_move();
  scene.job.material.flow_temperature_C = 160;
  for (std::size_t k = 0; k < 100; k += 5)
    scene.cut.samples[k].chip_temperature_C = 300;
  EXPECT_TRUE(find_overheating(scene.evidence()).empty());
}

} // namespace
} // namespace asperity::test
