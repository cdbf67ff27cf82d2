// Heights of floors and domes against formulas.
#include "rim_scene.h"

#include "asperity/finding/measure.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr double kFloat_mm = 1e-7; ///< a float of about 1 mm: half a unit in the last place is 60 nm

TEST(FloorSize, HeightIsMeanAndExtremesOfCutCells) {
  FloorFeature floor;
  floor.z_mm = 4.0;
  floor.measured_from_z_mm = 1.0;
  floor.height = SizeWanted{3.0, 2.99, 3.02};
  FloorChart chart = make_floor_chart({0, 0}, {10, 10}, 0.5, 4.0);
  chart.envelope_mm.assign(chart.envelope_mm.size(), 0.01f);
  chart.blank_mm.assign(chart.blank_mm.size(), 1.0f);
  chart.envelope_mm[3] = 0.03f;
  chart.envelope_mm[5] = std::numeric_limits<float>::infinity();
  chart.blank_mm[7] = -0.5f; // skin, not cut
  chart.wanted_mm[9] = std::numeric_limits<float>::quiet_NaN();
  chart.envelope_mm[9] = -2.0f; // not part of the floor
  const SizeMeasure size = measure_floor(floor, chart).at(0);
  const double cells = static_cast<double>(chart.envelope_mm.size()) - 3.0;
  EXPECT_NEAR(size.mean_mm, 3.01 + 0.02 / cells, kFloat_mm);
  EXPECT_NEAR(size.smallest_mm, 3.01, kFloat_mm);
  EXPECT_NEAR(size.largest_mm, 3.03, kFloat_mm);
  EXPECT_EQ(size.verdict, Verdict::too_large);
}

// Derived: a sphere of radius r + d about the same centre lies d off along the normal everywhere.
TEST(FloorSize, ADomeGrownEvenlyIsOffByThatAlongItsNormal) {
  DomeFeature dome;
  dome.sphere_radius_mm = 20;
  dome.apex_z_mm = 30;
  dome.rim_radius_mm = 12;
  dome.measured_from_z_mm = 10;
  const double d = 0.02, r = dome.sphere_radius_mm;
  FloorChart chart = make_floor_chart({-12, -12}, {12, 12}, 0.1, dome.apex_z_mm);
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      const double rho2 = chart.x_mm(i) * chart.x_mm(i) + chart.y_mm(j) * chart.y_mm(j);
      const std::size_t cell = chart.at(i, j);
      const double wanted = rho2 > 144 ? std::nan("") : std::sqrt(r * r - rho2) - r;
      chart.wanted_mm[cell] = static_cast<float>(wanted);
      chart.envelope_mm[cell] = static_cast<float>(std::sqrt((r + d) * (r + d) - rho2) - r - wanted);
      chart.blank_mm[cell] = 1.0f;
    }
  const auto sizes = measure_dome(dome, chart);
  ASSERT_EQ(sizes.size(), 2u);
  // The highest cells stand half a cell diagonal from the apex, (0.05^2 + 0.05^2)/(2 r) lower; floats near
  // -0.02.
  EXPECT_NEAR(sizes[0].mean_mm, 20.02 - 0.005 / (2 * r), 4e-7);
  // e cos(slope) is d to first order; second order d^2 tan^2/(2 r) = 6 nm. At the rim slopes are one-sided:
  // about 960 of 45000 cells are up to 0.1 um of 0.02 mm per 0.05 mm cell half off, 2 um in the mean at most.
  EXPECT_NEAR(sizes[1].mean_mm, d, 2e-6);
  EXPECT_NEAR(sizes[1].largest_mm, d, 2e-4);
  EXPECT_NEAR(sizes[1].smallest_mm, d, 2e-4);
}

} // namespace
} // namespace asperity::test
