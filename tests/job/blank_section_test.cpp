// Cross-sections of blanks against beam tables.
#include "asperity/base/units.h"
#include "asperity/job/blank.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity {
namespace {

constexpr double kExact = 1e-12;
/// The slice is summed over 200 x 200 cells; an edge is placed to a small part of a cell.
constexpr double kSummed = 0.005;

void expect_section(const BlankSection &section, double area, double moment, double modulus, double share) {
  EXPECT_NEAR(section.area_mm2, area, share * area);
  EXPECT_NEAR(section.second_moment_mm4, moment, share * moment);
  // The farthest cell centre lies up to a cell inside the edge.
  EXPECT_NEAR(section.section_modulus_mm3, modulus, (share > kExact ? 3 * share : share) * modulus);
}

TEST(BlankSection, RoundBarMatchesTheBeamTable) {
  // I = pi d^4/64, W = pi d^3/32 [beam tables].
  Blank blank;
  blank.diameter_mm = 20;
  blank.z_top_mm = 60;
  expect_section(blank.weakest_section(), kPi * 100, kPi * 160000 / 64, kPi * 8000 / 32, kExact);
}

TEST(BlankSection, RectangleBendsAcrossItsThinSide) {
  // W = b h^2/6 [beam tables]: 20 x 20 gives 1333 mm^3, 20 x 5 gives 83.3 mm^3.
  Blank blank;
  blank.shape = BlankShape::box;
  blank.z_top_mm = 60;
  blank.size_mm = {20, 20};
  expect_section(blank.weakest_section(), 400, 20.0 * 8000 / 12, 1333.333333333333, kExact);
  blank.size_mm = {5, 20};
  expect_section(blank.weakest_section(), 100, 20.0 * 125 / 12, 83.3333333333333, kExact);
  EXPECT_DOUBLE_EQ(blank.section_modulus_mm3(), blank.weakest_section().section_modulus_mm3);
}

TEST(BlankSection, RingIsTheDifferenceOfTwoRounds) {
  // I = pi (D^4 - d^4)/64 [beam tables].
  Blank blank;
  blank.diameter_mm = 30;
  blank.z_top_mm = 40;
  blank.rounds = {{{0, 0}, 18, 0, 40, true}};
  const double moment = kPi * (std::pow(30, 4) - std::pow(18, 4)) / 64;
  expect_section(blank.weakest_section(), kPi * (900 - 324) / 4, moment, moment / 15, kSummed);
}

TEST(BlankSection, TurningTheBlankDoesNotChangeItsWeakestDirection) {
  // A 30 x 10 rectangle turned by 30 degrees: I = b h^3/12 = 2500 mm^4 all the same.
  const Vec2 along(std::cos(kPi / 6), std::sin(kPi / 6)), across = left_of(along);
  const Vec2 corners[4] = {15.0 * along + 5.0 * across, -15.0 * along + 5.0 * across,
                           -15.0 * along - 5.0 * across, 15.0 * along - 5.0 * across};
  std::vector<OutlineElement> sides;
  for (int i = 0; i < 4; ++i)
    sides.push_back({corners[i], corners[(i + 1) % 4], {}, 0});
  Blank blank;
  blank.shape = BlankShape::grown;
  blank.grown_from = Outline(sides);
  blank.z_top_mm = 40;
  expect_section(blank.section_at(20), 300, 2500, 500, 2 * kSummed);
}

TEST(BlankSection, NeckInTheLowerHalfDecides) {
  Blank blank;
  blank.shape = BlankShape::revolved;
  blank.profile_mm = {{10, 0}, {10, 5}, {4, 5.5}, {4, 14}, {10, 14.5}, {10, 40}};
  blank.z_top_mm = 40;
  expect_section(blank.weakest_section(), kPi * 16, kPi * std::pow(8, 4) / 64, kPi * 512 / 32, kExact);
}

} // namespace
} // namespace asperity
