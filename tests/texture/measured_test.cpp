// Published measurements: the geometric floor lies below them, and the band holds them where the source gives
// all that the model needs. Nothing is fitted here.
#include "asperity/base/units.h"
#include "asperity/job/material.h"
#include "asperity/surface/kinematic.h"
#include "asperity/surface/material_band.h"

#include <gtest/gtest.h>

#include <cmath>

using namespace asperity;

TEST(Measured, TurnedPrintedPetgLiesInTheBand) {
  // Materials 2024, 17(17), 4250: printed PETG, nose radius 0.4 mm, 0.0506 mm a revolution: Ra 1.94 um.
  const double floor_um = um_from_mm(rounded_tool_ra_mm(0.4, 0.0506));
  EXPECT_NEAR(floor_um, 0.205, 0.001);
  EXPECT_LT(floor_um, 1.94);
  const Material *petg = find_material("PETG (printed)");
  ASSERT_NE(petg, nullptr);
  const RaBand band = ra_band(floor_um, {petg->own_ra_low_um, petg->own_ra_high_um});
  EXPECT_LT(band.low_um, 1.94);
  EXPECT_GT(band.high_um, 1.94);
}

namespace {

/// Adv. Mater. Sci. Eng. 2021, 3844194, tables 2 and 3: aluminium 6061, cutter 10 mm. Neither the number of
/// teeth nor the corner is given, nor which surface was measured: one tooth that marks is the roughest case.
struct MilledAluminium {
  double feed_per_rev_mm, ra_um;
};
constexpr MilledAluminium kMilledAluminium[] = {{0.05, 2.796}, {0.10, 3.082}, {0.10, 0.384}, {0.05, 0.897},
                                                {0.10, 4.807}, {0.05, 5.354}, {0.05, 1.033}, {0.10, 0.957}};

} // namespace

TEST(Measured, MilledAluminiumLiesAboveTheSideMillingFloor) {
  for (const MilledAluminium &row : kMilledAluminium)
    EXPECT_LT(um_from_mm(cusp_ra_mm(parabola_cusp_mm(5, row.feed_per_rev_mm))), row.ra_um);
}

TEST(Measured, DishedEndsOverstateOneOfEightMilledFloors) {
  // A known limit: sharp corners and a dish of 2 degrees give 0.87 um at 0.1 mm, more than the smoothest
  // carbide run (0.384) if that was a floor. Corners worn or ground flat leave less.
  int overstated = 0;
  for (const MilledAluminium &row : kMilledAluminium)
    overstated += um_from_mm(dish_cusp_mm(row.feed_per_rev_mm, rad_from_deg(2))) / 4 > row.ra_um ? 1 : 0;
  EXPECT_EQ(overstated, 1);
}

TEST(Measured, RoutedAcrylicEdgesLieAboveTheSideMillingFloor) {
  // Trade article on routing acrylic: edges of 1.0 to 1.5 um Rq with a 6.35 mm cutter, 0.46 to 0.64 um
  // with 9.5 mm. It gives no feed; 0.2 mm a revolution is the upper end of usual (from memory).
  EXPECT_LT(um_from_mm(cusp_rq_mm(parabola_cusp_mm(6.35 / 2, 0.2))), 1.0);
  EXPECT_LT(um_from_mm(cusp_rq_mm(parabola_cusp_mm(9.5 / 2, 0.2))), 0.46);
}
