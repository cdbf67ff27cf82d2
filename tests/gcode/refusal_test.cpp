// Programs that are wrong: each must give its message at its line and column, with a remedy, and reading must
// go on.
#include "reading.h"

namespace asperity::gcode {
namespace {

struct WrongProgram {
  const char *text; ///< after a metric head, so that its first line is line 2
  const char *message;
  int line;
  int column;
};

void expect_refused(const WrongProgram &wrong, const ReadOptions &options = {}) {
  const Reading reading = read(metric(wrong.text), options);
  const auto &all = reading.problems.all();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Problem &problem) {
    return problem.severity == Severity::error && problem.message.find(wrong.message) != std::string::npos;
  });
  ASSERT_NE(found, all.end()) << wrong.text << "\nwanted: " << wrong.message << "\n"
                              << reading.problem_text();
  EXPECT_EQ(found->line, wrong.line) << wrong.text << "\n" << text_of(*found);
  EXPECT_EQ(found->column, wrong.column) << wrong.text << "\n" << text_of(*found);
  EXPECT_EQ(found->file, "sheave.nc");
  EXPECT_FALSE(found->remedy.empty()) << wrong.text;
}

// Lexical rules of NISTIR 6556 (Kramer, Proctor, Messina 2000), 3.3.
TEST(Refusal, WordsThatCannotBeRead) {
  const WrongProgram kWrong[] = {
      {"G1 X", "a number is missing before the end of the line", 2, 5},
      {"G1 XY5", "unknown word 'y'", 2, 5},
      {"G1 X1.2.3", "'1.2.3' is not a number", 2, 5},
      {"G1 X--3", "two signs", 2, 5},
      {"G1 X1e3", "E words are not in the language", 2, 6},
      {"G1 U5", "U words are not in the language", 2, 4},
      {"G1 X5 X6", "a second X word", 2, 7},
      {"G1 F10 F20 X1", "a second F word", 2, 8},
      {"G1 X5 (left open", "the comment is not closed", 2, 7},
      {"(a(b))", "a comment inside a comment", 2, 3},
      {"G1 X5 )", "')' cannot stand here", 2, 7},
      {"G1 X5 = 3", "'=' cannot stand here", 2, 7},
      {"G1 X\xC3\xA9", "a character of code 195", 2, 5},
      {"#5400=1", "there is no parameter #5400", 2, 2},
      {"#0=1", "there is no parameter #0", 2, 2},
      {"#7 X5", "'=' is missing after #7", 2, 4},
      {"G1 X[1/0]", "division by zero", 2, 7},
      {"G1 X[1+2", "an operator or ']' is missing", 2, 9},
      {"G1 Xsqrt[0-4]", "square root of -4", 2, 5},
      {"N G1 X1", "N needs a whole number", 2, 1},
      {"N1.5 G1 X1", "N needs a whole number", 2, 1},
      {"N-5 G1 X1", "N needs a whole number", 2, 1},
      {"G1 X1 N10", "N word after other words", 2, 7},
      {"G1 X99999999999999999999999", "X = 1e+23 mm is out of all range", 2, 4},
      {"G1 Y-100001", "Y = -100001 mm is out of all range", 2, 4},
      {"G1 X5\nG1 X5\nG1 X?", "a number is missing before '?'", 4, 5},
  };
  for (const WrongProgram &wrong : kWrong)
    expect_refused(wrong);
}

// Modal groups and order, NISTIR 6556, 3.4 and table 4; refused codes are ours.
TEST(Refusal, CodesThatConflictOrAreNotFollowed) {
  const WrongProgram kWrong[] = {
      {"G1 G2 X1", "G1 and G2 exclude each other", 2, 4},
      {"G90 G91", "G90 and G91 exclude each other", 2, 5},
      {"M3 M5", "M3 and M5 exclude each other", 2, 4},
      {"M3 M7 M48 M6 M0 T1", "more than four M words", 2, 14},
      {"G4 G53 P1 X1", "G4 and G53 exclude each other", 2, 4},
      {"G0 G92 X1", "both want the axis words", 2, 1},
      {"G10 L2 P1 G1 X1", "both want the axis words", 2, 11},
      {"G6", "G6 is not known", 2, 1},
      {"G1.5 X1", "G1.5 is not known", 2, 1},
      {"G-1 X1", "G-1 is not known", 2, 1},
      {"G54.15", "G54.15 is not known", 2, 1},
      {"M100", "M100 is not known", 2, 1},
      {"G38.2 Z-5", "G38.2 (probing)", 2, 1},
      {"G68 X0 Y0 R45", "G68 (coordinate rotation)", 2, 1},
      {"G43.1 Z5", "G43.1 (a tool length offset given in the program)", 2, 1},
      {"G54.1 P3", "G54.1 (an extra work offset)", 2, 1},
      {"M98 P100", "M98 (a sub-program call)", 2, 1},
      {"M99", "M99 (return from a sub-program)", 2, 1},
      {"G42 D1 G1 X5", "G42 (radius compensation to the right)", 2, 1},
      {"G73 X1 Z-1 R1 Q1", "G73 (drilling with chip breaking)", 2, 1},
      {"G71", "G71 (metric units in an older assignment", 2, 1},
      {"G0 X1\nO100", "O words are not in the language", 3, 1},
      {"o100 sub", "O words are not in the language", 2, 1},
      {"G1 X5 A30", "A is a rotary axis", 2, 7},
  };
  for (const WrongProgram &wrong : kWrong)
    expect_refused(wrong);
}

// NISTIR 6556, 3.5 and 3.6: what each command needs.
TEST(Refusal, CommandsThatLackOrRepeatSomething) {
  const WrongProgram kWrong[] = {
      {"X5", "axis words before any G0", 2, 1},
      {"G80\nX5", "axis words while G80 is in force", 3, 1},
      {"G1 X5 R3", "nothing on the line uses the R word", 2, 7},
      {"G1 X5 K3", "nothing on the line uses the K word", 2, 7},
      {"G1 X5 H1", "nothing on the line uses the H word", 2, 7},
      {"G1 X5 P2", "nothing on the line uses the P word", 2, 7},
      {"G4", "G4 without P", 2, 1},
      {"G4 P-1", "negative wait", 2, 4},
      {"G43", "G43 without H", 2, 1},
      {"G43 H1.5", "H1.5 is not a whole number", 2, 5},
      {"G53 X1", "axis words before any G0", 2, 5},
      {"G0 G53", "G53 without X, Y or Z", 2, 4},
      {"G2 X1 I1\nG53 X1", "G53 without G0 or G1", 3, 1},
      {"G92", "G92 without X, Y or Z", 2, 1},
      {"G10 L20 P1 X0", "only with L2", 2, 5},
      {"G10 L2 X0", "G10 L2 without P", 2, 1},
      {"G10 L2 P10 X0", "P10 is not a whole number from 1 to 9", 2, 8},
      {"G1 X5 F-10", "negative feed", 2, 7},
      {"S-100", "negative spindle speed", 2, 1},
      {"T-1", "T-1 is not a whole number", 2, 1},
      {"T1.5", "T1.5 is not a whole number", 2, 1},
      {"G93 G1 X5", "no F on a feed move in G93", 2, 5},
      {"G95 G1 X5", "a feed move before any F", 2, 8},
      {"M5 G95 F0.1 G1 X5", "feed per turn (G95) with the spindle stopped", 2, 16},
      {"G64 P-1", "negative path tolerance", 2, 5},
  };
  for (const WrongProgram &wrong : kWrong)
    expect_refused(wrong);
}

// NISTIR 6556, 3.5.3 (arcs) and 3.5.16 (cycles).
TEST(Refusal, ArcsAndCyclesThatCannotBe) {
  const WrongProgram kWrong[] = {
      {"G2 X10", "G2 without a centre or radius", 2, 1},
      {"G2 X10 Y10 I3 J0", "radii differ: 3.0000 mm at its start", 2, 1},
      {"G3 X0 Y0 R5", "ends where it begins", 2, 10},
      {"G3 X20 R5", "no arc of radius 5.0000 mm joins points 20.0000 mm apart", 2, 8},
      {"G3 R5", "without an end in its plane", 2, 4},
      {"G3 X5 I2 R5", "both a radius and a centre", 2, 10},
      {"G3 X5 I2 K1", "K does not belong to the plane", 2, 10},
      {"G18 G3 X5 J1 I2", "J does not belong to the plane", 2, 11},
      {"G2 X0 Y0 I0 J0", "radius zero", 2, 1},
      {"G3 X5 R0", "no arc of radius 0", 2, 7},
      {"G3 X0 Y0 I5 P3", "P (turns of a helix)", 2, 13},
      {"G90.1 G3 X10 I5", "absolute centre (G90.1) with one word missing", 2, 7},
      {"G81 X1 Z-1", "G81 without R", 2, 1},
      {"G81 X1 R1", "G81 without Z", 2, 1},
      {"G81 X1 Z1 R0", "R below the bottom", 2, 1},
      {"G81 X1 Z-1 R1 L0", "L0 is not a whole number", 2, 15},
      {"G81 X1 Z-1 R1 L1.5", "L1.5 is not a whole number", 2, 15},
      {"G82 X1 Z-1 R1", "G82 without P", 2, 1},
      {"G83 X1 Z-1 R1", "G83 without a Q", 2, 1},
      {"G83 X1 Z-1 R1 Q0", "G83 without a Q", 2, 1},
      {"G83 X1 Z-1 R1 Q0.00001", "pecks", 2, 1},
      {"M4 G84 X1 Z-1 R1", "G84 (right-hand tapping) without M3", 2, 4},
      {"M5 G86 X1 Z-1 R1 P1", "G86 with the spindle stopped", 2, 4},
      {"G93 G81 X1 Z-1 R1", "G81 in G93", 2, 5},
      {"G81 Z-1 R1 P-1 X1", "negative P", 2, 1},
      {"G81", "G81 without X, Y or Z", 2, 1},
  };
  for (const WrongProgram &wrong : kWrong)
    expect_refused(wrong);
}

// NISTIR 6556 (G29): these are errors in the standard. Real files hold some of them, so only strict reading
// refuses long line numbers and program numbers.
TEST(Refusal, WhatTheReportForbidsIsRefusedInStrictReading) {
  const std::string long_line = "G1 X5" + std::string(252, ' ');
  const WrongProgram kWrong[] = {
      {"G2 X0 Y0 R5", "ends where it begins", 2, 10},
      {long_line.c_str(), "a line of 257 characters", 2, 257},
      {"N123456 G1 X1", "line number of 6 digits", 2, 1},
      {"N000009 G1 X1", "line number of 6 digits", 2, 1},
      {"G1 X1 (a(b))", "a comment inside a comment", 2, 9},
      {"O100", "a program number is no word of the standard", 2, 1},
      {"G0 G1 X1", "G0 and G1 exclude each other", 2, 4},
  };
  for (const WrongProgram &wrong : kWrong)
    expect_refused(wrong, strict());
  expect_refused(kWrong[1]); // the long line in any reading
}

TEST(Refusal, LineOf256CharactersIsRead) {
  EXPECT_FALSE(read(metric("G1 X5" + std::string(251, ' ')), strict()).problems.has_errors());
}

TEST(Refusal, ToolThatTheJobLacksIsNamedAtTheChange) {
  ReadOptions options;
  options.tools = {1, 3};
  EXPECT_FALSE(read(metric("T3 M6\nG0 X1"), options).problems.has_errors());
  expect_refused({"T2\nM6", "tool 2 is not among the job's tools", 3, 1}, options);
}

TEST(Refusal, LengthOffsetThatTheTableLacksIsNamed) {
  ReadOptions options;
  options.length_offset_mm = {{1, 80.0}};
  EXPECT_FALSE(read(metric("G43 H1\nG43 H0\nG0 X1"), options).problems.has_errors());
  expect_refused({"G43 H2", "no tool length offset for H2", 2, 5}, options);
}

TEST(Refusal, FilesThatAreNoProgram) {
  EXPECT_TRUE(read("").says("the program is empty"));
  EXPECT_TRUE(read(" \r\n\t\n").says("the program is empty"));
  EXPECT_TRUE(read(std::string_view("solid\0mesh", 10)).says("not a text file"));
  EXPECT_TRUE(read("G21\nM30\n").says("the program makes no move"));
  EXPECT_TRUE(read("%\n%\n").says("the program makes no move"));
  Problems problems;
  EXPECT_TRUE(read_program("/nowhere/bezel.nc", {}, problems).moves.empty());
  EXPECT_TRUE(problems.has_errors());
}

TEST(Refusal, FeedMoveWithoutAFeedIsRefusedOnce) {
  const Reading reading = read("G21 S1000 M3\nG0 Z0\nG1 X1\nX2\nX3 F0\nM2\n");
  ASSERT_EQ(reading.problems.error_count(), 1u) << reading.problem_text();
  EXPECT_TRUE(reading.says("a feed move before any F"));
  EXPECT_EQ(reading.problems.all()[0].line, 3);
}

// Every error is reported, not only the first, and moves after it are still read.
TEST(Refusal, ReadingGoesOnAfterErrors) {
  const Reading reading = read(metric("G1 X1\nG1 X?\nG2 G3 X1\nG1 X4 Y4\nG77\nG1 X5"));
  EXPECT_EQ(reading.problems.error_count(), 4u) << reading.problem_text();
  EXPECT_EQ(reading.moves().back().curve.end.x, 5.0);
  EXPECT_EQ(reading.moves().back().line, 7u);
}

// A skipped line must not make the arc after it look wrong.
TEST(Refusal, ArcAfterASkippedLineIsNotBlamed) {
  const Reading reading =
      read(metric("G1 X0 Y0 Z0\nG1 X10 Y?\nG3 X10 Y10 I0 J5\nG1 X0 Y0\nG3 X10 Y10 I0 J3"));
  ASSERT_EQ(reading.problems.error_count(), 2u) << reading.problem_text();
  EXPECT_EQ(reading.problems.all()[0].line, 3);
  EXPECT_EQ(reading.problems.all()[1].line, 6);
}

} // namespace
} // namespace asperity::gcode
