// Values of expressions, against the worked examples of NISTIR 6556 (Kramer, Proctor, Messina 2000),
// section 3.3.2.
#include "expression.h"

#include <gtest/gtest.h>

namespace asperity::gcode {
namespace {

/// The report prints five figures at most; its inputs (0.707107, 1.7321, 2.3026) are rounded to that too.
constexpr double kPrintedFigures = 5e-5;
/// Plain arithmetic on a few terms.
constexpr double kRounding = 1e-12;

double value_of(std::string_view text, const ParameterTable &parameters = {}) {
  Scanner scanner(text);
  Fault fault;
  const std::optional<double> value = read_value(scanner, parameters, fault);
  EXPECT_TRUE(value) << text << ": " << fault.message;
  EXPECT_TRUE(scanner.at_end()) << text << " not read to its end";
  return value.value_or(-1e9);
}

// Worked result of NISTIR 6556 (G1).
TEST(Expression, ProductsComeBeforeDifferences) {
  EXPECT_NEAR(value_of("[2.0 / 3 * 1.5 - 5.5 / 11.0]"), 0.5, kRounding);
}

// Worked results of NISTIR 6556 (G2).
TEST(Expression, ReportsSumsProductsAndRemainders) {
  EXPECT_NEAR(value_of("[1 + 2 * 3 - 4 / 5]"), 6.2, kRounding);
  EXPECT_EQ(value_of("[1 --3]"), 4.0);
  EXPECT_EQ(value_of("[15 MOD 4.0]"), 3.0);
}

// Worked results of NISTIR 6556 (G3): any number but zero is true.
TEST(Expression, LogicTreatsNonzeroAsTrue) {
  EXPECT_EQ(value_of("[2 or 2]"), 1.0);
  EXPECT_EQ(value_of("[2 and 2]"), 1.0);
  EXPECT_EQ(value_of("[2 xor 2]"), 0.0);
  EXPECT_EQ(value_of("[0 OR 0]"), 0.0);
  EXPECT_EQ(value_of("[0 XOR 1]"), 1.0);
}

// Worked results of NISTIR 6556 (G4).
TEST(Expression, AnglesAreInDegrees) {
  EXPECT_NEAR(value_of("sin[30]"), 0.5, kRounding);
  EXPECT_EQ(value_of("cos[0]"), 1.0);
  EXPECT_NEAR(value_of("tan[60]"), 1.7321, kPrintedFigures);
  // d(atan)/dx = 180/pi/(1+3) = 14 degrees per unit times the rounding of 1.7321 (5e-5).
  EXPECT_NEAR(value_of("atan[1.7321]/[1.0]"), 60.0, 15.0 * kPrintedFigures);
  EXPECT_NEAR(value_of("asin[1]"), 90.0, kRounding);
  // d(acos)/dx = 81 degrees per unit times the rounding of 0.707107 (5e-7).
  EXPECT_NEAR(value_of("acos[0.707107]"), 45.0, kPrintedFigures);
}

// Worked results of NISTIR 6556 (G5).
TEST(Expression, RoundGoesToTheNearestWhole) {
  EXPECT_EQ(value_of("round[-0.499]"), 0.0);
  EXPECT_EQ(value_of("round[-0.5001]"), -1.0);
  EXPECT_EQ(value_of("round[9.975]"), 10.0);
}

// Worked results of NISTIR 6556 (G6): FIX goes down even below zero.
TEST(Expression, FixGoesDown) {
  EXPECT_EQ(value_of("fix[-0.499]"), -1.0);
  EXPECT_EQ(value_of("fix[2.444]"), 2.0);
  EXPECT_EQ(value_of("fix[2.8]"), 2.0);
  EXPECT_EQ(value_of("fix[-2.8]"), -3.0);
}

// Worked results of NISTIR 6556 (G7).
TEST(Expression, FupGoesUp) {
  EXPECT_EQ(value_of("fup[-0.5001]"), 0.0);
  EXPECT_EQ(value_of("fup[2.444]"), 3.0);
  EXPECT_EQ(value_of("fup[2.8]"), 3.0);
  EXPECT_EQ(value_of("fup[-2.8]"), -2.0);
}

// Worked results of NISTIR 6556 (G8).
TEST(Expression, PowersLogarithmsAndRoots) {
  EXPECT_NEAR(value_of("exp[2.3026]"), 10.0, 10.0 * kPrintedFigures); // relative rounding of 2.3026
  EXPECT_NEAR(value_of("ln[10]"), 2.3026, kPrintedFigures);
  EXPECT_EQ(value_of("[2 ** 3.0]"), 8.0);
  EXPECT_NEAR(value_of("sqrt[3**2 + 4**2]"), 5.0, kRounding);
}

// Worked result of NISTIR 6556 (G11); the report gives no number.
// derived: asin(1/2.1 - 0.345) = 7.538 deg, atan2(4*2.1*sqrt(16.8), -18) = 117.6 deg, 2 + 7.538/117.6^2.
TEST(Expression, LongExampleOfTheReport) {
  constexpr double kTwelveFigures = 1e-12;
  EXPECT_NEAR(value_of("[2+asin[1/2.1+-0.345]/[atan[fix[4.4]*2.1*sqrt[16.8]]/[-18]]**2]"), 2.000545077939,
              kTwelveFigures);
}

// NISTIR 6556, 3.3.2.3: + - OR XOR AND share one level and go left to right; ** binds first.
TEST(Expression, SumsAndLogicShareOneLevel) {
  EXPECT_EQ(value_of("[1 or 0 + 1]"), 2.0); // (1 or 0) + 1; with OR last it would be 1
  EXPECT_EQ(value_of("[2 + 0 and 0]"), 0.0);
  EXPECT_EQ(value_of("[2 * 3 ** 2]"), 18.0);
  EXPECT_EQ(value_of("[2 ** 3 ** 2]"), 64.0); // left to right
  EXPECT_EQ(value_of("[10 - 4 - 3]"), 3.0);
}

// NISTIR 6556, 3.3.2.2: '#' binds tightest, and may be stacked.
TEST(Expression, ParameterSignBindsTightest) {
  ParameterTable parameters;
  parameters.set(1, 2.0);
  parameters.set(2, 7.0);
  parameters.set(3, 11.0);
  EXPECT_EQ(value_of("[#1+2]", parameters), 4.0);
  EXPECT_EQ(value_of("#[1+2]", parameters), 11.0);
  EXPECT_EQ(value_of("##1", parameters), 7.0);
}

TEST(Expression, NumbersMayHaveBlanksSignsAndBarePoints) {
  EXPECT_EQ(value_of("+0. 12 34"), 0.1234); // NISTIR 6556, 3.3
  EXPECT_EQ(value_of("-.5"), -0.5);
  EXPECT_EQ(value_of("1."), 1.0);
  EXPECT_EQ(value_of("007"), 7.0);
}

struct BadValue {
  const char *text;
  const char *message;
  int column;
};

TEST(Expression, WhatHasNoValueIsRefusedAtItsColumn) {
  const BadValue kBad[] = {
      {"[1/0]", "division by zero", 3},
      {"[5 mod 0]", "MOD by zero", 4},
      {"sqrt[-1]", "square root of -1", 1},
      {"ln[0]", "logarithm of 0", 1},
      {"asin[1.5]", "no angle", 1},
      {"[[0-8]**0.5]", "broken power", 7},
      {"[9**999]", "too large", 3},
      {"[1+2", "']' is missing before the end", 5},
      {"[1 2 x]", "']' is missing before 'x'", 6},
      {"atan[1]", "only one argument", 8},
      {"cos 5", "'[' is missing before '5'", 5},
      {"#0", "no parameter #0", 2},
      {"#5400", "no parameter #5400", 2},
      {"#1.5", "no parameter #1.5", 2},
      {"#[0-1]", "no parameter #-1", 2},
      {"1.2.3", "'1.2.3' is not a number", 1},
      {".", "'.' is not a number", 1},
      {"--1", "two signs", 1},
      {"[]", "a number is missing before ']'", 2},
      {"asim[0.5]", "unknown word 'asim' starting with 'a'", 1},
  };
  for (const BadValue &bad : kBad) {
    Scanner scanner(bad.text);
    Fault fault;
    EXPECT_FALSE(read_value(scanner, ParameterTable(), fault)) << bad.text;
    EXPECT_NE(fault.message.find(bad.message), std::string::npos) << bad.text << ": " << fault.message;
    EXPECT_EQ(fault.column, bad.column) << bad.text;
    EXPECT_FALSE(fault.remedy.empty()) << bad.text;
  }
}

} // namespace
} // namespace asperity::gcode
