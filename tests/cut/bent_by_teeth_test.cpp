// All nodes at a time against one after the other.
#include "bent_by_teeth.h"

#include "asperity/base/units.h"
#include "cut/force_sets.h"

#include <gtest/gtest.h>

#include <random>

using namespace asperity;

namespace {

const CutterBeam kBeam{25, 12, 4.0, 6.0, 600000};
const Eight kNodes_mm{0.0, 0.75, 1.5, 2.25, 3.0, 4.5, 7.5, 12.0};

/// From the force on every slice at the moment a tooth makes the wall at the node's height.
double bend_mm(const std::vector<ImmersedSlice> &slices, const ToothGeometry &teeth, double node_mm,
               double wall_rad) {
  std::vector<Vec3> forces_N(slices.size());
  force_at_N(kPetgLike, slices, teeth, 0.05, wall_rad + node_mm * std::tan(teeth.helix_rad) / teeth.radius_mm,
             forces_N);
  double bend = 0.0;
  for (std::size_t s = 0; s < slices.size(); ++s)
    bend += forces_N[s].y *
            cutter_compliance_mm_per_N(kBeam, node_mm, 0.5 * (slices[s].z_low_mm + slices[s].z_high_mm));
  return bend;
}

} // namespace

TEST(BentByTeeth, IsWhatTheForcesOfAllSlicesBend) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> angle(0.1, 1.5), thick(0.2, 1.6);
  for (const double helix_deg : {0.0, 10.0, 35.0, -30.0})
    for (const int flutes : {1, 2, 3, 4})
      for (const double wall_rad : {0.0, kPi})
        for (int trial = 0; trial < 20; ++trial) {
          const ToothGeometry teeth{3.0, flutes, rad_from_deg(helix_deg)};
          std::vector<ImmersedSlice> slices;
          for (double low = 0.0; slices.size() < 6; low = slices.back().z_high_mm)
            slices.push_back(
                {low, low + thick(random),
                 wall_rad > 0.0 ? Immersion{kPi - angle(random), kPi} : Immersion{0.0, angle(random)}});
          Eight bend{};
          const ReadySlices ready(slices, teeth);
          const WallTips tips(teeth, kNodes_mm, wall_rad);
          for (std::size_t s = 0; s < slices.size(); ++s) {
            const double middle_mm = 0.5 * (slices[s].z_low_mm + slices[s].z_high_mm);
            tips.add_bend(ready[s], kPetgLike, 0.05, cutter_compliance_mm_per_N(kBeam, kNodes_mm, middle_mm),
                          bend);
          }
          for (std::size_t i = 0; i < kNodes_mm.size(); ++i) {
            const double expected = bend_mm(slices, teeth, kNodes_mm[i], wall_rad);
            EXPECT_NEAR(bend[i], expected, 1e-12 * std::abs(expected) + 1e-15) << helix_deg << " " << flutes;
          }
        }
}

TEST(Compliance, EightHeightsAreTheSameAsOneByOne) {
  for (const double zc_mm : {0.0, 2.0, 11.0, 13.0, 25.0, 26.0}) {
    const Eight cutter = cutter_compliance_mm_per_N(kBeam, kNodes_mm, zc_mm);
    const Eight blank = blank_compliance_mm_per_N(kNodes_mm, zc_mm, 3000.0, 200.0, 2000.0);
    for (std::size_t i = 0; i < kNodes_mm.size(); ++i) {
      EXPECT_EQ(cutter[i], cutter_compliance_mm_per_N(kBeam, kNodes_mm[i], zc_mm));
      EXPECT_EQ(blank[i], blank_compliance_mm_per_N(kNodes_mm[i], zc_mm, 3000.0, 200.0, 2000.0));
    }
  }
}
