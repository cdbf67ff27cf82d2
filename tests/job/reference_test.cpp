// The commented reference job holds every key and is read without a problem.
#include "asperity/job/job.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace asperity {
namespace {

const char *const kReference = ASPERITY_SOURCE_DIR "/scenes/reference.toml";

Job reference_job() {
  Problems problems;
  const auto job = read_job(kReference, problems);
  for (const Problem &each : problems.all())
    ADD_FAILURE() << text_of(each);
  return job.value_or(Job{});
}

TEST(Reference, IsReadWithoutAnyProblemOrDefault) {
  const Job job = reference_job();
  EXPECT_EQ(job.title, "Line sheave, every key explained");
  for (const std::string &each : job.defaults_used)
    ADD_FAILURE() << "left to its default: " << each;
}

TEST(Reference, MachineValuesArriveWhereTheyBelong) {
  const Machine machine = reference_job().machine;
  EXPECT_EQ(machine.acceleration_mm_per_s2, Vec3(400, 400, 200));
  EXPECT_EQ(machine.max_feed_mm_per_min, Vec3(5000, 5000, 1500));
  EXPECT_EQ(machine.backlash_mm, Vec3(0.02, 0.03, 0.01));
  EXPECT_EQ(machine.tram_deg, 0.02);
}

TEST(Reference, CuttersAreFoundByTheirNumber) {
  const Job job = reference_job();
  ASSERT_NE(job.cutter(2), nullptr);
  EXPECT_EQ(job.cutter(2)->kind, CutterKind::corner_radius);
  EXPECT_EQ(job.cutter(2)->corner_radius_mm, 0.3);
  EXPECT_EQ(job.cutter(2)->material, ToolMaterial::hss);
  EXPECT_EQ(job.cutter(2)->length_offset_mm, -4.5);
  EXPECT_EQ(job.cutter(9), nullptr);
}

TEST(Reference, MaterialIsReplacedByTheUsersOwnValues) {
  const Material material = reference_job().material;
  EXPECT_EQ(material.ktc_N_per_mm2, 115);
  EXPECT_EQ(material.source.find("ktc_N_per_mm2")->second, "the job file");
  EXPECT_TRUE(material.calibrated);
  EXPECT_TRUE(material.printed);
}

TEST(Reference, SizesWantedAreNominalMinusToNominalPlus) {
  const Job job = reference_job();
  const auto &rim = std::get<WallFeature>(job.features.at(0));
  ASSERT_TRUE(rim.size[0].has_value());
  EXPECT_DOUBLE_EQ(rim.size[0]->lower_mm, 61.95);
  EXPECT_DOUBLE_EQ(rim.size[0]->upper_mm, 62.05);
  EXPECT_EQ(rim.finish.witness_depth_um, 10.0);
  // nominal left out: the drawn diameter.
  const auto &bush = std::get<WallFeature>(job.features.at(1));
  EXPECT_EQ(bush.side, Side::inside);
  EXPECT_DOUBLE_EQ(bush.size[0]->lower_mm, 10.0);
  EXPECT_DOUBLE_EQ(bush.size[0]->upper_mm, 10.03);
  const auto &window = std::get<WallFeature>(job.features.at(2));
  EXPECT_DOUBLE_EQ(window.size[1]->nominal_mm, 14.0);
}

TEST(Reference, FreeFormSlotHasItsClosedFormAreaAndLength) {
  const Job job = reference_job();
  const auto &slot = std::get<WallFeature>(job.features.at(3));
  EXPECT_EQ(name_of(job.features.at(3)), "keeper slot");
  constexpr double kRounding = 1e-9; // sums of a few doubles
  EXPECT_NEAR(slot.outline.area_mm2(), 8 * 8 + 3.14159265358979 * 16, kRounding);
  EXPECT_NEAR(slot.outline.length_mm(), 2 * 8 + 2 * 3.14159265358979 * 4, kRounding);
}

TEST(Reference, BoltTorqueBecomesClampForce) {
  const HoldDown holding = reference_job().holding;
  // F = T/(K d) [textbook bolt preload, from memory]: 0.8 N m / (0.2 * 5 mm) = 800 N, and 150 N of the clamp.
  ASSERT_TRUE(holding.clamp_force_N.has_value());
  EXPECT_NEAR(*holding.clamp_force_N, 950.0, 1e-9);
  ASSERT_EQ(holding.keep_outs.size(), 2u);
  EXPECT_TRUE(holding.keep_outs[0].is_round);
  EXPECT_EQ(holding.keep_outs[1].size_mm, Vec2(20, 12));
}

TEST(Reference, GrownBlankStandsOutsideItsWallByTheAllowance) {
  const Job job = reference_job();
  constexpr double kRounding = 1e-9;
  EXPECT_NEAR(job.blank.plan_depth_mm({31.6, 0}, 6.0), 0.0, kRounding);
  EXPECT_NEAR(job.blank.wall_stock_mm({31.0, 0}, {1, 0}, 6.0, 5.0), 0.6, 1e-8);
  // The bush hole is printed 0.8 mm too narrow: 0.4 mm stock on its wall, whose normal points into the hole.
  EXPECT_NEAR(job.blank.wall_stock_mm({5.0, 0}, {-1, 0}, 6.0, 5.0), 0.4, 1e-8);
}

} // namespace
} // namespace asperity
