// Parabolic cusps after the Gaussian filter: series and sampled filter against a table derived from the
// cusp's Fourier series and ISO 16610-21's transmission, and computed with NumPy.
#include "asperity/surface/kinematic.h"
#include "asperity/surface/stylus_reading.h"

#include "surface/profile_shapes.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {

struct Row {
  double ratio, ra, rq, rz, rsk; ///< ratio: pitch over cutoff
};
constexpr Row kTable[] = {
    {0.25, 0.25660, 0.29814, 1.000, 0.639},     {0.3125, 0.256393, 0.297915, 0.9993, 0.639},
    {0.4, 0.253311, 0.294525, 0.9893, 0.648},   {0.5, 0.240982, 0.280969, 0.9493, 0.684},
    {0.625, 0.214404, 0.251770, 0.8625, 0.775}, {0.8, 0.172942, 0.206295, 0.7255, 0.963},
    {1.0, 0.133678, 0.163302, 0.5945, 1.207},   {1.25, 0.098957, 0.125191, 0.4782, 1.497},
    {2.0, 0.047841, 0.067574, 0.2990, 2.203},
};
constexpr double kSeries = 2e-6;    // Ra, Rq printed to six places
constexpr double kPrintedRz = 3e-4; // Rz printed to +- 2e-4
constexpr double kPrintedRsk = 1e-3;
constexpr double kFilter = 1e-3;   // the filter's own share, relative: 0.1 %
constexpr double kFilterRz = 2e-3; // half a sample off the peak costs 2 / 2000, the print 2e-4

} // namespace

TEST(FilteredCusp, SeriesMatchesTheTable) {
  for (const Row &row : kTable) {
    const FilteredCusp cusp = filtered_cusp(row.ratio);
    const double printed = row.ratio == 0.25 ? 1e-5 : kSeries;
    EXPECT_NEAR(cusp.ra, row.ra, printed) << row.ratio;
    EXPECT_NEAR(cusp.rq, row.rq, printed) << row.ratio;
    EXPECT_NEAR(cusp.rz, row.rz, kPrintedRz) << row.ratio;
    EXPECT_NEAR(cusp.rsk, row.rsk, kPrintedRsk) << row.ratio;
  }
}

TEST(FilteredCusp, SampledCuspsThroughTheFilterMatchTheTable) {
  for (const Row &row : kTable) {
    const auto heights = sampled(parabolic_cusp(1), 2000, 5);
    const GaussianFilter filter(1.0 / row.ratio, 0.0005);
    const auto p = profile_parameters(filter.roughness(heights, ProfileEnds::closed), 0.0005);
    EXPECT_NEAR(p.ra_mm, row.ra, kFilter * row.ra) << row.ratio;
    EXPECT_NEAR(p.rq_mm, row.rq, kFilter * row.rq) << row.ratio;
    EXPECT_NEAR(p.rz_mm, row.rz, kFilterRz) << row.ratio;
    EXPECT_NEAR(p.rsk, row.rsk, 2 * kPrintedRsk) << row.ratio;
  }
}

TEST(FilteredCusp, LimitsAreTheBareCuspAndNothing) {
  EXPECT_NEAR(filtered_cusp(0.01).ra, cusp_ra_mm(1), 1e-6);
  EXPECT_NEAR(filtered_cusp(0.01).rz, 1, 1e-12);
  EXPECT_LT(filtered_cusp(50).ra, 1e-3);
  EXPECT_GT(filtered_cusp(1e9).ra, 0);
}

TEST(FilteredCusp, BallOfTenAtHalfAMillimetreReadsByItsCutoff) {
  // Cusp 6.2539 um, Ra 1.6048 um as cut; 1.6048 with a cutoff of 2.5, 1.3409 with 0.8: by the table.
  constexpr double kReading_um = 1.6e-3; // 0.1 %
  const double cusp_mm = arc_cusp_mm(5, 0.5);
  EXPECT_NEAR(um_from_mm(cusp_mm), 6.2539, 5e-5);
  const auto heights =
      sampled([&](double u) { return arc_cusp_mm(5, 2 * 0.5 * std::abs(u - 0.5)); }, 1000, 40);
  const auto reading = [&](const MeasuringSettings &settings) {
    const auto result = read_profile(heights, 0.0005, ProfileEnds::open, settings);
    EXPECT_FALSE(result.fit.too_short());
    EXPECT_EQ(result.parameters.sections, 5);
    return um_from_mm(result.parameters.ra_mm);
  };
  EXPECT_NEAR(reading(settings_of(SettingClass::sc4)), 1.6048, kReading_um);
  EXPECT_NEAR(reading(settings_of(SettingClass::sc3)), 1.3409, kReading_um);
}
