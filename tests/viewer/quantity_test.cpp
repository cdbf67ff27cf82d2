// Numbers of cells: each cell has that of the moment nearest to it on the piece that made it.
#include "asperity/render/cell_quantity.h"
#include "small_outcome.h"

#include <cmath>

using namespace asperity;
using namespace asperity::test_support;

namespace {

const WallChart &wall_of(const Outcome &outcome) { return std::get<WallChart>(outcome.charts[0]); }

} // namespace

TEST(CellQuantity, SpeedIsThatOfTheNearestSampleOfTheMakingPiece) {
  const Outcome &outcome = *bush_result()->outcome;
  const CellQuantity speed = cell_quantity(outcome, Measure::speed);
  const WallChart &wall = wall_of(outcome);
  std::size_t compared = 0;
  for (std::size_t i = 0; i < wall.columns(); i += 37) {
    const std::size_t cell = wall.at(i, 5);
    if (!wall.is_cut(cell))
      continue;
    const Vec3 p(wall.foot[i], wall.z_mm[5]);
    const CutSample *nearest = nullptr; // by looking at all of them
    for (const CutSample &sample : outcome.cut.samples)
      if (sample.piece == wall.owner[cell] &&
          (!nearest || glm::length(sample.position_mm - p) < glm::length(nearest->position_mm - p)))
        nearest = &sample;
    ASSERT_NE(nearest, nullptr);
    EXPECT_FLOAT_EQ(speed.of_feature[0][cell], nearest->speed_mm_per_s * 60.0f);
    ++compared;
  }
  EXPECT_GT(compared, 10u);
}

TEST(CellQuantity, UncutCellsHaveNone) {
  const Outcome &outcome = *bush_result()->outcome;
  const CellQuantity speed = cell_quantity(outcome, Measure::chip_load);
  const auto &top = std::get<FloorChart>(outcome.charts[1]); // the program never cuts it
  for (std::size_t cell = 0; cell < top.envelope_mm.size(); ++cell)
    EXPECT_EQ(std::isnan(speed.of_feature[1][cell]), !top.is_cut(cell));
}

TEST(CellQuantity, ALargerCutterGoesHalfItsErrorDeeper) {
  // Radius plus 50 um at every cut cell [plane geometry]; bending changes by less than a hundredth of it.
  const Outcome &a = *bush_result()->outcome, &b = *bush_with_large_cutter()->outcome;
  const CellQuantity quantity = difference(a, b);
  const WallChart &wall = wall_of(a);
  double sum = 0.0;
  std::size_t count = 0;
  for (std::size_t cell = 0; cell < wall.envelope_mm.size(); ++cell)
    if (!std::isnan(quantity.of_feature[0][cell])) {
      sum += static_cast<double>(quantity.of_feature[0][cell]);
      ++count;
    }
  ASSERT_GT(count, 1000u);
  EXPECT_NEAR(sum / static_cast<double>(count), -50.0, 0.5);
  EXPECT_EQ(quantity.unit, "um");
}

TEST(CellQuantity, RoughnessComesFromItsMap) {
  Outcome outcome = *bush_result()->outcome;
  outcome.roughness.resize(2);
  FeatureRoughness &r = outcome.roughness[0];
  r.map_columns = 2, r.map_rows = 1;
  r.map_ra_um = {1.5f, 2.5f};
  const CellQuantity quantity = cell_quantity(outcome, Measure::roughness);
  const WallChart &wall = wall_of(outcome);
  EXPECT_EQ(quantity.of_feature[0][wall.at(3, 4)], 1.5f);
  EXPECT_EQ(quantity.of_feature[0][wall.at(wall.columns() - 3, 4)], 2.5f);
}
