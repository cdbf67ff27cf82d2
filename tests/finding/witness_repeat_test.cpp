// Many lines on one wall: told apart, merged where they repeat, and never made from facets.
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr double kSpacing_mm = 0.05;
const double kLength_mm = kPi * kRimDiameter_mm;

double circle_groove(double x, double depth) {
  const double r = 0.5 * kCutterDiameter_mm;
  return std::abs(x) < r ? std::min(0.0, -depth + r - std::sqrt(r * r - x * x)) : 0.0;
}

WallFeature low_rim() {
  WallFeature wall = rim_wall();
  wall.z_top_mm = 2;
  return wall;
}

Scene grooves_at(const std::vector<std::pair<double, double>> &place_and_depth) {
  return wall_scene(low_rim(), kSpacing_mm, [=](double s, double) {
    double e = 0.010;
    for (const auto &[place, depth] : place_and_depth)
      e = std::min(e, 0.010 + circle_groove(std::remainder(s - place, kLength_mm), depth));
    return e;
  });
}

TEST(WitnessRepeat, SeparateLinesComeStrongestFirstByExcess) {
  const FoundList found = find_witness_lines(grooves_at({{20, 0.003}, {60, 0.009}, {150, 0.006}}).evidence());
  ASSERT_EQ(found.size(), 3u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 9.0, 0.01);
  EXPECT_NEAR(quantity(found[1].finding, "depth"), 6.0, 0.01);
  EXPECT_NEAR(quantity(found[2].finding, "depth"), 3.0, 0.01);
}

TEST(WitnessRepeat, LinesAtEvenDistancesAreOneFindingWithTheirCount) {
  std::vector<std::pair<double, double>> even;
  for (int k = 0; k < 30; ++k)
    even.emplace_back(kLength_mm * k / 30.0, 0.004);
  const FoundList found = find_witness_lines(grooves_at(even).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(quantity(found[0].finding, "lines"), 30.0);
  EXPECT_NEAR(quantity(found[0].finding, "distance"), kLength_mm / 30.0, 2 * kSpacing_mm);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 4.0, 0.05);
}

TEST(WitnessRepeat, ManyUnevenLinesLeaveTheStrongestSingle) {
  std::vector<std::pair<double, double>> uneven;
  double place = 3;
  for (int k = 0; k < 14; ++k) {
    uneven.emplace_back(place, 0.003 + 0.0005 * k);
    place += 5.0 + 0.9 * ((k * 7) % 13);
  }
  const FoundList found = find_witness_lines(grooves_at(uneven).evidence());
  ASSERT_EQ(found.size(), 9u) << "eight single ones and the rest together";
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 9.5, 0.05);
  EXPECT_EQ(quantity(found[8].finding, "lines"), 6.0);
}

// A circle of radius 34 (the cutter's centre) as chords whose sagitta is 1 um: c = 2 sqrt(2 r s) = 0.52 mm,
// so about 400 joints. None of them is a line; a real groove among them is still found.
TEST(WitnessRepeat, FacetsOfAMicrometreMakeNoLinesAndHideNone) {
  const double chord = kLength_mm / std::round(kLength_mm / 0.52);
  const auto facets = [=](double s) {
    const double x = std::remainder(s, chord);
    return -0.001 * (1.0 - 4.0 * x * x / (chord * chord));
  };
  EXPECT_TRUE(
      find_witness_lines(
          wall_scene(low_rim(), kSpacing_mm, [&](double s, double) { return 0.01 + facets(s); }).evidence())
          .empty());
  const FoundList found = find_witness_lines(wall_scene(low_rim(), kSpacing_mm, [&](double s, double) {
                                               return 0.01 + facets(s) + circle_groove(s - 90, 0.008);
                                             }).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "depth"), 8.0, 1.0) << "within the facets";
}

// Tooth marks: cusps of 0.05 mm pitch and 0.1 um height, and steps between levels.
TEST(WitnessRepeat, ToothMarksAndLevelStepsAreNoLines) {
  const FoundList found =
      find_witness_lines(wall_scene(low_rim(), kSpacing_mm, [](double s, double z) {
                           return 0.01 + 0.0001 * std::cos(2 * kPi * s / 0.13) + (z > 1 ? 0.004 : 0.0);
                         }).evidence());
  EXPECT_TRUE(found.empty());
}

} // namespace
} // namespace asperity::test
