// The base lip's cause and cure in words, with the spoilboard respected.
#include "../../src/finding/base_lip.h"
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

bool says(const std::string &text, const std::string &part) { return text.find(part) != std::string::npos; }

BaseLip lip_of(double height, double unreached, double corner) {
  BaseLip lip;
  lip.height_mm = height;
  lip.unreached_mm = unreached;
  lip.cutter_corner_mm = corner;
  lip.deepest_tip_z_mm = unreached;
  return lip;
}

TEST(BaseLipWords, TheCauseNamesTheHeightLeft) {
  EXPECT_EQ(lip_cause(lip_of(0.6, 0.6, 0)), "The deepest pass ends 0.600 mm above the base.");
}

TEST(BaseLipWords, TheCureNamesTheProgramHeight) {
  Job job;
  job.setup.program_zero_mm.z = 14.0; // zero on top of the part
  const std::string cure = lip_remedy(job, rim_wall(), lip_of(0.6, 0.6, 0));
  EXPECT_TRUE(says(cure, "program Z -14.10 mm")) << cure;
  EXPECT_TRUE(says(cure, "by 0.70 mm")) << cure;
  EXPECT_FALSE(says(cure, "spoilboard")) << cure;
}

TEST(BaseLipWords, TheCureRespectsTheSpoilboard) {
  Job job;
  job.holding.spoilboard_top_z_mm = 0.0;
  job.holding.spoilboard_cut_allowed_mm = 0.3;
  EXPECT_TRUE(says(lip_remedy(job, rim_wall(), lip_of(0.6, 0.6, 0)),
                   "0.10 mm into the spoilboard (0.30 mm allowed)"));
  EXPECT_TRUE(
      says(lip_remedy(job, rim_wall(), lip_of(1.1, 0.6, 0.5)), "would cut 0.60 mm into the spoilboard"));
  job.holding.spoilboard_top_z_mm = -2.0;
  EXPECT_TRUE(says(lip_remedy(job, rim_wall(), lip_of(0.6, 0.6, 0)), "above the spoilboard"));
}

TEST(BaseLipWords, AWallOnAFloorIsNotCutThroughTheFloor) {
  Job job;
  FloorFeature floor;
  floor.z_mm = 0;
  job.features = {rim_wall(), floor};
  EXPECT_TRUE(says(lip_remedy(job, rim_wall(), lip_of(0.6, 0.6, 0)), "down to the floor"));
  EXPECT_TRUE(says(lip_remedy(job, rim_wall(), lip_of(0.5, 0.0, 0.5)), "sharp-cornered"));
}

} // namespace
} // namespace asperity::test
