// Dents in single rows: depth, width and place of grooves of known shape, and what must not be called a dent.
#include "../../src/finding/groove.h"

#include "asperity/base/units.h"
#include "asperity/cut/scallop.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

namespace asperity::test {
namespace {

constexpr double kSpacing_mm = 0.05;
constexpr std::size_t kColumns = 4000;
constexpr std::size_t kHalfWindow = 180; ///< 9 mm: three cutter diameters of 6 mm
constexpr double kLeast_mm = 0.3e-3;
/// The flank is followed to 2 % of the depth, where a circular groove is 1 % narrower; and to a cell at each
/// end.
constexpr double kWidthShare = 0.015, kWidthCells_mm = 2 * kSpacing_mm;

/// Deviation of a circle of diameter D let into a straight wall by d, x from its middle; 0 beside it.
double circle_groove(double x, double diameter, double depth) {
  const double r = 0.5 * diameter;
  return std::abs(x) < r ? std::min(0.0, -depth + r - std::sqrt(r * r - x * x)) : 0.0;
}

template <class Law> std::vector<float> row_of(Law law) {
  std::vector<float> row;
  for (std::size_t i = 0; i < kColumns; ++i)
    row.push_back(static_cast<float>(law(static_cast<double>(i) * kSpacing_mm)));
  return row;
}

std::vector<Dent> dents_of(const std::vector<float> &row) {
  const std::vector<float> deviation = deviation_from_trend(row, kHalfWindow);
  return dents_in_row(deviation, clear_threshold_mm(deviation, kLeast_mm), kSpacing_mm);
}

TEST(Groove, AStandingCuttersGrooveHasItsDepthWidthAndPlace) {
  for (const double depth : {0.001, 0.005, 0.020, 0.050}) {
    const auto dents =
        dents_of(row_of([&](double s) { return 0.02 + circle_groove(s - 61.013, 6.0, depth); }));
    ASSERT_EQ(dents.size(), 1u) << depth;
    EXPECT_FALSE(dents[0].ridge);
    // The vertex of the parabola through three cells differs from the circle's by x^4/(8 r^3) < 1 nm.
    EXPECT_NEAR(dents[0].depth_mm, depth, 1e-5 * 0.1 + 2e-8) << depth;
    const double width = witness_width_mm(6.0, depth);
    EXPECT_NEAR(dents[0].width_mm, width, kWidthShare * width + kWidthCells_mm) << depth;
    EXPECT_NEAR(dents[0].centre * kSpacing_mm, 61.013, kSpacing_mm) << depth;
  }
}

TEST(Groove, OnAMovedAndOvalCircleTheGrooveIsStillExact) {
  const double length = kColumns * kSpacing_mm;
  const auto waves = [&](double s) {
    return 0.05 * std::cos(2 * kPi * s / length) + 0.02 * std::sin(4 * kPi * s / length);
  };
  EXPECT_TRUE(dents_of(SlowWaves(kColumns).taken_out_of(row_of(waves))).empty());
  // On a slope, and on a crest of the eccentricity.
  for (const double place : {40.0, 0.0, 100.0}) {
    const auto dents = dents_of(SlowWaves(kColumns).taken_out_of(row_of(
        [&](double s) { return waves(s) + circle_groove(std::remainder(s - place, length), 6.0, 0.005); })));
    ASSERT_EQ(dents.size(), 1u) << place;
    EXPECT_NEAR(dents[0].depth_mm, 0.005, 2e-5) << place;
    const double width = witness_width_mm(6.0, 0.005);
    EXPECT_NEAR(dents[0].width_mm, width, kWidthShare * width + kWidthCells_mm) << place;
  }
}

TEST(Groove, ASlopingTrendCostsNoMoreThanItsRiseOverTheGroove) {
  const auto dents = dents_of(
      row_of([&](double s) { return 1e-4 * std::abs(s - 100.0) + circle_groove(s - 40.0, 6.0, 0.005); }));
  const auto groove = std::find_if(dents.begin(), dents.end(), [](const Dent &dent) { return !dent.ridge; });
  ASSERT_NE(groove, dents.end());
  // Derived: all columns of the groove lie below the median, which so moves by the slope times the groove's
  // width.
  EXPECT_NEAR(groove->depth_mm, 0.005, 1.05e-4 * witness_width_mm(6.0, 0.005));
}

TEST(Groove, ADentAcrossTheSeamIsOneDent) {
  const double length = kColumns * kSpacing_mm;
  const auto dents =
      dents_of(row_of([&](double s) { return circle_groove(std::remainder(s - 0.02, length), 6.0, 0.010); }));
  ASSERT_EQ(dents.size(), 1u);
  EXPECT_NEAR(dents[0].depth_mm, 0.010, 1e-6);
  EXPECT_LT(std::abs(std::remainder(dents[0].centre * kSpacing_mm - 0.02, length)), kSpacing_mm);
}

TEST(Groove, ARidgeIsToldFromAGroove) {
  const auto dents =
      dents_of(row_of([](double s) { return std::max(0.0, 0.004 - 0.01 * std::abs(s - 100.0)); }));
  ASSERT_EQ(dents.size(), 1u);
  EXPECT_TRUE(dents[0].ridge);
  EXPECT_NEAR(dents[0].depth_mm, 0.004, 0.01 * kSpacing_mm) << "a sharp crest is met to a cell";
}

TEST(Groove, ASmoothWallHasNoDents) {
  EXPECT_TRUE(dents_of(row_of([](double) { return 0.013; })).empty());
}

TEST(Groove, AStepBetweenTwoLevelsOfTheWallIsNoDent) {
  EXPECT_TRUE(dents_of(row_of([](double s) { return s < 70 ? 0.010 : 0.014; })).empty());
}

// A circle of radius 31 cut as 500 chords: the sagitta of 0.4 mm chords is 0.6 um, that of 0.5 mm chords 1
// um.
TEST(Groove, ChordFacetsOfAMicrometreAreNotDents) {
  for (const double chord : {0.4, 0.5, 0.8}) {
    const double radius = 31.0;
    const auto row = row_of([&](double s) {
      const double x = std::remainder(s, chord);
      return -(0.25 * chord * chord - x * x) / (2 * radius);
    });
    EXPECT_TRUE(dents_of(row).empty()) << chord;
  }
}

TEST(Groove, NoiseOfAMicrometreHidesNothingDeeperAndMakesNothing) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> noise(-0.0005, 0.0005);
  const auto quiet = row_of([&](double) { return noise(random); });
  EXPECT_TRUE(dents_of(quiet).empty());
  const auto row = row_of([&](double s) { return noise(random) + circle_groove(s - 50, 6.0, 0.010); });
  const auto dents = dents_of(row);
  ASSERT_EQ(dents.size(), 1u);
  EXPECT_NEAR(dents[0].depth_mm, 0.010, 0.001) << "within the noise";
}

TEST(Groove, WhatIsNotCutIsNoDent) {
  EXPECT_TRUE(dents_of(row_of([](double s) { return s > 20 && s < 40 ? std::nan("") : 0.01; })).empty());
  EXPECT_TRUE(dents_of(row_of([](double) { return std::nan(""); })).empty());
}

} // namespace
} // namespace asperity::test
