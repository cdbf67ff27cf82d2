// The finished sheet: what a stranger must see at first sight is there in the pixels.
#include "asperity/picture/chart_picture.h"

#include "asperity/picture/colour_map.h"
#include "asperity/picture/lettering.h"
#include "lab.h"
#include "layout.h"
#include "panel.h"
#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <set>

namespace asperity {

namespace {

using test_support::rim_outcome;

Lab lab_of(Rgb colour) { return lab_from_linear(linear_from_rgb(colour)); }

/// The rim's picture with the layout it was drawn by.
struct Rim {
  Outcome outcome = rim_outcome(0.1);
  ChartPicture picture = chart_picture(outcome.charts[0], outcome.job, 0, outcome.findings);
  Plane plane = plane_of(outcome.charts[0], {0.0, 0.25 * 62.0 * 3.14159265358979});
  Layout layout = layout_for(plane, 1600);

  Rgb at(const Box &panel, double s_mm, double z_mm) const {
    const int x = static_cast<int>(plane.x_offset_mm(s_mm) / plane.width_mm * panel.width);
    const int y = static_cast<int>((1.0 - z_mm / plane.height_mm) * panel.height);
    return picture.image.at(panel.x + x, panel.y + y);
  }
};

} // namespace

TEST(ChartPicture, IsAsWideAsAskedAndFullOfColours) {
  const Rim rim;
  EXPECT_EQ(rim.picture.image.width, 1600);
  EXPECT_GT(rim.picture.image.height, 800);
  std::set<std::tuple<int, int, int>> colours;
  for (Rgb p : rim.picture.image.pixels)
    colours.insert({p.r, p.g, p.b});
  EXPECT_GT(colours.size(), 300u); // both panels, legend and smooth lettering
}

TEST(ChartPicture, TheWitnessLineStandsOutInBothPanels) {
  constexpr double kPlainlyDifferent = 20.0; // nearly ten times the just noticeable 2.3 [Mahy et al. 1994]
  const Rim rim;
  const double flank_mm = 0.25 * test_support::kGrooveWidth_mm;
  for (double z_mm : {2.0, 5.0, 12.0}) {
    EXPECT_GT(difference(lab_of(rim.at(rim.layout.colour, 0.0, z_mm)),
                         lab_of(rim.at(rim.layout.colour, 40.0, z_mm))),
              kPlainlyDifferent);
    const double length_mm = rim.plane.width_mm;
    const Lab falling = lab_of(rim.at(rim.layout.relief, length_mm - flank_mm, z_mm));
    const Lab rising = lab_of(rim.at(rim.layout.relief, flank_mm, z_mm));
    const Lab even = lab_of(rim.at(rim.layout.relief, 40.0, z_mm));
    EXPECT_LT(falling.l, even.l - kPlainlyDifferent); // turned away from the lamp on the left
    EXPECT_GT(rising.l, even.l + kPlainlyDifferent);
  }
}

TEST(ChartPicture, TheLipIsHatchedNotColoured) {
  const Rim rim;
  const Box &panel = rim.layout.colour;
  std::set<std::tuple<int, int, int>> tones;
  for (int x = 10; x < 60; ++x) {
    const Rgb p = rim.picture.image.at(panel.x + x, panel.bottom() - 4);
    tones.insert({p.r, p.g, p.b});
  }
  EXPECT_EQ(tones.size(), 2u); // base and hatch
}

TEST(ChartPicture, LevelsHaveTheColourOfTheirResidual) {
  constexpr double kSameColour = 2.3; // just noticeable
  const Rim rim;
  const double half_um = 10.0; // holds 2 .. 10 um
  const Lab wanted = lab_of(residual_colour(test_support::kSteady_um / half_um));
  EXPECT_LT(difference(lab_of(rim.at(rim.layout.colour, 40.0, 2.0)), wanted), kSameColour);
}

TEST(ChartPicture, SurvivesSurfacesThatNothingReaches) {
  Outcome outcome = rim_outcome(1.0);
  auto &wall = std::get<WallChart>(outcome.charts[0]);
  std::fill(wall.envelope_mm.begin(), wall.envelope_mm.end(), std::numeric_limits<float>::infinity());
  EXPECT_GT(chart_picture(outcome.charts[0], outcome.job, 0, outcome.findings).image.height, 0);
  outcome.charts[0] = WallChart{};
  EXPECT_GT(chart_picture(outcome.charts[0], outcome.job, 0, outcome.findings).image.height, 0);
  outcome.charts[0] = FloorChart{};
  EXPECT_GT(chart_picture(outcome.charts[0], outcome.job, 0, {}).image.height, 0);
}

TEST(ChartPicture, PlacesThatAreNotNumbersAreSurvived) {
  Outcome outcome = rim_outcome(1.0);
  outcome.findings[1].place_mm = {std::nan(""), 0.0, std::numeric_limits<double>::infinity()};
  EXPECT_GT(chart_picture(outcome.charts[0], outcome.job, 0, outcome.findings).image.height, 0);
}

TEST(Layout, PanelsAndLegendNeverOverlapWhateverTheShape) {
  for (double width_mm : {5.0, 31.0, 195.0, 2000.0})
    for (double height_mm : {2.0, 14.0, 60.0, 300.0}) {
      Plane plane;
      plane.width_mm = width_mm;
      plane.height_mm = height_mm;
      const Layout layout = layout_for(plane, 1600);
      const bool apart = layout.colour.right() < layout.relief.x ||
                         layout.colour.bottom() + kAxisBelow_px <= layout.relief.y;
      EXPECT_TRUE(apart) << width_mm << " x " << height_mm;
      EXPECT_LT(layout.relief.right(), layout.legend_x);
      EXPECT_LE(layout.legend_x + layout.legend_width, 1600);
      EXPECT_GE(layout.colour.height, 200);
      EXPECT_GE(layout.colour.width, 200);
    }
}

TEST(Lettering, WithoutAFontNothingIsDrawnAndItIsSaid) {
  const char *const none[] = {"/nowhere/font.ttf"};
  const Lettering lettering(none);
  EXPECT_FALSE(lettering.has_font());
  Image image(50, 20, kPaper);
  lettering.draw(image, "rim", 5, 15, 12, kInk);
  EXPECT_EQ(image.pixels, Image(50, 20, kPaper).pixels);
}

TEST(Lettering, BrokenUtf8AndControlCharactersAreHarmless) {
  const Lettering lettering;
  if (!lettering.has_font())
    GTEST_SKIP() << "no font on this machine";
  Image image(200, 30, kPaper);
  lettering.draw(image, "a\xFF\xC3\x1b\n\xF0\x9F", 5, 20, 14, kInk);
  EXPECT_GT(lettering.width_px("\u00b0\u2014", 14), 0);
  EXPECT_EQ(lettering.width_px("\x1b\n", 14), 0);
}

} // namespace asperity
