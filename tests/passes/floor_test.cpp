// Floors: spacing, coverage, islands and edges.
#include "asperity/base/units.h"
#include "passes/planned.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace asperity::test {
namespace {

/// Part-frame plan views of the feed moves at part height z.
std::vector<OutlineElement> cuts_at(const Planned &plan, double z_mm) {
  std::vector<OutlineElement> cuts;
  for (const PassStroke &stroke : plan.plan.route.strokes())
    if (stroke.cuts() && std::abs(stroke.begin.z - z_mm) < 1e-9 && std::abs(stroke.end.z - z_mm) < 1e-9)
      cuts.push_back(stroke.plan_view());
  return cuts;
}

double nearest_mm(const std::vector<OutlineElement> &cuts, Vec2 p) {
  double nearest = 1e9;
  for (const OutlineElement &cut : cuts)
    nearest = std::min(nearest, cut.distance_mm(p));
  return nearest;
}

/// Largest distance of a place of the floor from the cutter's way, islands left out.
double farthest_mm(const std::vector<OutlineElement> &cuts, const FloorFeature &floor, double edge_mm = 0.0) {
  double farthest = 0.0;
  for (int i = 0; i < 160; ++i)
    for (int k = 0; k < 160; ++k) {
      const Vec2 p = floor.outline.low() +
                     (floor.outline.high() - floor.outline.low()) * Vec2((i + 0.5) / 160, (k + 0.5) / 160);
      bool is_floor = floor.outline.depth_mm(p) > edge_mm;
      for (const Outline &island : floor.islands)
        is_floor = is_floor && !island.contains(p);
      if (is_floor)
        farthest = std::max(farthest, nearest_mm(cuts, p));
    }
  return farthest;
}

const FloorFeature &floor_named(const Job &job, std::string_view name) {
  for (const Feature &feature : job.features)
    if (name_of(feature) == name)
      return std::get<FloorFeature>(feature);
  ADD_FAILURE();
  return std::get<FloorFeature>(job.features.front());
}

TEST(Floor, EveryPatternCoversTheFloorWithinTheCuttersRadius) {
  for (const char *keys :
       {"pattern = \"parallel\"\nangle_deg = 30\ndirection = \"both\"", "pattern = \"parallel\"",
        "pattern = \"parallel\"\ndirection = \"conventional\"", "pattern = \"outline_parallel\"",
        "pattern = \"outline_parallel\"\norder = \"outwards\"", "pattern = \"spiral\"",
        "pattern = \"spiral\"\norder = \"outwards\""}) {
    const auto plan = planned(floor_pass("face", std::string(keys) + "\nedge = \"open\"\nstepover_mm = 2.5"));
    const double farthest = farthest_mm(cuts_at(plan, 10.0), floor_named(plan.job, "face"));
    EXPECT_LE(farthest, 3.0) << keys;
    EXPECT_GT(farthest, 1.0) << "no closer than the stepover asks: " << keys;
  }
}

TEST(Floor, LinesRunAtTheirAngleEvenlyNoWiderThanTheStepover) {
  const auto plan = planned(floor_pass(
      "face",
      "pattern = \"parallel\"\nangle_deg = 30\ndirection = \"both\"\nedge = \"open\"\nstepover_mm = 2.6"));
  const Vec2 along{std::cos(kPi / 6), std::sin(kPi / 6)};
  std::vector<double> places;
  int sign = 0;
  for (const OutlineElement &cut : cuts_at(plan, 10.0))
    if (const Vec2 way = cut.end - cut.begin;
        std::abs(cross(along, glm::normalize(way))) < 1e-9 && glm::length(way) > 5) {
      places.push_back(cross(along, cut.begin));
      const int here = glm::dot(way, along) > 0 ? 1 : -1;
      EXPECT_NE(here, sign) << "back and forth";
      sign = here;
    }
  ASSERT_EQ(places.size(), 16u); // 40 / 2.6 = 15.4
  std::sort(places.begin(), places.end());
  for (std::size_t i = 1; i < places.size(); ++i)
    EXPECT_NEAR(places[i] - places[i - 1], 40.0 / 16, 1e-5);
}

TEST(Floor, OneWayClimbHasTheUncutFloorOnTheRight) {
  for (const bool is_climb : {true, false}) {
    const auto plan =
        planned(floor_pass("face", std::string("pattern = \"parallel\"\nedge = \"open\"\nstepover_mm = 2.5\n"
                                               "direction = ") +
                                       (is_climb ? "\"climb\"" : "\"conventional\"")));
    std::vector<double> places;
    for (const OutlineElement &cut : cuts_at(plan, 10.0)) {
      EXPECT_GT(cut.end.x, cut.begin.x) << "all one way";
      places.push_back(cut.begin.y);
    }
    EXPECT_EQ(places.front() > places.back(), is_climb);
  }
}

TEST(Floor, IslandsAreLeftAlone) {
  const auto plan = planned(floor_pass("ring", "pattern = \"parallel\"\nedge = \"open\"\nstepover_mm = 2.0\n"
                                               "island_gap_mm = 0.3\ndirection = \"both\""));
  const auto &ring = floor_named(plan.job, "ring");
  const auto cuts = cuts_at(plan, 10.0);
  double nearest = 1e9;
  for (const OutlineElement &cut : cuts)
    for (int i = 0; i <= 200; ++i)
      nearest = std::min(nearest, -ring.islands[0].depth_mm(cut.point(cut.length_mm() * i / 200)));
  EXPECT_NEAR(nearest, 3.3, 1e-6) << "a lap at exactly radius and gap";
  EXPECT_LE(farthest_mm(cuts, ring), 3.3 + 0.05);
}

TEST(Floor, RingsThatAnIslandInterruptsAreRefused) {
  const Problems problems = problems_of(
      floor_pass("offside", "pattern = \"outline_parallel\"\nedge = \"open\"\nstepover_mm = 2.0"));
  ASSERT_TRUE(problems.has_errors());
  EXPECT_NE(problems.all().back().message.find("would be left standing"), std::string::npos);
  EXPECT_NE(problems.all().back().remedy.find("parallel"), std::string::npos);
}

TEST(Floor, BesideWallsTheCutterStaysInsideByItsRadius) {
  for (const char *keys : {"pattern = \"parallel\"\ndirection = \"both\"", "pattern = \"outline_parallel\"",
                           "pattern = \"outline_parallel\"\norder = \"outwards\""}) {
    const auto plan =
        planned(floor_pass("pocket", std::string(keys) + "\nedge = \"wall\"\nstepover_mm = 2.5"));
    const auto &pocket = floor_named(plan.job, "pocket");
    const auto cuts = cuts_at(plan, 6.0);
    double nearest = 1e9;
    for (const OutlineElement &cut : cuts)
      for (int i = 0; i <= 200; ++i)
        nearest = std::min(nearest, pocket.outline.depth_mm(cut.point(cut.length_mm() * i / 200)));
    EXPECT_NEAR(nearest, 3.0, 1e-6) << keys;
    EXPECT_LE(farthest_mm(cuts, pocket), 3.0 + 1e-6) << keys;
  }
}

TEST(Floor, RingsLieOneStepoverApart) {
  const auto plan = planned(floor_pass(
      "face", "pattern = \"outline_parallel\"\nedge = \"open\"\nstepover_mm = 2.5\npast_edge_mm = 1"));
  std::vector<double> radii;
  for (const OutlineElement &cut : cuts_at(plan, 10.0))
    if (cut.is_arc()) {
      radii.push_back(cut.radius_mm());
      EXPECT_LT(cut.sweep_rad, 0.0) << "inwards and climb: clockwise, uncut floor inside";
    }
  ASSERT_EQ(radii.size(), 9u); // 21, 18.5, ... 1
  for (std::size_t i = 0; i < radii.size(); ++i)
    EXPECT_NEAR(radii[i], 21.0 - 2.5 * static_cast<double>(i), 1e-9);
}

TEST(Floor, SpiralTurnsLieOnePitchApartAndMeetWithoutAKink) {
  const auto plan = planned(floor_pass("face", "pattern = \"spiral\"\nedge = \"open\"\nstepover_mm = 2.6"));
  const auto cuts = cuts_at(plan, 10.0);
  std::vector<OutlineElement> arcs;
  for (const OutlineElement &cut : cuts)
    if (cut.is_arc())
      arcs.push_back(cut);
  for (std::size_t i = 1; i < arcs.size(); ++i)
    EXPECT_NEAR(glm::dot(arcs[i - 1].tangent(arcs[i - 1].length_mm()), arcs[i].tangent(0.0)), 1.0, 1e-9);
  for (std::size_t i = 3; i < arcs.size(); ++i) { // half circles two apart: one turn
    EXPECT_NEAR(arcs[i - 2].radius_mm() - arcs[i].radius_mm(), 20.0 / 8, 1e-9);
    EXPECT_NEAR(glm::distance(arcs[i - 2].centre, arcs[i].centre), 0.0, 1e-9);
  }
}

TEST(Floor, RampsSinkAlongTheFirstWayNoSteeperThanAsked) {
  for (const char *keys : {"pattern = \"parallel\"", "pattern = \"outline_parallel\"",
                           "pattern = \"outline_parallel\"\norder = \"outwards\""}) {
    const auto plan = planned(
        floor_pass("pocket", std::string(keys) + "\nedge = \"wall\"\nstepover_mm = 2.5\n"
                                                 "stepdown_mm = 2.5\nentry = \"ramp\"\nramp_deg = 2.0"));
    double sunk_mm = 0.0;
    for (const PassStroke &stroke : plan.plan.route.strokes()) {
      const double drop_mm = stroke.begin.z - stroke.end.z, along_mm = stroke.plan_view().length_mm();
      if (!stroke.cuts() || drop_mm < 1e-9 || along_mm < 1e-9)
        continue;
      EXPECT_LE(drop_mm / along_mm, std::tan(rad_from_deg(2.0)) + 1e-12) << keys;
      sunk_mm += drop_mm;
    }
    EXPECT_NEAR(sunk_mm, 4.4, 1e-9) << "from the blank's top, 10.4, to 6: " << keys;
    EXPECT_LE(farthest_mm(cuts_at(plan, 6.0), floor_named(plan.job, "pocket")), 3.0 + 1e-6);
  }
}

TEST(Floor, LevelsBeginBelowTheBlanksTop) {
  const auto plan = planned(floor_pass(
      "pocket", "pattern = \"outline_parallel\"\nedge = \"wall\"\nstepover_mm = 2.5\nstepdown_mm = 1.5"));
  EXPECT_EQ(plan.plan.passes.at(0).levels, 3u); // 10.4 - 6 = 4.4
  EXPECT_FALSE(cuts_at(plan, 6.0).empty());
}

} // namespace
} // namespace asperity::test
