// Static wall error against a table of worked numbers.
#include "asperity/cut/wall_error.h"

#include "asperity/base/units.h"
#include "cut/force_sets.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

using namespace asperity;

namespace {

/// The table's author summed 600 discs at mid height (found by trying disc numbers: 600 alone reproduces all
/// ten printed forces) and rounded twice, first to a tenth.
constexpr int kTableDiscs = 600;

struct Printed {
  double value = 0, half_digit = 0;
};

/// One row: at machine stiffness 0.1, 0.3, 1 and 5 N/um.
struct Row {
  const char *name;
  ForceCoefficients k;
  double axial_mm, radial_mm;
  Printed at_once_N, mean_N;
  std::array<Printed, 4> error_um;
};

constexpr std::array<double, 4> kMachine_N_per_um{0.1, 0.3, 1, 5};
constexpr Printed whole(double v) { return {v, 0.5}; }
constexpr Printed tenth(double v) { return {v, 0.05}; }

/// Worked numbers, derived from the linear-edge force, the cantilever and ae_real = ae - e: D 6 carbide (580
/// GPa), bending diameter 0.8 D, stick-out 25, two flutes, 30 degrees, 0.05 mm a tooth, climb, at the base of
/// the wall.
const Row kRows[] = {
    {"PETG 3 x 0.1",
     kPetgLike,
     3,
     0.1,
     tenth(4.9),
     tenth(0.9),
     {whole(10), whole(5), tenth(2.5), tenth(1.8)}},
    {"PETG 3 x 0.3", kPetgLike, 3, 0.3, tenth(9.9), tenth(1.8), {whole(20), whole(9), whole(5), tenth(3.5)}},
    {"PETG 3 x 1.0", kPetgLike, 3, 1.0, tenth(13.9), tenth(4.4), {whole(47), whole(19), whole(9), whole(5)}},
    {"PETG 10 x 0.1",
     kPetgLike,
     10,
     0.1,
     tenth(4.9),
     tenth(3.0),
     {whole(27), whole(11), tenth(4.5), whole(2)}},
    {"PETG 10 x 0.3",
     kPetgLike,
     10,
     0.3,
     tenth(10.0),
     tenth(6.1),
     {whole(56), whole(22), whole(9), whole(4)}},
    {"PETG 10 x 1.0",
     kPetgLike,
     10,
     1.0,
     tenth(23.9),
     tenth(14.6),
     {whole(137), whole(54), whole(21), whole(10)}},
    {"Al 3 x 0.1",
     kAluminiumLike,
     3,
     0.1,
     tenth(18.2),
     tenth(3.3),
     {whole(31), whole(15), whole(9), whole(6)}},
    {"Al 3 x 0.3",
     kAluminiumLike,
     3,
     0.3,
     tenth(39.4),
     tenth(7.2),
     {whole(70), whole(34), whole(19), whole(14)}},
    {"Al 10 x 0.3",
     kAluminiumLike,
     10,
     0.3,
     tenth(39.5),
     tenth(24.1),
     {whole(153), whole(75), whole(34), whole(17)}},
    {"Al 10 x 1.0",
     kAluminiumLike,
     10,
     1.0,
     whole(105),
     whole(65),
     {whole(424), whole(203), whole(88), whole(42)}},
};

WallCut pass_of(const Row &row) {
  return {.k = row.k,
          .teeth = kSixMillimetreCutter,
          .beam = {25, 25, 4.8, 4.8, 580e3},
          .steady_compliance_mm_per_N = 0,
          .axial_depth_mm = row.axial_mm,
          .radial_depth_mm = row.radial_mm,
          .feed_per_tooth_mm = 0.05,
          .climb = true};
}

/// Force away from the climb wall as its base is made, by discs, independent of the library's closed form.
/// The second tooth stands behind the cutter all the while: 10 mm lag only 110 degrees.
double disc_sum_N(const Row &row, int discs) {
  const double entry = kPi - std::acos(1 - row.radial_mm / 3), dz = row.axial_mm / discs;
  double sum = 0;
  for (int i = 0; i < discs; ++i) {
    const double phi = kPi - (i + 0.5) * dz * std::tan(kPi / 6) / 3;
    if (phi < entry)
      continue;
    const double h = 0.05 * std::sin(phi);
    sum += ((row.k.ktc * h + row.k.kte) * std::sin(phi) - (row.k.krc * h + row.k.kre) * std::cos(phi)) * dz;
  }
  return sum;
}

} // namespace

TEST(WallLoad, SummedOverSixHundredDiscsGivesThePrintedForces) {
  for (const Row &row : kRows)
    EXPECT_NEAR(disc_sum_N(row, kTableDiscs), row.at_once_N.value, row.at_once_N.half_digit) << row.name;
}

TEST(WallLoad, ClosedFormIsTheLimitOfTheDiscSum) {
  // The last disc is worth at most 60 N/mm x 10 mm/200000.
  for (const Row &row : kRows)
    EXPECT_NEAR(wall_load(pass_of(row), row.radial_mm, 0).at_once_N, disc_sum_N(row, 200000), 0.003)
        << row.name;
}

TEST(WallLoad, MeanForceMatchesPrintedColumn) {
  for (const Row &row : kRows)
    EXPECT_NEAR(wall_load(pass_of(row), row.radial_mm, 0).mean_N, row.mean_N.value, row.mean_N.half_digit)
        << row.name;
}

TEST(WallError, MatchesWorkedTableAtFourMachineStiffnesses) {
  // Half the printed digit, and 0.1 um more: 0.05 for the first of two roundings (53.5 printed 54, 26.5
  // printed 27) and 0.05 for the force of the last of 600 discs.
  constexpr double kTwiceRounded_um = 0.1;
  for (const Row &row : kRows)
    for (std::size_t i = 0; i < kMachine_N_per_um.size(); ++i) {
      WallCut cut = pass_of(row);
      cut.steady_compliance_mm_per_N = machine_compliance_mm_per_N(kMachine_N_per_um[i]);
      const double error_um = um_from_mm(wall_error(cut, 0).error_mm);
      EXPECT_NEAR(error_um, row.error_um[i].value, row.error_um[i].half_digit + kTwiceRounded_um)
          << row.name << ", machine " << kMachine_N_per_um[i] << " N/um";
    }
}

TEST(WallError, IsTheYieldAtTheRealDepth) {
  // Definition of the settled state, over soft and stiff machines, both ways of cutting, several heights.
  constexpr double kSettled_mm = 1e-8;
  for (const double stiffness : {0.02, 0.1, 1.0, 50.0})
    for (const bool climb : {true, false})
      for (const double z : {0.0, 1.0, 4.0, 9.5})
        for (const double radial : {0.02, 0.2, 0.8}) {
          WallCut cut = pass_of(kRows[8]);
          cut.climb = climb;
          cut.radial_depth_mm = radial;
          cut.steady_compliance_mm_per_N = machine_compliance_mm_per_N(stiffness);
          const WallError wall = wall_error(cut, z);
          const WallLoad load = wall_load(cut, radial - wall.error_mm, z);
          EXPECT_NEAR(wall.error_mm, load.cutter_bend_mm + load.mean_N * cut.steady_compliance_mm_per_N,
                      kSettled_mm)
              << stiffness << " N/um, climb " << climb << ", z " << z << ", ae " << radial;
          EXPECT_LE(wall.error_mm, radial);
        }
}

TEST(WallError, SpringPassTakesLessAndLeavesLess) {
  // Derived: the second pass meets only what the first left.
  WallCut cut = pass_of(kRows[8]);
  cut.steady_compliance_mm_per_N = machine_compliance_mm_per_N(0.3);
  const double first_mm = wall_error(cut, 0).error_mm;
  cut.radial_depth_mm = first_mm;
  const double second_mm = wall_error(cut, 0).error_mm;
  EXPECT_LT(second_mm, first_mm);
  EXPECT_GT(second_mm, 0);
}
