// Strips: one scale for all, a seam that splits no finding.
#include "asperity/sheet/strip_picture.h"

#include "asperity/base/units.h"
#include "asperity/picture/colour_map.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace asperity {
namespace {

TEST(Strip, TheRangeHoldsTheValuesOfAllPlans) {
  const std::vector<float> small(100, 3.0f), large(100, -22.0f);
  EXPECT_DOUBLE_EQ(common_range_um(std::array{small, large}), 30.0);
  EXPECT_DOUBLE_EQ(common_range_um(std::array{small}), 3.0);
  EXPECT_DOUBLE_EQ(common_range_um(std::array{std::vector<float>{}}), 1.0);
}

TEST(Strip, AFewFarValuesDoNotStretchTheScale) {
  std::vector<float> values(1000, 2.0f);
  values[7] = 900.0f;
  EXPECT_DOUBLE_EQ(common_range_um(std::array{values}), 2.0);
}

TEST(Strip, TheWallIsCutOpenAwayFromItsFindings) {
  const Outcome outcome = test_support::rim_outcome(); // its witness line stands at s = 0
  const std::array all{&outcome};
  const double seam = common_seam_mm(outcome.charts[0], "rim", all);
  const double length = 62.0 * kPi;
  EXPECT_GT(std::min(seam, length - seam), length / 8.0);
}

TEST(Strip, ColoursFollowTheValuesAndUncutIsStriped) {
  const Outcome outcome = test_support::rim_outcome();
  std::vector<float> values = cut_residual_um(outcome.charts[0]);
  const auto &wall = std::get<WallChart>(outcome.charts[0]);
  for (float &value : values)
    value = std::isnan(value) ? value : 10.0f;
  const Strip strip = strip_picture(outcome.charts[0], values, 10.0, 0.0, 500);
  EXPECT_EQ(strip.image.width, 500);
  EXPECT_EQ(strip.image.at(250, 2), residual_colour(1.0));
  EXPECT_FALSE(strip.image.at(250, strip.image.height - 1) == residual_colour(1.0)); // the lip below
  EXPECT_NEAR(strip.width_mm, wall.outline.length_mm(), 1e-9);
  EXPECT_NEAR(strip.height_mm, 14.0, 1e-9);
}

TEST(Strip, AWallThatIsNowhereCutIsStillDrawn) {
  const Outcome outcome = test_support::rim_outcome();
  const std::vector<float> none(std::get<WallChart>(outcome.charts[0]).envelope_mm.size(),
                                std::numeric_limits<float>::quiet_NaN());
  EXPECT_GT(strip_picture(outcome.charts[0], none, 1.0, 0.0, 400).image.height, 0);
}

} // namespace
} // namespace asperity
