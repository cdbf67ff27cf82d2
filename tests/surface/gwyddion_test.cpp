// Height parameters beside a second implementation: the line functions of libgwyddion 2.
#include "asperity/surface/profile_parameters.h"

#include "surface/profile_shapes.h"

// Before the library, whose header turns gettext into a macro.
#include <libintl.h>

#include <libprocess/gwyprocess.h>

#include <gtest/gtest.h>

#include <random>

using namespace asperity;

namespace {

/// Both sum the same samples in double precision; the library's order of adding differs.
constexpr double kSameSum = 1e-9;
/// Its third and fourth moments take n - 1 where ours take n: 1 / n apart, here 3e-4 at most.
constexpr double kDivisor = 1e-3;

void expect_agreement(const std::vector<double> &heights) {
  GwyDataLine *line = gwy_data_line_new(static_cast<gint>(heights.size()), 1.0, FALSE);
  std::copy(heights.begin(), heights.end(), gwy_data_line_get_data(line));
  const ProfileParameters p = profile_parameters(about_mean(heights), 0.001);
  EXPECT_NEAR(p.ra_mm, gwy_data_line_get_ra(line), kSameSum * p.ra_mm);
  EXPECT_NEAR(p.rq_mm, gwy_data_line_get_rms(line), kSameSum * p.rq_mm);
  EXPECT_NEAR(p.rsk, gwy_data_line_get_skew(line), kDivisor * (1 + std::abs(p.rsk)));
  // The library gives the excess over a Gaussian's 3.
  EXPECT_NEAR(p.rku, gwy_data_line_get_kurtosis(line) + 3, kDivisor * p.rku);
  EXPECT_NEAR(p.rt_mm, gwy_data_line_get_max(line) - gwy_data_line_get_min(line), kSameSum * p.rt_mm);
  g_object_unref(line);
}

} // namespace

TEST(Gwyddion, AgreesOnPeriodicProfiles) {
  for (const Shape &shape : {sine(1), triangle(1), sawtooth(2), pulse(1, 0.1), parabolic_cusp(1),
                             parabolic_cusp(-3), rectified_sine(1), arc_cusp(1.5)})
    expect_agreement(sampled(shape, 200, 40));
}

TEST(Gwyddion, AgreesOnRandomProfiles) {
  std::mt19937 random(11);
  std::exponential_distribution<double> height(0.7);
  for (int profile = 0; profile < 5; ++profile) {
    std::vector<double> heights;
    for (int i = 0; i < 3000; ++i)
      heights.push_back(height(random));
    expect_agreement(heights);
  }
}

int main(int argc, char **argv) {
  testing::InitGoogleTest(&argc, argv);
  gwy_process_type_init();
  return RUN_ALL_TESTS();
}
