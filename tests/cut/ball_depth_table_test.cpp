// The stepover-for-height law against a tool maker's printed table of ball-nose effective diameters.
#include "asperity/cut/scallop.h"

#include <gtest/gtest.h>

#include <array>
#include <span>
#include <vector>

using namespace asperity;

namespace {

/// Source: tool maker's ball-nose effective cutting diameter table (inch). The chord of a ball at depth d is
/// also the stepover that leaves height d.
constexpr std::array<double, 11> kDepth_in{.005, .010, .015, .025, .035, .050, .100, .125, .150, .200, .250};
/// Three printed decimals; the last digit decides, plus rounding of exact halves such as .1005.
constexpr double kHalfDigit_in = 0.0005 + 1e-12;

struct Row {
  double diameter_in;
  std::vector<double> chord_in;
};

const std::vector<Row> kTable{
    {.250, {.070, .098, .119, .150, .173, .200, .245, .250}},
    {.375, {.086, .121, .147, .187, .218, .255, .332, .354, .367, .374}},
    {.500, {.099, .140, .171, .218, .255, .300, .400, .433, .458, .490, .500}},
    {.625, {.111, .157, .191, .245, .287, .339, .458, .500, .534, .583, .612}},
    {.750, {.122, .172, .210, .269, .316, .374, .510, .559, .600, .663, .707}},
    {1.000, {.141, .199, .243, .312, .368, .436, .600, .661, .714, .800, .866}},
    {1.250, {.158, .223, .272, .350, .412, .490, .678, .750, .812, .917, 1.000}},
};

} // namespace

TEST(BallDepthTable, AllSeventyThreeChordsMatchThePrint) {
  std::size_t compared = 0;
  for (const Row &row : kTable)
    for (std::size_t i = 0; i < row.chord_in.size(); ++i, ++compared)
      EXPECT_NEAR(ball_stepover_mm(row.diameter_in / 2, kDepth_in[i]), row.chord_in[i], kHalfDigit_in)
          << "diameter " << row.diameter_in << " in, depth " << kDepth_in[i] << " in";
  EXPECT_EQ(compared, 73u);
}

TEST(BallDepthTable, ScallopLawReadsTheTableBackwards) {
  // Printed chords carry half a thousandth of an inch; dh = chord/(4 (r - h)) d(chord) turns it into height.
  for (const Row &row : kTable)
    for (std::size_t i = 0; i < row.chord_in.size(); ++i) {
      const double r = row.diameter_in / 2, h = kDepth_in[i];
      if (h > 0.8 * r)
        continue; // near the equator the chord says little about the height
      const double height_from_chord = row.chord_in[i] / (4 * (r - h)) * kHalfDigit_in;
      EXPECT_NEAR(ball_scallop_mm(r, row.chord_in[i]), h, 1.1 * height_from_chord);
    }
}
