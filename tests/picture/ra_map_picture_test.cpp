// The map of local roughness: every window in its colour at its place, the roughest marked.
#include "asperity/picture/ra_map_picture.h"

#include "asperity/picture/colour_map.h"
#include "lab.h"
#include "layout.h"
#include "page.h"
#include "ra_scale.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace asperity {

namespace {

using test_support::kLip_mm;
using test_support::rim_outcome;

constexpr std::size_t kColumns = 40, kRows = 7;
constexpr std::size_t kWorstColumn = 30, kWorstRow = 3;

FeatureRoughness map_of_rim(const Outcome &outcome) {
  FeatureRoughness roughness;
  roughness.measured = true;
  roughness.map_columns = kColumns;
  roughness.map_rows = kRows;
  for (std::size_t row = 0; row < kRows; ++row)
    for (std::size_t column = 0; column < kColumns; ++column)
      roughness.map_ra_um.push_back(column < kColumns / 2 ? 0.4f : 0.8f);
  roughness.map_ra_um[kWorstRow * kColumns + kWorstColumn] = 1.6f;
  roughness.worst_ra_um = 1.6;
  const auto &wall = std::get<WallFeature>(outcome.job.features[0]);
  const double s = wall.outline.length_mm() * (kWorstColumn + 0.5) / kColumns;
  const Vec2 foot = wall.outline.point(s);
  roughness.worst_place_mm = {foot.x, foot.y, wall.z_top_mm * (kWorstRow + 0.5) / kRows};
  return roughness;
}

/// The rim's map with the layout it was drawn by.
struct Map {
  Outcome outcome = rim_outcome(0.2);
  FeatureRoughness roughness = map_of_rim(outcome);
  ChartPicture picture = ra_map_picture(roughness, outcome.charts[0], outcome.job, 0);
  Plane plane = plane_of(outcome.charts[0], {chart_place(outcome.charts[0], roughness.worst_place_mm).x});
  Layout layout = single_panel_layout(plane, 1600);
  RaScale scale = ra_scale(roughness.map_ra_um, 0.0);

  Rgb at(double s_mm, double z_mm) const {
    const Box &panel = layout.colour;
    const int x = static_cast<int>(plane.x_offset_mm(s_mm) / plane.width_mm * panel.width);
    const int y = static_cast<int>((1.0 - z_mm / plane.height_mm) * panel.height);
    return picture.image.at(panel.x + x, panel.y + y);
  }
  double s_of(std::size_t column) const {
    return plane.width_mm * (static_cast<double>(column) + 0.5) / kColumns;
  }
};

} // namespace

TEST(RaMapPicture, WindowsHaveTheColourOfTheirRaAtTheirPlace) {
  const Map map;
  EXPECT_EQ(map.at(map.s_of(4), 8.0), roughness_colour(map.scale.place(0.4f)));
  EXPECT_EQ(map.at(map.s_of(18), 3.0), roughness_colour(map.scale.place(0.4f)));
  EXPECT_EQ(map.at(map.s_of(22), 3.0), roughness_colour(map.scale.place(0.8f)));
  EXPECT_EQ(map.at(map.s_of(38), 12.0), roughness_colour(map.scale.place(0.8f)));
}

TEST(RaMapPicture, TheRoughestPlaceIsRinged) {
  const Map map;
  const double z = 14.0 * (kWorstRow + 0.5) / kRows, mm_per_px = map.plane.width_mm / map.layout.colour.width;
  constexpr double kRing_px = 11.0;
  EXPECT_EQ(map.at(map.s_of(kWorstColumn) - kRing_px * mm_per_px, z), kInk);
}

TEST(RaMapPicture, InsideWallsAreShownFromWithin) {
  Map map;
  std::get<WallChart>(map.outcome.charts[0]).inside = true; // s then runs to the left
  map.plane =
      plane_of(map.outcome.charts[0], {chart_place(map.outcome.charts[0], map.roughness.worst_place_mm).x});
  ASSERT_TRUE(map.plane.mirrored);
  map.picture = ra_map_picture(map.roughness, map.outcome.charts[0], map.outcome.job, 0);
  EXPECT_EQ(map.at(map.s_of(4), 8.0), roughness_colour(map.scale.place(0.4f)));
  EXPECT_EQ(map.at(map.s_of(38), 12.0), roughness_colour(map.scale.place(0.8f)));
}

TEST(RaMapPicture, WhatIsNotCutIsNeverColoured) {
  const Map map;
  const Rgb base = map.at(20.0, 0.5 * kLip_mm);
  for (int k = 0; k <= 256; ++k)
    EXPECT_NE(base, roughness_colour(k / 256.0));
}

TEST(RaMapPicture, SurvivesMapsWithoutValues) {
  Outcome outcome = rim_outcome(1.0);
  EXPECT_GT(ra_map_picture({}, outcome.charts[0], outcome.job, 0).image.height, 0);
  FeatureRoughness nowhere = map_of_rim(outcome);
  std::fill(nowhere.map_ra_um.begin(), nowhere.map_ra_um.end(), std::numeric_limits<float>::quiet_NaN());
  nowhere.worst_place_mm = Vec3(std::nan(""));
  EXPECT_GT(ra_map_picture(nowhere, outcome.charts[0], outcome.job, 0).image.height, 0);
  EXPECT_GT(ra_map_picture(nowhere, WallChart{}, outcome.job, 0).image.height, 0);
  EXPECT_GT(ra_map_picture({}, FloorChart{}, outcome.job, 0).image.height, 0);
}

TEST(RaScale, OneFarWindowDoesNotPaleAllOthers) {
  std::vector<float> ra_um(1000, 0.4f);
  ra_um[7] = 40.0f;
  const RaScale scale = ra_scale(ra_um, 0.0);
  EXPECT_LE(scale.upper_um, 1.5); // three times the usual, rounded up
  EXPECT_NEAR(scale.share_above, 0.001, 1e-9);
  EXPECT_GE(ra_scale({0.4f, 0.5f, 0.6f}, 0.0).upper_um, 0.6);
}

} // namespace asperity
