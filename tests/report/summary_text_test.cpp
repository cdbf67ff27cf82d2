// The summary says what is wanted, what was found and what it rests on.
#include "asperity/report/summary_text.h"

#include "asperity/report/cautions.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <limits>
#include <sstream>

namespace asperity {

using test_support::rim_outcome;

namespace {

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

std::size_t widest_line(const std::string &text) {
  std::istringstream in(text);
  std::size_t widest = 0;
  for (std::string line; std::getline(in, line);)
    widest = std::max(widest, line.size());
  return widest;
}

} // namespace

TEST(SummaryText, VerdictAndMissedValueComeBeforeEverythingElse) {
  const std::string text = summary_text(rim_outcome());
  EXPECT_TRUE(text.starts_with("Line sheave rim, second plan\n"));
  const std::size_t verdict = text.find("NOT MET  1 of 2 wanted values missed; 1 danger, 2 flaws.");
  const std::size_t missed = text.find("lip height  at most 0.100 mm");
  const std::size_t findings = text.find("Findings");
  ASSERT_NE(verdict, std::string::npos);
  ASSERT_NE(missed, std::string::npos);
  EXPECT_LT(verdict, missed);
  EXPECT_LT(missed, findings);
}

TEST(SummaryText, AFindingTellsPlaceSizeCauseRemedyLinesAndWhatItRestsOn) {
  const std::string text = summary_text(rim_outcome(), {.width = 200});
  EXPECT_TRUE(holds(text, " 2. witness line\n"));
  EXPECT_TRUE(holds(text, "rim, at 0 deg round the wall, z 0.6 to 14.0 mm: depth 6.0 um, width 0.600 mm\n"));
  EXPECT_TRUE(holds(text, "Cause: the cutter stands"));
  EXPECT_TRUE(holds(text, "Remedy: enter by a tangent arc or a ramp\n"));
  EXPECT_TRUE(holds(text, "Program: lines 12, 16, 20 and 24.\n"));
  EXPECT_TRUE(holds(text, "Rests on: machine stiffness (default)\n"));
  EXPECT_TRUE(holds(text, "Program: lines 13 and 30 more.\n"));
}

TEST(SummaryText, DangersComeFirstAndKeepTheirNumbers) {
  Outcome outcome = rim_outcome();
  std::swap(outcome.findings[0], outcome.findings[2]);
  const std::string text = summary_text(outcome);
  const std::size_t danger = text.find(" 3. DANGER hold-down may slip");
  ASSERT_NE(danger, std::string::npos);
  EXPECT_LT(danger, text.find(" 1. base lip"));
}

TEST(SummaryText, AWishThatNothingAnswersIsShownAsOpen) {
  const std::string text = summary_text(rim_outcome()); // the job asks for Ra 3.2, no check is about it
  EXPECT_TRUE(holds(text, "rim      Ra          at most 3.2 um       not predicted  open\n"));
}

TEST(SummaryText, NotesDefaultsAndCautionsAreNeverLeftOut) {
  const std::string text = summary_text(rim_outcome(), {.width = 200});
  EXPECT_TRUE(holds(text, "machine.stiffness_xy_N_per_um = 0.5 (common practice, no published source)"));
  EXPECT_TRUE(holds(text, "  - runout of T1 is the default\n"));
  for (std::string_view caution : cautions())
    EXPECT_TRUE(holds(text, caution)) << caution;
}

TEST(SummaryText, ASourceSharedByNeighbouringDefaultsIsSaidOnce) {
  Outcome outcome = rim_outcome();
  outcome.job.defaults_used = {"a_mm = 1 (from memory)", "b_mm = 2 (from memory)", "c_mm = 3 (taken as none)",
                               "d = 4"};
  const std::string text = summary_text(outcome);
  EXPECT_TRUE(holds(text, "    a_mm = 1, b_mm = 2 (from memory)\n    c_mm = 3 (taken as none)\n    d = 4\n"))
      << text;
}

TEST(SummaryText, WrapsProseToTheWidthOfTheTerminal) {
  constexpr std::size_t kTableIsWider = 78; // the widest row of the wanted table, which is never broken
  EXPECT_LE(widest_line(summary_text(rim_outcome(), {.width = 60})), kTableIsWider);
  EXPECT_LE(widest_line(summary_text(rim_outcome(), {.width = 100})), 100u);
}

TEST(SummaryText, ColourChangesNothingButEscapeCodes) {
  const std::string plain = summary_text(rim_outcome());
  std::string coloured = summary_text(rim_outcome(), {.colour = true});
  EXPECT_FALSE(holds(plain, "\x1b"));
  EXPECT_TRUE(holds(coloured, "\x1b"));
  for (std::size_t at; (at = coloured.find('\x1b')) != std::string::npos;)
    coloured.erase(at, coloured.find('m', at) - at + 1);
  EXPECT_EQ(coloured, plain);
}

TEST(SummaryText, HardNumbersAndNamesNeverLeak) {
  Outcome outcome = rim_outcome();
  outcome.job.title = "rim\x1b[2J";
  outcome.features[0].mean_um = std::numeric_limits<double>::quiet_NaN();
  outcome.checks[0].predicted = std::numeric_limits<double>::infinity();
  const std::string text = summary_text(outcome);
  EXPECT_FALSE(holds(text, "nan"));
  EXPECT_FALSE(holds(text, "inf "));
  EXPECT_FALSE(holds(text, "\x1b"));
}

TEST(SummaryText, ACancelledRunClaimsNothing) {
  Outcome outcome;
  outcome.status = Status::cancelled;
  const std::string text = summary_text(outcome);
  EXPECT_TRUE(holds(text, "Stopped before the end"));
  EXPECT_FALSE(holds(text, "MET"));
  EXPECT_FALSE(is_all_well(outcome));
}

TEST(Verdict, ADangerAloneIsNotAllWell) {
  Outcome outcome = rim_outcome();
  outcome.checks[1].met = true;
  EXPECT_FALSE(is_all_well(outcome));
  outcome.findings.erase(outcome.findings.begin());
  EXPECT_TRUE(is_all_well(outcome));
}

} // namespace asperity
