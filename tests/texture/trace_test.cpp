// Traces laid on walls and floors: what a stylus would show, where it runs, and what it says when it cannot.
#include "texture/bench.h"

#include "asperity/base/units.h"
#include "asperity/surface/kinematic.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

/// Points every twentieth of a mark or finer: a twelfth of 1 / 20^2 of Ra, and the S-filter has nothing to
/// take.
constexpr double kReadingShare = 5e-3;

Bench one_long_tooth(double feed_per_rev_mm) {
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.01;
  Bench bench(cutter);
  bench.feed({28, bench.beside_y_mm(), -10}, {-28, bench.beside_y_mm(), -10}, {feed_per_rev_mm * 500, 30000});
  return bench;
}

Trace lay(const Bench &bench, const TraceRequest &request) {
  std::string why;
  const Trace trace = lay_trace(bench.job.features[0], bench.wall_chart(), bench.source(), request, 1, why);
  EXPECT_TRUE(trace.profile_mm.empty() == !why.empty()) << why;
  return trace;
}

TraceRequest along_side(const Bench &bench, double length_mm) {
  TraceRequest request;
  request.at_mm = -5;
  request.from_mm = bench.s_at_mm(0) - length_mm / 2;
  request.length_mm = length_mm;
  return request;
}

/// Cusp of one tooth at a feed per revolution, climb. [derived: trochoid]
double cusp_um(double feed_mm) {
  return um_from_mm(parabola_cusp_mm(std::pow(3 - feed_mm / (2 * kPi), 2) / 3, feed_mm));
}

} // namespace

TEST(Trace, WallReadsAsTheFilteredCusp) {
  // Parabolic cusps after the Gaussian filter, Ra / H: 0.253311 at pitch / cutoff 0.4, 0.172942 at 0.8,
  // 0.2566 far below. [derived from ISO 16610-21:2011, 4.2]
  struct Row {
    double feed_mm, cutoff_mm, ra_share;
  };
  for (const Row &row : {Row{0.125, 0.25, 0.240982}, Row{0.25, 0.25, 0.133678}, Row{0.1, 0.8, 0.2566}}) {
    const Bench bench = one_long_tooth(row.feed_mm);
    TraceRequest request = along_side(bench, 7 * row.cutoff_mm);
    request.cutoff_mm = row.cutoff_mm;
    const Trace trace = lay(bench, request);
    const double expected = row.ra_share * cusp_um(row.feed_mm);
    EXPECT_NEAR(um_from_mm(trace.reading.parameters.ra_mm), expected, kReadingShare * expected)
        << row.feed_mm;
    EXPECT_NEAR(trace.reading.parameters.rsm_mm, row.feed_mm, 0.005);
    EXPECT_EQ(trace.reading.settings.cutoff_mm, row.cutoff_mm);
    EXPECT_FALSE(trace.reading.fit.too_short());
    // A peak lies up to half a point of 20 off, 1 - (1 - 1 / 20)^2, and the hollow too, (1 / 20)^2.
    EXPECT_NEAR(um_from_mm(trace.cusp_mm), cusp_um(row.feed_mm), 0.101 * cusp_um(row.feed_mm));
  }
}

TEST(Trace, ProfileIsWavinessAndRoughness) {
  const Trace trace = lay(one_long_tooth(0.1), along_side(one_long_tooth(0.1), 8));
  ASSERT_EQ(trace.profile_mm.size(), trace.roughness_mm.size());
  for (std::size_t i = 0; i < trace.profile_mm.size(); ++i)
    ASSERT_NEAR(trace.profile_mm[i], trace.waviness_mm[i] + trace.roughness_mm[i], 1e-15);
}

TEST(Trace, CutoffIsTheLongerOfWhatPitchAndRaAskFor) {
  // ISO 4288:1996: RSm 0.04 to 0.13 mm or Ra 0.02 to 0.1 um ask for 0.25 mm, up to 0.4 mm or 2 um for 0.8 mm,
  // up to 1.3 mm for 2.5 mm. Ra of the cusps: 0.067 um at 0.08 mm, 0.108 at 0.1 mm, 1.74 at 0.4 mm.
  const auto cutoff = [](double feed_mm) {
    const Bench bench = one_long_tooth(feed_mm);
    return lay(bench, along_side(bench, 10)).reading.settings.cutoff_mm;
  };
  EXPECT_EQ(cutoff(0.08), 0.25);
  EXPECT_EQ(cutoff(0.1), 0.8);
  EXPECT_EQ(cutoff(0.39), 0.8);
  EXPECT_EQ(cutoff(0.5), 2.5);
}

TEST(Trace, WholeOutlineIsClosedAndTellsWhoCutWhat) {
  const Bench bench = one_long_tooth(0.1);
  TraceRequest request;
  request.at_mm = -5;
  const Trace trace = lay(bench, request);
  EXPECT_TRUE(trace.closed);
  const double round_mm = bench.wall().outline.length_mm();
  EXPECT_NEAR(trace.spacing_mm * static_cast<double>(trace.profile_mm.size()), round_mm, 1e-9);
  EXPECT_LE(trace.spacing_mm, 0.0050001);
  // Only the long side was cut: 56 mm, and as far round its ends as the cutter at its first and last place
  // reaches.
  const auto uncut = std::count(trace.owner.begin(), trace.owner.end(), kNobody);
  EXPECT_NEAR(round_mm - trace.spacing_mm * static_cast<double>(uncut), 56, 6);
  const auto at = [&](double x) {
    return static_cast<std::size_t>((bench.s_at_mm(x) - trace.begin_mm) / trace.spacing_mm);
  };
  EXPECT_EQ(trace.owner[at(0)], 0u);
  const auto [low, high] = std::minmax_element(trace.profile_mm.begin(), trace.profile_mm.end());
  // Elsewhere the blank still stands, 1 mm off the sides; highest over the corners, 3 sqrt 2 - 2 by their
  // radius.
  EXPECT_NEAR(*high - *low, 3 * std::sqrt(2.0) - 2, 1e-3);
}

TEST(Trace, StretchOverTheSeamOfTheOutlineIsOnePiece) {
  // The outline begins at an end of the long side: a stretch about it, against the same places taken as two.
  const Bench bench = one_long_tooth(0.1);
  const double round_mm = bench.wall().outline.length_mm();
  TraceRequest request;
  request.at_mm = -5;
  request.from_mm = -1;
  request.length_mm = 4;
  const Trace trace = lay(bench, request);
  EXPECT_NEAR(trace.begin_mm, -1 + trace.spacing_mm / 2, 1e-12);
  request.from_mm = round_mm - 1;
  const Trace same = lay(bench, request);
  ASSERT_EQ(trace.profile_mm.size(), same.profile_mm.size());
  for (std::size_t i = 0; i < trace.profile_mm.size(); ++i)
    ASSERT_NEAR(trace.profile_mm[i], same.profile_mm[i], 1e-6);
  EXPECT_EQ(trace.owner, same.owner);
}

TEST(Trace, UpTheWallShowsTheStepOfALevel) {
  Bench bench(bench::plain_cutter());
  const double y = bench.beside_y_mm();
  // The upper half is cut 10 um proud, the lower half afterwards to size by a cutter with short flutes.
  bench.swept.cutters[0].flute_length_mm = 5;
  bench.feed({25, y - 0.01, -5}, {-25, y - 0.01, -5}, {50, 30000});
  bench.feed({25, y, -10}, {-25, y, -10}, {50, 30000});
  TraceRequest request;
  request.along = std::string("z");
  request.at_mm = bench.s_at_mm(0);
  const Trace trace = lay(bench, request);
  EXPECT_FALSE(trace.closed);
  EXPECT_NEAR(trace.spacing_mm * static_cast<double>(trace.profile_mm.size()), 10, 1e-9);
  double jump = 0;
  std::size_t where = 0;
  for (std::size_t i = 1; i < trace.profile_mm.size(); ++i)
    if (std::abs(trace.profile_mm[i] - trace.profile_mm[i - 1]) > jump) {
      jump = std::abs(trace.profile_mm[i] - trace.profile_mm[i - 1]);
      where = i;
    }
  EXPECT_NEAR(jump, 0.01, 2e-4); // tooth marks of 0.1 um, the line's slope over a point
  EXPECT_NEAR(trace.begin_mm + trace.spacing_mm * static_cast<double>(where), -5, 0.01);
  EXPECT_EQ(trace.owner.front(), 1u);
  EXPECT_EQ(trace.owner.back(), 0u);
}

TEST(Trace, FloorReadsTheDishAlongTheFeed) {
  // Sawtooth of f tan(dish): Ra a quarter of it; a filter far longer than the pitch takes nothing.
  Cutter cutter = bench::plain_cutter();
  cutter.runout_mm = 0.02;
  Bench bench(cutter);
  bench.feed({-29, 0, 0}, {29, 0, 0}, {50, 30000});
  TraceRequest request;
  request.along = std::string("x");
  request.from_mm = -4;
  request.length_mm = 8;
  request.cutoff_mm = 0.8;
  std::string why;
  Chart chart = bench.top_chart();
  const Trace trace = lay_trace(bench.job.features[1], chart, bench.source(), request, 1, why);
  EXPECT_TRUE(why.empty());
  const double expected = um_from_mm(0.1 * std::tan(rad_from_deg(2)) / 4);
  // 20 points a mark: the tooth's edge falls between two of them.
  EXPECT_NEAR(um_from_mm(trace.reading.parameters.ra_mm), expected, 0.02 * expected);
  EXPECT_NEAR(trace.reading.parameters.rsm_mm, 0.1, 0.002);
}

TEST(Trace, DomeShowsTheCuspsOfABallOnAConvexSurface) {
  // Ball R on a surface of radius rho, arc step s, phi = s / rho: (rho + R) cos(phi / 2) -
  // sqrt(R^2 - ((rho + R) sin(phi / 2))^2) - rho. [derived: crossing of neighbouring spheres]
  Cutter cutter = bench::plain_cutter(CutterKind::ball);
  cutter.flutes = 1;
  Bench bench(cutter);
  DomeFeature dome;
  dome.outline = Outline::circle({0, 0}, 24);
  dome.sphere_radius_mm = 50;
  dome.rim_radius_mm = 12;
  bench.job.features[1] = dome;
  // The tip runs on a circle as large as the ball's centre does, 3 mm lower: over the top, along +x.
  Curve over;
  over.axis_y = {0, 0, 1};
  over.radius_mm = 53;
  over.centre = {0, 0, -53};
  over.start_rad = rad_from_deg(105);
  over.sweep_rad = rad_from_deg(-30);
  over.begin = over.point(0);
  over.end = over.point(1);
  bench.along(over, {100, 30000});
  TraceRequest request;
  request.along = std::string("x");
  std::string why;
  const Chart chart = make_floor_chart({-12, -12}, {12, 12}, 0.5, 0.0);
  const Trace trace = lay_trace(bench.job.features[1], chart, bench.source(), request, 1, why);
  ASSERT_TRUE(why.empty()) << why;
  const double half = 0.2 / 53 / 2, a = 53 * std::sin(half);
  const double expected_um = um_from_mm(53 * std::cos(half) - std::sqrt(9 - a * a) - 50);
  EXPECT_NEAR(um_from_mm(trace.cusp_mm), expected_um, 0.06 * expected_um); // 38 points a mark
  EXPECT_NEAR(um_from_mm(trace.reading.parameters.ra_mm), um_from_mm(cusp_ra_mm(mm_from_um(expected_um))),
              0.02 * 0.2566 * expected_um); // read over the top, level there; spheres, not paraboloids
  EXPECT_GT(trace.spacing_mm * static_cast<double>(trace.profile_mm.size()), 23);
}

TEST(Trace, RequestsThatMissSayWhy) {
  const Bench bench = one_long_tooth(0.1);
  const auto why_of = [&](std::size_t feature, TraceRequest request) {
    std::string why;
    const Chart chart = feature == 0 ? bench.wall_chart() : bench.top_chart();
    const Trace trace = lay_trace(bench.job.features[feature], chart, bench.source(), request, 1, why);
    EXPECT_TRUE(trace.profile_mm.empty());
    return why;
  };
  TraceRequest request;
  request.at_mm = 3;
  EXPECT_NE(why_of(0, request).find("off the wall"), std::string::npos);
  request.along = std::string("x");
  EXPECT_NE(why_of(0, request).find("runs along s"), std::string::npos);
  request.at_mm = 40;
  EXPECT_NE(why_of(1, request).find("nothing of the surface"), std::string::npos);
  request.at_mm = 0;
  request.from_mm = 100;
  request.length_mm = 4;
  EXPECT_NE(why_of(1, request).find("nothing of the surface"), std::string::npos);
}

TEST(Trace, ShortFeaturesAreReadAndMarkedShort) {
  const Bench bench = one_long_tooth(0.1);
  const Trace trace = lay(bench, along_side(bench, 2));
  EXPECT_TRUE(trace.reading.fit.too_short());
  EXPECT_GT(trace.reading.parameters.ra_mm, 0);
}
