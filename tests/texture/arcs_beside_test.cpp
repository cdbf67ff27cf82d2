// Marks of end teeth told from the point beside: the place of the axis against plane geometry worked out
// point by point, and the heights against every point asked alone.
#include "arcs_beside.h"
#include "floor_marks_at.h"

#include "texture/bench.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

using namespace asperity;
using bench::Bench;
using bench::Feed;

namespace {

constexpr double kCircle_mm = 3.0;
/// Height at which a mark ends.
const double kEdge_mm = 0.1 * std::tan(kDish_rad);

/// A way in plan that begins at the origin along x: a line, or an arc to the left or right.
struct Way {
  double radius_mm = 0; ///< positive to the left, 0 = straight
  Vec2 at(double along_mm) const {
    if (radius_mm == 0)
      return {along_mm, 0.0};
    return radius_mm * Vec2(std::sin(along_mm / radius_mm), 1.0 - std::cos(along_mm / radius_mm));
  }
  Vec2 heading(double along_mm) const {
    return radius_mm == 0 ? Vec2(1, 0) : Vec2(std::cos(along_mm / radius_mm), std::sin(along_mm / radius_mm));
  }
};

double angle_of(Vec2 d) { return std::atan2(d.y, d.x); }

} // namespace

TEST(ArcsBeside, TheAxisStandsACircleAwayFromEveryPoint) {
  std::mt19937 dice(7);
  std::uniform_real_distribution<double> share(0.0, 1.0);
  std::size_t found = 0;
  for (int round = 0; round < 3000; ++round) {
    // The way turned by any angle, the circle met at the place 0, the points beside along x.
    const Way way{round % 3 == 0 ? 0.0 : (round % 3 == 1 ? 1.0 : -1.0) * (2.0 + 40.0 * share(dice))};
    const double turned = 2.0 * kPi * share(dice), toward = 2.0 * kPi * share(dice);
    const auto turn = [&](Vec2 v) {
      return Vec2(std::cos(turned) * v.x - std::sin(turned) * v.y,
                  std::sin(turned) * v.x + std::cos(turned) * v.y);
    };
    const Vec2 first = kCircle_mm * Vec2(std::cos(toward), std::sin(toward));
    const ArcMet met{.to_point = first,
                     .heading = turn(way.heading(0)),
                     .turn_per_mm = way.radius_mm == 0 ? 0.0 : 1.0 / way.radius_mm,
                     .before_mm = 0.05,
                     .after_mm = 0.04};
    Eight x_mm{};
    for (std::size_t i = 0; i < kEight; ++i)
      x_mm[i] = 0.0125 * static_cast<double>(i);
    const ArcsBeside beside = arcs_beside(met, x_mm);
    for (std::size_t i = 0; i < kEight; ++i) {
      const double along = beside.along_mm[i];
      if (beside.found[i] == 0)
        continue;
      ++found;
      ASSERT_TRUE(along >= -0.05 && along < 0.04);
      const Vec2 to_point = first + Vec2(x_mm[i], 0) - turn(way.at(along));
      ASSERT_NEAR(glm::length(to_point), kCircle_mm, 1e-11) << round << " " << i;
      ASSERT_NEAR(std::remainder(angle_of(to_point) - angle_of(first) - beside.angle_rad[i], 2 * kPi), 0,
                  1e-11);
    }
    if (beside.found[0] != 0) {
      ASSERT_NEAR(beside.along_mm[0], 0, 1e-12) << "the point itself";
    } else {
      ASSERT_LT(std::abs(glm::dot(met.heading, first)), 0.0501 * kCircle_mm) << "too flat a crossing";
    }
  }
  EXPECT_GT(found, 3000 * 3); // the others' axes stood beyond the line's ends, or turn away too much
}

TEST(ArcsBeside, RowsEqualEveryPointAskedAlone) {
  const Feed feed{100, 30000};
  for (const CutterKind kind : {CutterKind::flat, CutterKind::corner_radius}) {
    Cutter cutter = bench::plain_cutter(kind);
    if (kind == CutterKind::corner_radius)
      cutter.corner_radius_mm = 0.5;
    // Nearer to the circle's rim it is met at so small an angle that nobody can tell where.
    const double seen_mm = 0.985 * (kCircle_mm - cutter.corner_radius_mm);
    Bench line(cutter), left(cutter), right(cutter), chords(cutter);
    line.feed({-9, -3, 0}, {11, 4, 0}, feed);
    left.arc({12, 0, 0}, {0, 0}, 1.9, feed);
    right.arc({12, 0, 0}, {0, 0}, -1.9, feed);
    for (int i = 0; i < 60; ++i)
      chords.feed({12 * std::cos(0.03 * i), 12 * std::sin(0.03 * i), 0},
                  {12 * std::cos(0.03 * (i + 1)), 12 * std::sin(0.03 * (i + 1)), 0}, feed);
    for (const Bench *bench : {&line, &left, &right, &chords}) {
      const TextureSource source = bench->source();
      const Region everywhere{{-50, -50}, {50, 50}, -1, 1};
      const LargeArray<PassPart> parts = pass_parts(source.path, source.swept, everywhere, 0.0);
      const auto passes = passes_near(parts, source.swept.cutters, everywhere, 0.0);
      ASSERT_EQ(passes.size(), 1U);
      const PassTrack track(passes.front());
      FloorMarks marks(source);
      std::size_t known = 0, different = 0, asked = 0;
      std::mt19937 dice(3);
      for (int round = 0; round < 4000; ++round) {
        const double along = track.length_mm() * std::uniform_real_distribution<double>(0, 1)(dice);
        const auto place = track.at(along);
        const Vec2 p =
            track.spot(place).point + std::uniform_real_distribution<double>(-seen_mm, seen_mm)(dice) *
                                          left_of(track.spot(place).heading);
        Eight x_mm{};
        for (std::size_t i = 0; i < kEight; ++i)
          x_mm[i] = 0.003 * static_cast<double>(i);
        const auto arc = marks.known_arc(passes.front(), track, place.part, p);
        const FloorMarks::Row row = arc ? FloorMarks::beside(*arc, x_mm) : FloorMarks::Row();
        for (std::size_t i = 0; i < kEight; ++i) {
          ++asked;
          if (row.known[i] == 0)
            continue;
          const auto alone = marks.height_mm(passes.front(), track, place.part, p + Vec2(x_mm[i], 0));
          ASSERT_TRUE(alone.has_value());
          const double apart = std::abs(row.height_mm[i] - *alone);
          const bool is_same = apart < 1e-8 || std::abs(apart - kEdge_mm) < 1e-8; // rounding picks the side
          ++(is_same ? known : different);
        }
      }
      EXPECT_GT(static_cast<double>(known), 0.6 * static_cast<double>(asked));
      // Within a kink the circle goes over a point twice: which of the two is found is not the same.
      EXPECT_LE(different, bench == &chords ? asked / 1000 : 0);
    }
  }
}
