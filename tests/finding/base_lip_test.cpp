// The base lip's height to the micrometre, from a hand-made path swept over the sheave's rim.
#include "rim_scene.h"

#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

/// What a lip is asked to be good for; the probe narrows to 0.1 um.
constexpr double kMicrometre_mm = 0.001;
constexpr double kSpacing_mm = 0.1;
constexpr int kParts = 72; ///< pieces a turn is swept in, as the walk along a path makes them

/// The rim with the cutter running round it at the given tip heights, over `sweep_rad` from 0 degrees; the
/// lower the later. Lines 11, 12, ...
Scene cut_rim(const Cutter &cutter, const std::vector<double> &tips, double sweep_rad = -2 * kPi) {
  Scene scene = wall_scene(rim_wall(), kSpacing_mm, [](double, double) { return std::nan(""); });
  scene.job.cutters = {cutter};
  scene.cut.swept.cutters = {{cutter.profile(), cutter.flute_length_mm, {0, 4, 8, 12, 16, 20}}};
  for (std::size_t k = 0; k < tips.size(); ++k) {
    const double r = 0.5 * (kRimDiameter_mm + cutter.diameter_mm);
    const Vec3 begin(10 + r, 20, tips[k]);
    const Vec3 end(10 + r * std::cos(sweep_rad), 20 + r * std::sin(sweep_rad), tips[k]);
    const Curve curve = Curve::plan_arc(begin, end, {10, 20}, sweep_rad);
    scene.path.pieces.push_back(feed_piece(curve, static_cast<std::uint32_t>(11 + k)));
    for (int part = 0; part < kParts; ++part)
      scene.cut.swept.add({curve, {}, {}, static_cast<std::uint32_t>(k), 0, part > 0}, double(part) / kParts,
                          double(part + 1) / kParts);
  }
  sweep_wall(scene.wall(), scene.cut.swept, 0, Progress{});
  return scene;
}

Cutter corner_cutter(double corner_mm) {
  Cutter cutter = flat_cutter();
  cutter.kind = CutterKind::corner_radius;
  cutter.corner_radius_mm = corner_mm;
  return cutter;
}

TEST(BaseLip, HeightIsThatOfTheDeepestPassWhateverTheRows) {
  for (const double tip : {0.6, 0.637, 0.25, 1.9999}) {
    const FoundList found = find_base_lips(cut_rim(flat_cutter(), {6, tip}).evidence());
    ASSERT_EQ(found.size(), 1u) << tip;
    const Finding &lip = found[0].finding;
    EXPECT_EQ(lip.kind, FindingKind::base_lip);
    EXPECT_EQ(lip.size[0].unit, "mm");
    EXPECT_NEAR(quantity(lip, "height"), tip, kMicrometre_mm) << tip;
    EXPECT_NEAR(quantity(lip, "stands out"), kStock_mm, 1e-5) << tip;
    EXPECT_NEAR(quantity(lip, "share of the outline"), 100.0, 1e-9) << tip;
    EXPECT_EQ(lip.lines, std::vector<std::uint32_t>{12}) << "the pass that made the wall just above";
    EXPECT_EQ(lip.weight, Weight::flaw);
    EXPECT_EQ(lip.rests_on, "");
  }
}

TEST(BaseLip, ALipLowerThanARowIsStillFound) {
  const FoundList found = find_base_lips(cut_rim(flat_cutter(), {6, 0.020}).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 0.020, kMicrometre_mm);
  EXPECT_NEAR(quantity(found[0].finding, "stands out"), kStock_mm, 1e-5);
  EXPECT_GT(quantity(found[0].finding, "share of the outline"), 99.9);
  EXPECT_EQ(found[0].finding.weight, Weight::note) << "below the 0.05 mm that nobody minds";
}

TEST(BaseLip, ATipBelowTheBaseLeavesNone) {
  EXPECT_TRUE(find_base_lips(cut_rim(flat_cutter(), {6, -0.1}).evidence()).empty());
  EXPECT_TRUE(find_base_lips(cut_rim(flat_cutter(), {6, 0.0}).evidence()).empty()) << "exactly at the base";
}

TEST(BaseLip, APartOfTheWayRoundIsGivenAsShareAndAngles) {
  Scene scene = cut_rim(flat_cutter(), {0.6});
  // A second, lower pass over 270 degrees, clockwise from 0.
  const Scene lower = cut_rim(flat_cutter(), {-0.2}, -1.5 * kPi);
  scene.path.pieces.push_back(lower.path.pieces[0]);
  for (const SweptPiece &piece : lower.cut.swept.pieces) {
    scene.cut.swept.add(lower.cut.swept.bent(piece));
    scene.cut.swept.pieces.back().owner = 1;
  }
  sweep_wall(scene.wall(), scene.cut.swept, 0, Progress{});
  const FoundList found = find_base_lips(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 0.6, kMicrometre_mm);
  // The cutter's round end reaches sqrt(2 R e ...) past the ends of the arc, about 1.8 mm for 0.5 mm of
  // stock.
  EXPECT_NEAR(quantity(found[0].finding, "share of the outline"), 25.0, 3.0);
  EXPECT_NE(found[0].finding.where.find("deg"), std::string::npos) << found[0].finding.where;
  const double angle =
      deg_from_rad(std::atan2(found[0].finding.place_mm.y - 20, found[0].finding.place_mm.x - 10));
  EXPECT_GT(angle, -1.0);
  EXPECT_LT(angle, 91.0);
}

TEST(BaseLip, ACornerRadiusLeavesAFilletOfItsOwnHeight) {
  const FoundList found = find_base_lips(cut_rim(corner_cutter(1.0), {6, 0.0}).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 1.0, kMicrometre_mm);
  EXPECT_NE(found[0].finding.cause.find("rounded corner"), std::string::npos) << found[0].finding.cause;
  EXPECT_EQ(found[0].finding.cause.find("deepest pass ends"), std::string::npos) << found[0].finding.cause;
}

TEST(BaseLip, AFilletAboveAnUnreachedBaseCountsBoth) {
  const FoundList found = find_base_lips(cut_rim(corner_cutter(0.5), {6, 0.3}).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 0.8, kMicrometre_mm);
  EXPECT_NE(found[0].finding.cause.find("0.300 mm above the base"), std::string::npos)
      << found[0].finding.cause;
  EXPECT_NE(found[0].finding.cause.find("rounded corner"), std::string::npos) << found[0].finding.cause;
}

TEST(BaseLip, WithoutAPathTheRowsDecide) {
  const double nan = std::nan("");
  const FoundList found = find_base_lips(
      wall_scene(rim_wall(), kSpacing_mm, [&](double, double z) { return z < 0.6 ? nan : 0.01; }).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(quantity(found[0].finding, "height"), 0.6, 1e-9) << "the rows meet at 0.6 here";
  EXPECT_NEAR(quantity(found[0].finding, "stands out"), kStock_mm - 0.01, 1e-7);
}

TEST(BaseLip, AWallLeaningByBendingOrByATaperIsNoLip) {
  EXPECT_TRUE(
      find_base_lips(wall_scene(rim_wall(), kSpacing_mm, [](double, double z) { return 0.02 * std::exp(-z); })
                         .evidence())
          .empty());
  EXPECT_TRUE(
      find_base_lips(
          wall_scene(rim_wall(), kSpacing_mm, [](double, double z) { return 0.4 * (1 - z / 14); }).evidence())
          .empty());
}

TEST(BaseLip, WhereTheBlankHasNoStockNoLipStands) {
  Scene scene = cut_rim(flat_cutter(), {0.6});
  for (std::size_t cell = 0; cell < scene.wall().columns() * 6; ++cell)
    scene.wall().blank_mm[cell] = -0.02f;
  EXPECT_TRUE(find_base_lips(scene.evidence()).empty());
}

} // namespace
} // namespace asperity::test
