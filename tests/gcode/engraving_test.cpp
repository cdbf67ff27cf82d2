// An engraving with the arcs of the sample program in NISTIR 6556 (Kramer, Proctor, Messina 2000), appendix
// C. The program is our own (a dial's lettering); only its set of arcs, its habits and its counts follow the
// sample.
#include "asperity/base/units.h"
#include "reading.h"

#include <cmath>

namespace asperity::gcode {
namespace {

// Habits of the sample: four-figure line numbers, lines without a G word, "x 7" with a blank, an arc with X
// left out, a full circle by repeating X. Twelve plunges of 2.5 mm; 17 straight cuts; 5 arcs.
constexpr const char *kDial = R"(%
n0010 g21 g0 x0 y0 z2 (dial bezel, hour marks)
n0020 s9000 m3 f20
n0030 g0 x0 y0
n0040 g1 z-0.5
n0050 x 7
n0060 y3
n0070 g0 z2
n0080 x10 y2.5
n0090 g1 z-0.5
n0100 g3 x12.5 y5 i2.5 j0 (ccw, r 2.5, 270 degrees)
n0110 g0 z2
n0120 x20 y5
n0130 g1 z-0.5
n0140 g2 x20 i2.5 (full circle by repeating x)
n0150 g0 z2
n0160 x30 y5
n0170 g1 z-0.5
n0180 g2 x30 i2.5
n0190 g0 z2
n0200 x64 y4
n0210 g1 z-0.5
n0220 g2 x69 r4
n0230 g0 z2
n0240 x80 y0
n0250 g1 z-0.5
n0260 g2 y5 j2.5 (x left out, 180 degrees)
n0280 g0 z2
)";

/// Six more strokes to make twelve plunges and seventeen straight cuts: three legs each, the first five.
std::string whole_program() {
  std::string text = kDial;
  for (int i = 0; i < 6; ++i) {
    const std::string x = std::to_string(100 + 10 * i);
    text += "g0 x" + x + " y0\ng1 z-0.5\ny4\nx [" + x + "+3]\n";
    text += i < 3 ? "y0\ng0 z2\n" : "g0 z2\n";
  }
  return text + "m2\n%\n";
}

bool is_plunge(const Move &move) {
  return move.kind == MoveKind::feed && move.curve.is_line() &&
         plan(move.curve.begin) == plan(move.curve.end);
}

// Arc set of the sample: ccw r 2.5 through 270 deg; two whole cw circles r 2.5; cw r 4 through 77.3644 deg
// about (66.5, 0.877501); cw r 2.5 through 180 deg [NISTIR 6556, appendix C].
TEST(Engraving, HasTheArcsOfTheReportsSample) {
  const Reading reading = read_good(whole_program());
  std::vector<Curve> arcs;
  for (const Move &move : reading.moves()) {
    if (!move.curve.is_line())
      arcs.push_back(move.curve);
  }
  const double kSweeps_deg[] = {270.0, -360.0, -360.0, -77.3644, -180.0};
  const double kRadii_mm[] = {2.5, 2.5, 2.5, 4.0, 2.5};
  constexpr double kPrinted_deg = 5e-5, kPrinted_mm = 5e-7; // last printed figure
  ASSERT_EQ(arcs.size(), 5u);
  for (std::size_t i = 0; i < 5; ++i) {
    EXPECT_NEAR(deg_from_rad(arcs[i].sweep_rad), kSweeps_deg[i], kPrinted_deg);
    EXPECT_NEAR(arcs[i].radius_mm, kRadii_mm[i], kRounding_mm);
  }
  EXPECT_NEAR(arcs[3].centre.x, 66.5, kRounding_mm);
  EXPECT_NEAR(arcs[3].centre.y, 0.877501, kPrinted_mm);
}

// Counts of the sample: 34 feed moves of which 12 plunges, 30.0 mm of feed in Z.
TEST(Engraving, HasTheCountsOfTheReportsSample) {
  const Reading reading = read_good(whole_program());
  int feeds = 0, plunges = 0;
  double plunged_mm = 0.0, cut_mm = 0.0, minutes = 0.0;
  for (const Move &move : reading.moves()) {
    if (move.kind != MoveKind::feed)
      continue;
    ++feeds;
    plunges += is_plunge(move) ? 1 : 0;
    (is_plunge(move) ? plunged_mm : cut_mm) += move.curve.length_mm();
    minutes += move.curve.length_mm() / move.feed_mm_per_min;
  }
  EXPECT_EQ(plunges, 12);
  EXPECT_EQ(feeds, 34);
  EXPECT_NEAR(plunged_mm, 30.0, kRounding_mm);
  // derived: arcs r * angle; straight cuts 7 + 3 + 6 * (4 + 3) + 3 * 4.
  const double arcs_mm = 2.5 * (1.5 + 2.0 + 2.0 + 1.0) * kPi + 4.0 * 2.0 * std::asin(2.5 / 4.0);
  constexpr double kSum_mm = 1e-10; // some forty terms
  EXPECT_NEAR(cut_mm, arcs_mm + 64.0, kSum_mm);
  EXPECT_NEAR(minutes, (cut_mm + plunged_mm) / 20.0, kSum_mm);
}

} // namespace
} // namespace asperity::gcode
