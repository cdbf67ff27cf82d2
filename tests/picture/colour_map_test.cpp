// The colours of a residual: even, told apart by every kind of colour vision, readable in grey.
#include "asperity/picture/colour_map.h"
#include "lab.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

using Matrix = std::array<std::array<double, 3>, 3>;

// Simulation of missing cones, linear RGB, severity 1.0: [Machado, Oliveira & Fernandes 2009, "A
// physiologically-based model for simulation of color vision deficiency", table of matrices].
constexpr Matrix kNormal = {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}};
constexpr Matrix kProtanopia = {
    {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}};
constexpr Matrix kDeuteranopia = {
    {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}};
constexpr Matrix kTritanopia = {
    {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}};

Lab seen_by(Rgb colour, const Matrix &vision) {
  const std::array<double, 3> in = linear_from_rgb(colour);
  std::array<double, 3> out{};
  for (std::size_t row = 0; row < 3; ++row)
    for (std::size_t k = 0; k < 3; ++k)
      out[row] += vision[row][k] * in[k];
  return lab_from_linear(linear_from_rgb(rgb_from_linear(out))); // clipped and rounded as a screen does
}

Lab seen(double t, const Matrix &vision) { return seen_by(residual_colour(t), vision); }

constexpr int kSteps = 8; // per side: as many as a reader can tell apart in a legend
double step_at(int k) { return static_cast<double>(k) / kSteps; }

} // namespace

TEST(Lab, AgreesWithPublishedValuesOfThePrimaries) {
  // CIE L*a*b* (D65) of the sRGB primaries as commonly tabulated, e.g. [Lindbloom, RGB/XYZ/Lab calculator].
  constexpr double kTabulated = 0.02; // tables give two decimals
  const Lab red = lab_from_linear({1, 0, 0}), blue = lab_from_linear({0, 0, 1}),
            white = lab_from_linear({1, 1, 1});
  EXPECT_NEAR(red.l, 53.24, kTabulated);
  EXPECT_NEAR(red.a, 80.09, kTabulated);
  EXPECT_NEAR(red.b, 67.20, kTabulated);
  EXPECT_NEAR(blue.l, 32.30, kTabulated);
  EXPECT_NEAR(blue.b, -107.86, kTabulated);
  EXPECT_NEAR(white.l, 100.0, kTabulated);
  EXPECT_NEAR(std::hypot(white.a, white.b), 0.0, kTabulated);
}

TEST(Lab, GoesThereAndBack) {
  for (int code = 0; code < 4096; code += 37) {
    const Rgb colour{static_cast<std::uint8_t>((code & 15) * 17),
                     static_cast<std::uint8_t>((code >> 4 & 15) * 17),
                     static_cast<std::uint8_t>((code >> 8 & 15) * 17)};
    EXPECT_EQ(rgb_from_linear(linear_from_lab(lab_from_linear(linear_from_rgb(colour)))), colour);
  }
}

TEST(ColourMap, NeighbouringStepsStayApartForEveryColourVision) {
  constexpr double kSeenApart = 5.0; // over twice the just noticeable difference of 2.3 [Mahy et al. 1994]
  for (const Matrix &vision : {kNormal, kProtanopia, kDeuteranopia, kTritanopia})
    for (int k = -kSteps; k < kSteps; ++k)
      EXPECT_GT(difference(seen(step_at(k), vision), seen(step_at(k + 1), vision)), kSeenApart) << k;
}

TEST(ColourMap, DeepAndProudOfTheSameSizeAreNeverConfused) {
  constexpr double kPlainlyDifferent = 12.0; // five times the just noticeable difference
  for (const Matrix &vision : {kNormal, kProtanopia, kDeuteranopia, kTritanopia})
    for (int k = 2; k <= kSteps; ++k)
      EXPECT_GT(difference(seen(-step_at(k), vision), seen(step_at(k), vision)), kPlainlyDifferent) << k;
}

TEST(ColourMap, LightnessFallsFromTheMiddleToBothEnds) {
  for (const Matrix &vision : {kNormal, kProtanopia, kDeuteranopia, kTritanopia})
    for (int k = 0; k < kSteps; ++k) {
      EXPECT_GT(seen(step_at(k), vision).l, seen(step_at(k + 1), vision).l) << k;
      EXPECT_GT(seen(-step_at(k), vision).l, seen(-step_at(k + 1), vision).l) << k;
    }
}

TEST(ColourMap, EndsDifferInGrey) {
  constexpr double kGreyApart = 8.0; // L*: three times what is just noticeable
  EXPECT_GT(seen(1.0, kNormal).l, seen(-1.0, kNormal).l + kGreyApart);
}

TEST(ColourMap, StepsAreEvenAlongEachSide) {
  constexpr double kUneven = 0.10; // rounding to 8 bits and chords across the curve
  for (double side : {-1.0, 1.0}) {
    double least = 1e9, most = 0.0;
    for (int k = 0; k < kSteps; ++k) {
      const double d = difference(seen(side * step_at(k), kNormal), seen(side * step_at(k + 1), kNormal));
      least = std::min(least, d);
      most = std::max(most, d);
    }
    EXPECT_LT(most / least, 1.0 + kUneven);
  }
}

TEST(RoughnessColours, StepsStayApartAndDarkenForEveryColourVision) {
  constexpr double kSeenApart = 5.0; // over twice the just noticeable difference of 2.3 [Mahy et al. 1994]
  for (const Matrix &vision : {kNormal, kProtanopia, kDeuteranopia, kTritanopia})
    for (int k = 0; k < kSteps; ++k) {
      const Lab here = seen_by(roughness_colour(step_at(k)), vision);
      const Lab next = seen_by(roughness_colour(step_at(k + 1)), vision);
      EXPECT_GT(difference(here, next), kSeenApart) << k;
      EXPECT_GT(here.l, next.l + kSeenApart) << k << ": told apart by lightness alone";
    }
}

TEST(RoughnessColours, StepsAreEven) {
  constexpr double kUneven = 0.10; // rounding to 8 bits and chords across the curve
  double least = 1e9, most = 0.0;
  for (int k = 0; k < kSteps; ++k) {
    const double d = difference(seen_by(roughness_colour(step_at(k)), kNormal),
                                seen_by(roughness_colour(step_at(k + 1)), kNormal));
    least = std::min(least, d);
    most = std::max(most, d);
  }
  EXPECT_LT(most / least, 1.0 + kUneven);
}

TEST(RoughnessColours, BeyondTheEndsAndNotANumberAreSafe) {
  EXPECT_EQ(roughness_colour(7.0), roughness_colour(1.0));
  EXPECT_EQ(roughness_colour(-1.0), roughness_colour(0.0));
  EXPECT_EQ(roughness_colour(std::nan("")), roughness_colour(0.0));
}

TEST(ColourMap, BeyondTheEndsAndNotANumberAreSafe) {
  EXPECT_EQ(residual_colour(7.0), residual_colour(1.0));
  EXPECT_EQ(residual_colour(-std::numeric_limits<double>::infinity()), residual_colour(-1.0));
  EXPECT_EQ(residual_colour(std::nan("")), residual_colour(0.0));
}

} // namespace asperity
