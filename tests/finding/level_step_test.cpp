// Horizontal steps between levels against drawn walls.
#include "rim_scene.h"

#include <gtest/gtest.h>

#include <random>

namespace asperity::test {
namespace {

constexpr double kSpacing_mm = 0.1;

/// Levels 2 mm high; in each the wall leans from `foot` at its tip to 0 at its top.
double leaning_levels(double z, double foot) { return foot * (1.0 - std::fmod(z, 2.0) / 2.0); }

TEST(LevelStep, LeaningLevelsGiveOneStepBetweenEachTwo) {
  const double foot = 0.006;
  const FoundList found = find_level_steps(wall_scene(rim_wall(), kSpacing_mm, [&](double, double z) {
                                             return 0.01 + leaning_levels(z, foot);
                                           }).evidence());
  ASSERT_EQ(found.size(), 1u);
  const Finding &step = found[0].finding;
  EXPECT_EQ(step.kind, FindingKind::level_step);
  EXPECT_EQ(quantity(step, "steps"), 6.0) << "seven levels in 14 mm";
  // Between the rows beside the step the wall rises by foot less the lean over one row.
  EXPECT_NEAR(quantity(step, "step"), 6.0, 0.01);
  EXPECT_LT(std::abs(std::remainder(quantity(step, "height"), 2.0)), 1e-6);
  EXPECT_NE(step.cause.find("upper level stands out"), std::string::npos) << step.cause;
}

TEST(LevelStep, ASingleStepHasItsSizeHeightAndLines) {
  Scene scene = wall_scene(rim_wall(), kSpacing_mm, [](double, double z) { return z < 5 ? 0.009 : 0.005; });
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 0}, {1, 0, 0}), 31),
                       feed_piece(Curve::line({0, 0, 5}, {1, 0, 5}), 17)};
  for (std::size_t cell = 0; cell < scene.wall().owner.size(); ++cell)
    scene.wall().owner[cell] = scene.wall().z_mm[cell / scene.wall().columns()] < 5 ? 0 : 1;
  const FoundList found = find_level_steps(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "step"), 4.0, 0.001);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 5.0, 1e-9);
  EXPECT_EQ(found[0].finding.lines, (std::vector<std::uint32_t>{17, 31}));
  EXPECT_NE(found[0].finding.cause.find("wall below stands out"), std::string::npos);
}

TEST(LevelStep, ALeaningWallAndALineHaveNone) {
  EXPECT_TRUE(find_level_steps(wall_scene(rim_wall(), kSpacing_mm,
                                          [](double s, double z) {
                                            return 0.02 - 0.001 * z - (std::abs(s - 40) < 0.3 ? 0.01 : 0.0);
                                          })
                                   .evidence())
                  .empty());
}

TEST(LevelStep, NoiseHasNoneAndHidesNone) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> noise(-0.001, 0.001);
  EXPECT_TRUE(
      find_level_steps(
          wall_scene(rim_wall(), kSpacing_mm, [&](double, double) { return noise(random); }).evidence())
          .empty());
  EXPECT_EQ(
      find_level_steps(wall_scene(rim_wall(), kSpacing_mm,
                                  [&](double, double z) { return noise(random) + (z < 5 ? 0.003 : 0.0); })
                           .evidence())
          .size(),
      1u);
}

TEST(LevelStep, TheEdgeOfALipIsNoStep) {
  EXPECT_TRUE(find_level_steps(
                  wall_scene(rim_wall(), kSpacing_mm, [](double, double z) { return z < 0.6 ? 0.4 : 0.01; })
                      .evidence())
                  .empty());
}

} // namespace
} // namespace asperity::test
