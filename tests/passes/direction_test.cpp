// Climb and conventional, outside and inside: on which side of the feed the material stands, and that no way
// of the cutter comes nearer to the wall than it may.
#include "asperity/base/units.h"
#include "passes/planned.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

const WallFeature &wall_named(const Job &job, std::string_view name) {
  for (const Feature &feature : job.features)
    if (name_of(feature) == name)
      return std::get<WallFeature>(feature);
  return std::get<WallFeature>(job.features.front());
}

/// +1 where the wall stands to the left of the feed in the level lap, -1 to the right, 0 if it changes.
int wall_side(const Planned &plan, const WallFeature &wall, double z_mm) {
  int side = 0;
  for (const Move &move : level_moves(plan.program, z_mm)) {
    const Vec2 p = asperity::plan(move.curve.point(0.5) + plan.job.setup.program_zero_mm);
    const Vec2 feed = glm::normalize(asperity::plan(move.curve.velocity(0.5)));
    // Towards material: depth grows into an outside wall, falls into an inside one.
    const double eps = 1e-4, left = wall.outline.depth_mm(p + eps * left_of(feed)),
                 right = wall.outline.depth_mm(p - eps * left_of(feed));
    const bool grows = wall.side == Side::outside ? left > right : left < right;
    const int here = grows ? 1 : -1;
    if (std::abs(left - right) < 1.9 * eps)
      continue; // approach and leave run straight at the wall
    if (side != 0 && here != side)
      return 0;
    side = here;
  }
  return side;
}

TEST(Direction, ClimbKeepsTheMaterialOnTheRightOfTheFeed) {
  // derived: with a clockwise spindle seen from above a tooth to the right of the axis moves against the
  // feed, as the material does relative to the axis: both run together, the chip begins thick. That is climb.
  for (const char *surface : {"rim", "bore", "window", "crank"}) {
    const auto climb = planned(wall_pass(surface, "stepdown_mm = 10\nentry = \"plunge\""));
    EXPECT_EQ(wall_side(climb, wall_named(climb.job, surface), -10.0), -1) << surface;
    const auto up =
        planned(wall_pass(surface, "stepdown_mm = 10\nentry = \"plunge\"\ndirection = \"conventional\""));
    EXPECT_EQ(wall_side(up, wall_named(up.job, surface), -10.0), 1) << surface;
  }
}

TEST(Direction, BothAlternatesLevelByLevel) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 2.5\nentry = \"plunge\"\ndirection = \"both\""));
  const auto &rim = wall_named(plan.job, "rim");
  for (int i = 1; i <= 4; ++i)
    EXPECT_EQ(wall_side(plan, rim, -2.5 * i), i % 2 == 1 ? -1 : 1);
}

TEST(Direction, NoFeedMoveBelowTheTopComesNearerThanRadiusAndAllowance) {
  const char *const entries[] = {"\"plunge\"", "\"helix\"", "\"ramp\"\nramp_deg = 5",
                                 "\"arc\"\nlead_radius_mm = 2\noverlap_mm = 3"};
  for (const char *surface : {"rim", "bore", "window", "crank"})
    for (const char *entry : entries) {
      const auto plan = planned(wall_pass(
          surface, std::string("stepdown_mm = 3\nallowance_mm = 0.2\nstart_deg = 200\nentry = ") + entry));
      const auto &wall = wall_named(plan.job, surface);
      double nearest_mm = 1e9;
      for (const Move &move : feed_moves(plan.program))
        for (int i = 0; i <= 200; ++i) {
          const Vec2 p = asperity::plan(move.curve.point(i / 200.0) + plan.job.setup.program_zero_mm);
          const double depth_mm = wall.outline.depth_mm(p);
          nearest_mm = std::min(nearest_mm, wall.side == Side::outside ? -depth_mm : depth_mm);
        }
      EXPECT_NEAR(nearest_mm, 3.2, 1e-5) << surface << ' ' << entry;
    }
}

TEST(Direction, RapidsCrossOnlyAtSafeHeightAndEndAboveTheBlank) {
  const auto plan = planned(wall_pass("rim", "stepdown_mm = 3\nentry = \"plunge\"") +
                            floor_pass("ring", "pattern = \"parallel\"\nedge = \"open\"\nstepover_mm = 2.0\n"
                                               "past_edge_mm = 2\ndirection = \"both\""));
  for (const Move &move : plan.program.moves) {
    if (move.kind != MoveKind::rapid || move.line < 12)
      continue;
    const bool is_upright =
        glm::distance(asperity::plan(move.curve.begin), asperity::plan(move.curve.end)) < kText_mm;
    const double low = std::min(move.curve.begin.z, move.curve.end.z) + 10.0;
    if (!is_upright) {
      EXPECT_GE(low, safe_height_mm(plan.job) - kText_mm) << "line " << move.line;
    }
    EXPECT_TRUE(move.curve.end.z + 10.0 > 10.4) << "line " << move.line;
  }
}

} // namespace
} // namespace asperity::test
