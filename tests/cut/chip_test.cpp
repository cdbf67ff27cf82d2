// Chip load, chip thickness, rubbing and wall cusps.
#include "asperity/cut/chip.h"

#include "asperity/cut/force.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

namespace {
constexpr double kRounding = 1e-12;
}

TEST(Chip, FeedPerToothIsFeedOverTeethPassing) {
  // Definition: 1200 mm/min at 12000 rev/min with two flutes is 0.05 mm.
  EXPECT_NEAR(feed_per_tooth_mm(1200.0 / 60, 12000, 2), 0.05, kRounding);
}

TEST(Chip, StandingSpindleGivesNoFeedPerTooth) { EXPECT_EQ(feed_per_tooth_mm(20, 0, 2), 0.0); }

TEST(Chip, LightCutThinsTheChip) {
  // Worked number: 0.03 mm a tooth, 0.1 mm radial, D 6: 7.7 um (2 fz sqrt(ae/D), valid for ae << D; the exact
  // form prints the same two digits).
  EXPECT_NEAR(1e3 * thickest_chip_mm(0.03, 0.1, 3), 7.7, 0.05);
  EXPECT_NEAR(1e3 * 2 * 0.03 * std::sqrt(0.1 / 6), 7.7, 0.05);
}

TEST(Chip, HalfImmersionAndMoreGiveTheWholeFeed) {
  EXPECT_NEAR(thickest_chip_mm(0.03, 3, 3), 0.03, kRounding);
  EXPECT_NEAR(thickest_chip_mm(0.03, 5, 3), 0.03, kRounding);
}

TEST(Chip, ThickestChipIsFeedTimesSineOfTheArc) {
  // Plane geometry: f sin(acos(1 - ae/r)).
  for (const double depth : {0.01, 0.4, 1.5, 2.9})
    EXPECT_NEAR(thickest_chip_mm(0.05, depth, 3),
                0.05 * std::sin(conventional_immersion(depth, 3).span_rad()), kRounding);
}

TEST(Chip, MeanChipFollowsTextbookQuotient) {
  // f (cos entry - cos exit)/(exit - entry); over a slot 2 f/pi.
  EXPECT_NEAR(mean_chip_mm(0.05, 0.3, 1.9), 0.05 * (std::cos(0.3) - std::cos(1.9)) / 1.6, kRounding);
  EXPECT_NEAR(mean_chip_mm(0.05, 0, std::acos(-1.0)), 0.05 * 2 / std::acos(-1.0), kRounding);
}

TEST(Chip, MeanChipOfLightCutIsFeedTimesRootOfShare) {
  // Textbook: h_m ~ f sqrt(ae/D) for ae << D; at ae/D = 1/1000 the next term is below 0.1 %.
  const Immersion arc = climb_immersion(0.006, 3);
  const double thin = 0.05 * std::sqrt(0.001);
  EXPECT_NEAR(mean_chip_mm(0.05, arc.entry_rad, arc.exit_rad), thin, 1e-3 * thin);
}

TEST(Chip, VanishingArcGivesTheChipThere) {
  EXPECT_NEAR(mean_chip_mm(0.05, 0.7, 0.7), 0.05 * std::sin(0.7), kRounding);
}

TEST(Chip, LeastChipIsThreeTenthsOfEdgeRadius) {
  // Worked numbers: new edges 3-10 um rub below 1-3 um, worn ones 20-40 um below 6-12 um, with lambda 0.3
  // from the 0.14-0.43 of micro-cutting studies (Cheng et al. 2018).
  EXPECT_NEAR(1e3 * least_chip_mm(3), 0.9, kRounding);
  EXPECT_NEAR(1e3 * least_chip_mm(20), 6, kRounding);
  EXPECT_NEAR(1e3 * least_chip_mm(40), 12, kRounding);
}

TEST(Cusp, SideMillMatchesWorkedNumbers) {
  // Worked numbers, circle form, R 3: pitch 0.05 -> 0.104168 um, 0.5 -> 10.434814 um. Catalogue form f^2/(4D)
  // agrees to three digits.
  EXPECT_NEAR(1e3 * cusp_height_mm(0.05, 3), 0.104168, 5e-7);
  EXPECT_NEAR(1e3 * cusp_height_mm(0.5, 3), 10.434814, 5e-7);
  EXPECT_NEAR(1e3 * cusp_height_mm(0.05, 3), 1e3 * 0.05 * 0.05 / (4 * 6), 1e-4);
}
