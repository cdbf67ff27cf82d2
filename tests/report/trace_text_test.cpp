// A trace in words: numbers against closed forms, warnings where they are due.
#include "asperity/report/trace_text.h"

#include "asperity/base/units.h"
#include "support/rim_trace.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <cmath>
#include <sstream>

namespace asperity {

namespace {

using test_support::kMark_mm;
using test_support::kMarkHeight_um;
using test_support::rim_trace;
using test_support::RimTrace;

bool holds(const std::string &text, std::string_view part) { return text.find(part) != std::string::npos; }

/// Number after a parameter's name.
double number_after(const std::string &text, const std::string &name) {
  const std::size_t at = text.find("\n  " + name + " ");
  return at == std::string::npos ? std::nan("") : std::stod(text.substr(at + 3 + name.size()));
}

} // namespace

TEST(TraceText, NumbersOfACosineFollowTheirClosedForms) {
  // Ra = 2 A / pi, Rq = A / sqrt 2, Rz = 2 A, Rsk = 0, Rku = 1.5 of a sine [any handbook of metrology].
  constexpr double kPrinted = 0.006; // two decimals, and a half percent that ls and sampling take
  const std::string text = trace_text(rim_trace().view());
  EXPECT_NEAR(number_after(text, "Ra"), 2.0 * kMarkHeight_um / kPi, kPrinted);
  EXPECT_NEAR(number_after(text, "Rq"), kMarkHeight_um / std::sqrt(2.0), kPrinted);
  EXPECT_NEAR(number_after(text, "Rz"), 2.0 * kMarkHeight_um, 2.0 * kPrinted);
  EXPECT_NEAR(number_after(text, "Rsk"), 0.0, kPrinted);
  EXPECT_NEAR(number_after(text, "Rku"), 1.5, kPrinted);
  EXPECT_NEAR(number_after(text, "RSm"), kMark_mm, 0.0006);
  for (const char *name : {"Rp", "Rv", "Rt", "Rzx", "cusp"})
    EXPECT_TRUE(std::isfinite(number_after(text, name))) << name;
  EXPECT_TRUE(holds(text, "N7")); // above 0.8, not above 1.6 um [ISO 1302:1992]
}

TEST(TraceText, SaysWhereAndHowItIsRead) {
  RimTrace rim = rim_trace();
  const std::string chosen = trace_text(rim.view());
  EXPECT_TRUE(holds(chosen, "z = 7.000 mm"));
  EXPECT_TRUE(holds(chosen, "lc 0.8 mm"));
  EXPECT_TRUE(holds(chosen, "ISO 4288:1996"));
  EXPECT_TRUE(holds(chosen, "5 sections of 0.8 mm = 4 mm, from s = 11.000 to 15.000 mm"));
  rim.request.cutoff_mm = 0.8;
  EXPECT_TRUE(holds(trace_text(rim.view()), "lc 0.8 mm, as asked"));
}

TEST(TraceText, JudgesTheWantedRaByTheUpperEndOfTheBand) {
  RimTrace rim = rim_trace();
  Material &material = rim.outcome.job.material;
  FinishWanted &finish = std::get<WallFeature>(rim.outcome.job.features[0]).finish;
  material.own_ra_low_um = 1.0;
  material.own_ra_high_um = 3.0; // with 1.27 um: sqrt(9 + 1.62) = 3.26 um
  finish.ra_um = 3.2;
  EXPECT_FALSE(is_ra_met(rim.view()));
  EXPECT_TRUE(holds(trace_text(rim.view()), "NOT MET"));
  EXPECT_TRUE(holds(trace_text(rim.view()), "3.26 um"));
  finish.ra_um = 3.3;
  EXPECT_TRUE(is_ra_met(rim.view()));
  finish.ra_um.reset();
  EXPECT_TRUE(is_ra_met(rim.view()));
}

TEST(TraceText, WarnsOfShortTracesAndUncutStretches) {
  const std::string whole = trace_text(rim_trace().view());
  EXPECT_FALSE(holds(whole, "too short"));
  EXPECT_TRUE(holds(whole, "5.0% of the trace is not cut")); // 0.3 of 6 mm
  const RimTrace short_one = rim_trace(3.0);                 // 3 - 0.8 = 2.2 mm: two sections of 0.8 mm
  EXPECT_TRUE(holds(trace_text(short_one.view()), "too short for 5 sections"));
  EXPECT_TRUE(holds(trace_text(short_one.view()), "2 sections of 0.8 mm = 1.6 mm"));
  EXPECT_TRUE(holds(trace_text(rim_trace(0.5).view()), "less than one"));
}

TEST(TraceText, FitsTheWidthAndHoldsNoControlCharacters) {
  RimTrace rim = rim_trace();
  rim.outcome.job.title = "Sheave\x1b[31m of the\x07 tower clock";
  std::istringstream in(trace_text(rim.view(), {.width = 80}));
  for (std::string line; std::getline(in, line);) {
    EXPECT_LE(line.size(), 80u) << line;
    EXPECT_FALSE(holds(line, "\x1b") || holds(line, "\x07"));
  }
}

TEST(TraceView, LinesAreNamedByTheirShareAndRunsOfManyAreJoined) {
  RimTrace rim = rim_trace();
  EXPECT_EQ(line_share_text(rim.view(), 6), "line 13 (95%)");
  // A curve in short moves: lines 101 to 120, then a far one.
  rim.outcome.path.pieces.assign(21, rim.outcome.path.pieces[1]);
  for (std::uint32_t k = 0; k < 21; ++k)
    rim.outcome.path.pieces[k].line = k < 20 ? 101 + k : 500;
  for (std::size_t i = 0; i < rim.trace.owner.size(); ++i)
    rim.trace.owner[i] = static_cast<std::uint32_t>(i % 25 < 20 ? i % 25 : 20);
  EXPECT_EQ(line_share_text(rim.view(), 6), "20 of lines 101 to 120 (80%), line 500 (20%)");
}

TEST(TraceView, MarkDistanceIsTheFeedATurnBroughtToTheWall) {
  constexpr double kRounding = 1e-12;
  RimTrace rim = rim_trace();
  EXPECT_NEAR(mark_distance_mm(rim.view(), 2000), kMark_mm, kRounding);
  rim.outcome.job.effects.runout = false; // then every tooth leaves its own mark
  rim.outcome.job.cutters[0].flutes = 2;
  EXPECT_NEAR(mark_distance_mm(rim.view(), 2000), 0.5 * kMark_mm, kRounding);
  EXPECT_NEAR(mark_distance_mm(rim.view(), 0), rim.trace.reading.parameters.rsm_mm, kRounding) << "not cut";
}

} // namespace asperity
