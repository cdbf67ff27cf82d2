// Chip temperature and the thinnest chip that stays cool.
#include "asperity/cut/heat.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {
/// Worked numbers are printed to whole kelvin or whole micrometres.
constexpr double kHalfDigit = 0.5;
constexpr double kRoom_C = 23;

double adiabatic_K(double ktc, double density, double capacity) {
  return chip_temperature_rise_K(ktc, 0, 0.03, density, capacity);
}
double thinnest_um(double ktc, double kte, double density, double capacity, double limit_C) {
  return 1e3 * thinnest_cool_chip_mm(ktc, kte, density, capacity, limit_C, kRoom_C);
}
} // namespace

TEST(ChipHeat, AdiabaticRiseMatchesWorkedNumbers) {
  // Worked numbers from textbook adiabatic heating with handbook density and heat capacity (Plastics
  // Engineering, table 1.8): PETG 79 K at 120 N/mm^2, PLA 58 K at 130, POM 61 K at 130, HDPE 26 K at 55.
  EXPECT_NEAR(adiabatic_K(120, 1270, 1200), 79, kHalfDigit);
  EXPECT_NEAR(adiabatic_K(130, 1240, 1800), 58, kHalfDigit);
  EXPECT_NEAR(adiabatic_K(130, 1420, 1500), 61, kHalfDigit);
  EXPECT_NEAR(adiabatic_K(55, 950, 2200), 26, kHalfDigit);
}

TEST(ChipHeat, EdgeForceHeatsThinChipsMore) {
  // Derived: u = ktc + kte/h; 110 + 3/0.03 = 210 N/mm^2 = 0.21 J/mm^3, the handbook-style specific energy of
  // PETG.
  EXPECT_NEAR(chip_temperature_rise_K(110, 3, 0.03, 1270, 1200), 210e6 / (1270.0 * 1200), 1e-9);
  EXPECT_TRUE(std::isinf(chip_temperature_rise_K(110, 3, 0, 1270, 1200)));
}

TEST(ThinnestCoolChip, MatchesWorkedNumbers) {
  // Worked numbers for flow temperatures 160 (PETG) and 150 C (others), room 23 C.
  EXPECT_NEAR(thinnest_um(110, 3, 1270, 1200, 160), 30, kHalfDigit);
  EXPECT_NEAR(thinnest_um(110, 6, 1270, 1200, 160), 61, kHalfDigit);
  EXPECT_NEAR(thinnest_um(120, 2.5, 1240, 1800, 150), 15, kHalfDigit);
  EXPECT_NEAR(thinnest_um(85, 3, 1040, 1300, 150), 35, kHalfDigit);
  EXPECT_NEAR(thinnest_um(155, 1.5, 1180, 1500, 150), 21, kHalfDigit);
}

TEST(ThinnestCoolChip, ReachesTheLimitExactly) {
  const double h_mm = thinnest_cool_chip_mm(110, 3, 1270, 1200, 160, kRoom_C);
  EXPECT_NEAR(kRoom_C + chip_temperature_rise_K(110, 3, h_mm, 1270, 1200), 160, 1e-9);
}

TEST(ThinnestCoolChip, IsInfiniteWhenEvenAThickChipIsTooHot) {
  EXPECT_TRUE(std::isinf(thinnest_cool_chip_mm(250, 3, 1270, 1200, 160, kRoom_C)));
}
