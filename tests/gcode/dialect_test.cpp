// What real files do against the standard: taken with a warning, or refused with the remedy that fits.
#include "reading.h"

namespace asperity::gcode {
namespace {

/// Reads without errors, with this warning; in strict reading the same is an error.
void expect_tolerated(const std::string &text, std::string_view warning) {
  const Reading lenient = read_good(text);
  EXPECT_TRUE(lenient.says(warning)) << text << "\n" << lenient.problem_text();
  EXPECT_TRUE(read(text, strict()).problems.has_errors()) << text;
}

// Heads as post processors write them [ISO program format in a public course text; common practice].
TEST(Dialect, UsualProgramHeadIsReadWithoutErrors) {
  const Reading reading =
      read_good("%\nO1234 (LINE SHEAVE)\nN5 G90 G94 G21 G40 G49\nN10 G91 G28 Z0\nN15 G90\n"
                "N20 T1 M06\nN25 G54 G00 X0. Y.5 S12000 M03\nN30 Z-.5\nN35 G01 X-5. F100.\nM30\n%\n");
  EXPECT_EQ(reading.moves().size(), 3u);
  EXPECT_TRUE(reading.says("a program number is no word of the standard"));
  EXPECT_EQ(reading.moves()[2].tool, 1);
}

TEST(Dialect, ProgramNumberWithColonIsPassedOver) {
  expect_tolerated(":1234\nG21 G0 X1\nM2\n", "a program number is no word of the standard");
}

TEST(Dialect, MissingEndIsAWarning) {
  expect_tolerated("G21 G0 X1\n", "does not end with M2 or M30");
  expect_tolerated("%\nG21 G0 X1\n", "has no partner at the end");
  EXPECT_EQ(read_good("G21 G0 X1\nM30", strict()).warning_count(), 0u);
  EXPECT_EQ(read_good("%\nG21 G0 X1\n%\nleft over", strict()).warning_count(), 0u);
}

TEST(Dialect, PercentSignsInOddPlaces) {
  EXPECT_EQ(read_good("G21 G0 X1\nM2\n%\n").warning_count(), 0u); // after M2 nothing is read
  expect_tolerated("G21 G0 X1\n%\n", "% at the end but none at the head");
  expect_tolerated("% bezel\nG21 G0 X1\nM2\n%\n", "taken as a comment");
  expect_tolerated("G21 G0 X1\n% half way\nG0 X2\nM2\n", "taken as a comment");
  EXPECT_EQ(read_good("G21 G0 X1\n% half way\nG0 X2\nM2\n").moves().size(), 2u);
}

TEST(Dialect, LinesAfterTheEndAreNotRead) {
  EXPECT_EQ(read_good("G21 G0 X1\nM2\nG0 X?\n").moves().size(), 1u);
}

TEST(Dialect, LongLineNumbersAndDoubleSlashComments) {
  expect_tolerated("G21\nN123456 G0 X1\nM2\n", "line number of 6 digits");
  expect_tolerated("G21\n// by hand\nG0 X1\nM2\n", "a // comment");
}

TEST(Dialect, LongSemicolonCommentIsNoLongLine) {
  expect_tolerated("G21 G0 X1 ;" + std::string(300, 'x') + "\nM2\n", "characters; the standard allows 256");
}

TEST(Dialect, ModeWordAloneOnlySetsTheMode) {
  expect_tolerated("G21 S1 M3\nG0\nG1 F100\nX5\nM2\n", "only sets the mode");
  EXPECT_EQ(read_good("G21 S1 M3\nG1 F100\nX5\nM2\n").moves()[0].kind, MoveKind::feed);
}

TEST(Dialect, ArcWithoutEndWordsIsAFullCircle) {
  const std::string text = metric("G0 X5 Y0 Z0\nG2 I-5 J0");
  expect_tolerated(text, "taken as a full circle");
  EXPECT_NEAR(read(text).moves().back().curve.length_mm(), 31.41592653589793, 1e-9); // 2 pi 5
}

TEST(Dialect, CodesThatCancelNothingAreReadPast) {
  expect_tolerated(metric("G69 G50\nG0 X1"), "G69 has nothing to cancel");
}

TEST(Dialect, MistAndFloodOnOneLine) { expect_tolerated(metric("M7 M8\nG0 X1"), "M7 and M8 on one line"); }

// Three-decimal posts miss by up to 0.0014 mm, two-decimal posts by more. derived: rounding of both ends.
TEST(Dialect, AbsoluteArcCentresAreRecognised) {
  const std::string arc = "G0 X10 Y20 Z0\nG1 X15\nG3 X10 Y25 I10 J20";
  const Reading reading = read(metric(arc));
  ASSERT_EQ(reading.problems.error_count(), 1u) << reading.problem_text();
  EXPECT_NE(reading.problems.all().back().remedy.find("add G90.1"), std::string::npos);
  const Reading cured = read_good(metric("G90.1\n" + arc));
  EXPECT_NEAR(cured.moves().back().curve.radius_mm, 5.0, kRounding_mm);
  expect_at(cured.moves().back().curve.centre, {10, 20, 0});
  const Reading wrong_way = read(metric("G90.1\nG0 X10 Y20 Z0\nG1 X15\nG3 X10 Y25 I-5 J0"));
  EXPECT_NE(wrong_way.problems.all().back().remedy.find("add G91.1"), std::string::npos);
  read_good(metric("G90.1 G91\nG91.1\nG1 X5 Y0\nG3 X-5 Y5 I-5 J0"));
}

TEST(Dialect, LineEndsOfAllKinds) {
  for (const char *text : {"G21 G0 X1\nG0 X2\nM2\n", "G21 G0 X1\r\nG0 X2\r\nM2\r\n", "G21 G0 X1\rG0 X2\rM2\r",
                           "G21 G0 X1\nG0 X2\nM2", "\xEF\xBB\xBFG21 G0 X1\nG0 X2\nM2\n"}) {
    const Reading reading = read_good(text, strict());
    ASSERT_EQ(reading.moves().size(), 2u) << text;
    EXPECT_EQ(reading.moves()[1].line, 2u) << text;
    EXPECT_EQ(reading.program.line_count, 3u) << text;
  }
}

// NISTIR 6556, 3.3: blanks and case do not count and words may stand in any order.
TEST(Dialect, WordsRunTogetherInAnyCaseAndOrder) {
  for (const char *line : {"n10x1y2g0z3", "N10Z3Y2X1G00", "/ n 1 0 G 0 X 1 . Y 0 2 Z +3"}) {
    const Reading reading = read_good(metric(line), strict());
    ASSERT_EQ(reading.moves().size(), 1u) << line;
    expect_at(reading.moves()[0].curve.end, {1, 2, 3});
    EXPECT_EQ(reading.moves()[0].kind, MoveKind::rapid);
  }
}

TEST(Dialect, BlockDeleteFollowsItsSwitch) {
  const std::string text = metric("G0 X1\n/G0 X2\n/N5 G0 X3");
  EXPECT_EQ(read_good(text).moves().size(), 3u);
  ReadOptions options;
  options.block_delete = true;
  EXPECT_EQ(read_good(text, options).moves().size(), 1u);
}

// NISTIR 6556, 3.3.4: only the last comment of a line counts; blanks and case before the comma do not.
TEST(Dialect, MessagesAreKept) {
  const Reading reading =
      read_good(metric("(MSG, fit the bezel)\nG0 X1 ( m S g,turn it over)\n(MSG,lost)(kept)"));
  EXPECT_EQ(reading.program.messages, (std::vector<std::string>{"fit the bezel", "turn it over"}));
}

TEST(Dialect, ToolWithoutAChangeIsTakenAsInTheSpindle) {
  const Reading reading = read_good(metric("T4\nG0 X1"));
  EXPECT_TRUE(reading.says("T4 without M6"));
  EXPECT_EQ(reading.moves()[0].tool, 4);
  EXPECT_EQ(read_good(metric("T4 M6\nT5\nG0 X1")).moves()[0].tool, 4);
  EXPECT_EQ(read_good(metric("M6 T4\nG0 X1")).moves()[0].tool,
            4); // T comes before M6 in the order of execution
}

TEST(Dialect, DangerousOrDoubtfulLinesGiveAWarning) {
  EXPECT_TRUE(read_good(metric("G0 X1\nG28 Z0")).says("first goes down to Z0 of the part"));
  EXPECT_FALSE(read_good(metric("G0 X1\nG91 G28 Z0")).says("first goes down"));
  EXPECT_TRUE(read_good(metric("G0 X1\nG4 P500")).says("a wait of 500 seconds"));
  EXPECT_TRUE(read_good(metric("M5\nG1 X1")).says("the spindle is not turning"));
  EXPECT_TRUE(read_good("G0 X1\nM2\n").says("neither G20 nor G21 before the first move; millimetres taken"));
  EXPECT_TRUE(read_good(metric("G0 G53 Z0")).says("the origin of G54 is not known"));
  EXPECT_TRUE(read_good(metric("G43 H3\nG0 X1")).says("no tool length offset known for H3; taken as 0"));
  EXPECT_EQ(read_good(metric("G0 X1")).warning_count(), 0u);
}

} // namespace
} // namespace asperity::gcode
