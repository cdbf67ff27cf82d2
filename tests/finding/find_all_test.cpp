// All finders together: order, and nothing from nothing.
#include "rim_scene.h"

#include <gtest/gtest.h>

#include <set>

namespace asperity::test {
namespace {

double circle_groove(double x, double depth) {
  const double r = 0.5 * kCutterDiameter_mm;
  return std::abs(x) < r ? std::min(0.0, -depth + r - std::sqrt(r * r - x * x)) : 0.0;
}

TEST(FindAll, NothingIsFoundWhereNothingIsWrong) {
  const Scene scene = wall_scene(rim_wall(), 0.1, [](double, double z) { return 0.01 - 0.0002 * z; });
  EXPECT_TRUE(find_all(scene.evidence()).empty());
  const Scene empty;
  EXPECT_TRUE(find_all(empty.evidence()).empty());
}

TEST(FindAll, DangersComeFirstThenTheLargestExcess) {
  WallFeature wall = rim_wall();
  wall.finish.lip_mm = 0.1;
  wall.finish.witness_depth_um = 5;
  Scene scene = wall_scene(wall, 0.1, [](double s, double z) {
    return z < 0.6 ? std::nan("") : 0.01 + circle_groove(s - 40, 0.008) + circle_groove(s - 90, 0.002);
  });
  scene.job.holding.spoilboard_top_z_mm = 0;
  scene.path.pieces = {feed_piece(Curve::line({0, 0, 5}, {0, 0, -1}), 9)};
  const std::vector<Finding> findings = find_all(scene.evidence());
  ASSERT_EQ(findings.size(), 4u);
  EXPECT_EQ(findings[0].kind, FindingKind::spoilboard_cut);
  EXPECT_EQ(findings[1].kind, FindingKind::base_lip) << "six times what is allowed";
  EXPECT_EQ(findings[2].kind, FindingKind::witness_line) << "1.6 times";
  EXPECT_EQ(findings[2].weight, Weight::flaw);
  EXPECT_EQ(findings[3].kind, FindingKind::witness_line);
  EXPECT_EQ(findings[3].weight, Weight::note);
  for (const Finding &finding : findings) {
    EXPECT_FALSE(finding.where.empty());
    EXPECT_FALSE(finding.cause.empty());
    EXPECT_FALSE(finding.remedy.empty());
    EXPECT_FALSE(finding.size.empty());
  }
}

TEST(FindAll, EveryKindHasItsOwnName) {
  std::set<std::string_view> names;
  for (int kind = 0; kind <= static_cast<int>(FindingKind::cutter_overloaded); ++kind)
    names.insert(name_of(static_cast<FindingKind>(kind)));
  EXPECT_EQ(names.size(), 14u);
  EXPECT_EQ(names.count(""), 0u);
}

} // namespace
} // namespace asperity::test
