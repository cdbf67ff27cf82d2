// Single witness lines on a drawn wall: depth, width, place, levels, weight.
#include "rim_scene.h"

#include "asperity/cut/scallop.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

constexpr double kSpacing_mm = 0.1;

double circle_groove(double x, double depth) {
  const double r = 0.5 * kCutterDiameter_mm;
  return std::abs(x) < r ? std::min(0.0, -depth + r - std::sqrt(r * r - x * x)) : 0.0;
}

double arc_length(double degrees) { return rad_from_deg(degrees) * 0.5 * kRimDiameter_mm; }

/// Steady wall error 12 um with a groove of `depth` at `degrees` over z low..high.
Scene grooved(double degrees, double depth, double low, double high) {
  const double length = kPi * kRimDiameter_mm;
  return wall_scene(rim_wall(), kSpacing_mm, [=](double s, double z) {
    const double x = std::remainder(s - arc_length(degrees), length);
    return 0.012 + (z > low && z < high ? circle_groove(x, depth) : 0.0);
  });
}

TEST(WitnessLine, AGrooveOverTheWholeWallIsOneLine) {
  const double depth = 0.008;
  const FoundList found = find_witness_lines(grooved(75, depth, -1, 15).evidence());
  ASSERT_EQ(found.size(), 1u);
  const Finding &line = found[0].finding;
  EXPECT_EQ(line.kind, FindingKind::witness_line);
  EXPECT_EQ(line.feature, 0);
  EXPECT_EQ(line.size[0].unit, "um");
  EXPECT_NEAR(quantity(line, "depth"), 8.0, 0.01);
  const double width = witness_width_mm(kCutterDiameter_mm, depth);
  EXPECT_NEAR(quantity(line, "width"), width, 0.015 * width + 2 * kSpacing_mm);
  EXPECT_NEAR(quantity(line, "width of a standing cutter's groove"), width, 1e-3);
  EXPECT_LT(degrees_apart(quantity(line, "angle"), 75), 0.2) << "a column is 0.18 degrees";
  const Vec2 place = Vec2(10, 20) + 31.0 * Vec2(std::cos(rad_from_deg(75)), std::sin(rad_from_deg(75)));
  EXPECT_LT(glm::length(plan(line.place_mm) - place), 2 * kSpacing_mm);
  EXPECT_NE(line.where.find("z 0.00 to 14.00 mm"), std::string::npos) << line.where;
  EXPECT_FALSE(line.cause.empty());
  EXPECT_FALSE(line.remedy.empty());
}

TEST(WitnessLine, ALineAcrossTheSeamIsOneLineAtZeroDegrees) {
  const FoundList found = find_witness_lines(grooved(0, 0.010, -1, 15).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_LT(degrees_apart(quantity(found[0].finding, "angle"), 0), 0.2);
}

TEST(WitnessLine, ALineOnPartOfTheHeightSaysWhere) {
  const FoundList found = find_witness_lines(grooved(200, 0.006, 4, 9).evidence());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].finding.where.find("z 4.00 to 9.00 mm"), std::string::npos) << found[0].finding.where;
}

TEST(WitnessLine, ASmoothWallHasNone) {
  EXPECT_TRUE(
      find_witness_lines(
          wall_scene(rim_wall(), kSpacing_mm, [](double, double z) { return 0.012 + 0.001 * z; }).evidence())
          .empty());
  EXPECT_TRUE(find_witness_lines(
                  wall_scene(rim_wall(), kSpacing_mm, [](double, double) { return std::nan(""); }).evidence())
                  .empty())
      << "nothing is cut";
}

TEST(WitnessLine, ALipAtTheBaseIsNoLine) {
  const double third = kPi * kRimDiameter_mm / 3;
  const FoundList found = find_witness_lines(
      wall_scene(rim_wall(), kSpacing_mm, [&](double s, double z) {
        return z < 0.6 && s < third ? std::nan("") : z < 0.6 && s > 2 * third ? 0.3 : 0.012;
      }).evidence());
  EXPECT_TRUE(found.empty());
}

TEST(WitnessLine, TheWeightFollowsTheFinishWanted) {
  Scene scene = grooved(75, 0.008, -1, 15);
  EXPECT_EQ(find_witness_lines(scene.evidence())[0].finding.weight, Weight::note) << "nothing is wanted";
  auto &finish = std::get<WallFeature>(scene.job.features[0]).finish;
  finish.witness_depth_um = 5;
  EXPECT_EQ(find_witness_lines(scene.evidence())[0].finding.weight, Weight::flaw);
  EXPECT_NEAR(find_witness_lines(scene.evidence())[0].excess, 8.0 / 5.0, 0.01);
  finish.witness_depth_um = 10;
  EXPECT_EQ(find_witness_lines(scene.evidence())[0].finding.weight, Weight::note);
}

TEST(WitnessLine, ItRestsOnForceCoefficientsUntilCalibrated) {
  Scene scene = grooved(75, 0.008, -1, 15);
  EXPECT_NE(find_witness_lines(scene.evidence())[0].finding.rests_on.find("PETG"), std::string::npos);
  scene.job.material.calibrated = true;
  EXPECT_EQ(find_witness_lines(scene.evidence())[0].finding.rests_on, "");
}

/// Three levels, tips at z 9, 4 and -0.2, each plunging at 75 degrees; each plunge owns the groove above its
/// tip.
TEST(WitnessLine, PlungesOfSeveralLevelsAtOnePlaceAreOneLineWithItsCauseAndLines) {
  Scene scene = grooved(75, 0.008, -1, 15);
  const Vec2 out(std::cos(rad_from_deg(75)), std::sin(rad_from_deg(75)));
  const Vec2 stand = Vec2(10, 20) + (31.0 + 3.0) * out;
  const double tips[] = {9.0, 4.0, -0.2};
  for (int level = 0; level < 3; ++level) {
    const double from = level == 0 ? 15.0 : tips[level - 1];
    scene.path.pieces.push_back(
        feed_piece(Curve::line({stand.x, stand.y, from}, {stand.x, stand.y, tips[level]}),
                   static_cast<std::uint32_t>(20 + 2 * level)));
    const Vec3 begin(stand.x, stand.y, tips[level]);
    scene.path.pieces.push_back(feed_piece(Curve::plan_arc(begin, begin, {10, 20}, -2 * kPi),
                                           static_cast<std::uint32_t>(21 + 2 * level)));
  }
  WallChart &chart = scene.wall();
  for (std::size_t j = 0; j < chart.rows(); ++j)
    for (std::size_t i = 0; i < chart.columns(); ++i) {
      const int level = chart.z_mm[j] > 9 ? 0 : chart.z_mm[j] > 4 ? 1 : 2;
      const bool in_groove = chart.envelope_mm[chart.at(i, j)] < 0.0119f;
      chart.owner[chart.at(i, j)] = static_cast<std::uint32_t>(2 * level + (in_groove ? 0 : 1));
    }
  const FoundList found = find_witness_lines(scene.evidence());
  ASSERT_EQ(found.size(), 1u);
  const Finding &line = found[0].finding;
  EXPECT_EQ(quantity(line, "levels"), 3.0);
  EXPECT_EQ(line.lines, (std::vector<std::uint32_t>{20, 22, 24}));
  EXPECT_EQ(line.line_count, 3u);
  EXPECT_NE(line.cause.find("plunge"), std::string::npos) << line.cause;
  EXPECT_NE(line.remedy.find("ramp"), std::string::npos) << line.remedy;
}

} // namespace
} // namespace asperity::test
