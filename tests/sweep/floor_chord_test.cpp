// Chords with free ends: as long as the tolerance allows on a curve, and where the path is straight its own
// joints.
#include "sweep/floor_merge.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>

namespace asperity::floor_test {
namespace {

using Joints = std::vector<Vec3>;
constexpr double kWithin_mm = 5e-5;
/// What places some tens of millimetres from the origin are rounded by, and a little more.
constexpr double kRounding_mm = 1e-12;

struct Chords {
  std::vector<FloorStroke> strokes;
  FloorRuns runs;

  Vec3 begin(std::size_t i) const { return strokes[i].descends ? high(i) : low(i); }
  Vec3 end(std::size_t i) const { return strokes[i].descends ? low(i) : high(i); }

private:
  Vec3 low(std::size_t i) const { return {strokes[i].low, strokes[i].z_mm}; }
  Vec3 high(std::size_t i) const {
    return {strokes[i].high, strokes[i].z_mm + strokes[i].slope * strokes[i].length_mm};
  }
};

Joints joints_of(const std::function<Vec3(double)> &curve, double from, double to, int moves) {
  Joints joints;
  for (int i = 0; i <= moves; ++i)
    joints.push_back(curve(from + (to - from) * i / moves));
  return joints;
}

/// Each move is owned by its own number.
Chords chords_of(const Joints &joints, double within_mm = kWithin_mm) {
  Chords chords;
  FloorMerger merger({.within_mm = within_mm, .may_mix_owners = true, .ends_are_free = true}, chords.strokes,
                     chords.runs);
  for (std::uint32_t i = 0; i + 1 < joints.size(); ++i)
    merger.add({joints[i], joints[i + 1], i, 0, i > 0});
  merger.finish();
  return chords;
}

/// A parabola over x, upright (it rises by k x^2 / 2) or lying.
Vec3 parabola(double x, double k, bool lies) {
  const double y = 0.5 * k * x * x;
  return lies ? Vec3(x, y, 0.3 + 0.01 * x) : Vec3(x, 0.7, y);
}

// Derived: over a length L a parabola of curvature k departs from its chord by k L^2 / 8. A chord that lies
// within e to both sides may take 2 e: L = sqrt(16 e / k).
TEST(FloorChords, AParabolaTakesAsManyAsItsCurvatureSays) {
  constexpr double kCurvature = 0.035, kLength_mm = 20.0;
  const double expected = kLength_mm / std::sqrt(16.0 * kWithin_mm / kCurvature);
  for (const bool lies : {false, true})
    // Moves far shorter than chords, and four to a chord: these may end within a move.
    for (const int moves : {20000, 500}) {
      const Chords chords =
          chords_of(joints_of([&](double x) { return parabola(x, kCurvature, lies); }, -5.0, 15.0, moves));
      EXPECT_NEAR(double(chords.strokes.size()), expected, 0.04 * expected + 1.0) << moves << " " << lies;
    }
}

/// How far the chord lies above (upright) or left of the parabola at x.
double beyond(const Chords &chords, std::size_t i, double x, double k, bool lies) {
  const Vec3 a = chords.begin(i), b = chords.end(i), on = a + (x - a.x) / (b.x - a.x) * (b - a);
  const Vec3 exact = parabola(x, k, lies);
  return lies ? on.y - exact.y : on.z - exact.z;
}

TEST(FloorChords, AParabolaIsMissedByAsMuchToBothSides) {
  constexpr double kCurvature = 0.035;
  for (const bool lies : {false, true})
    for (const bool back : {false, true}) {
      const Chords chords = chords_of(joints_of([&](double x) { return parabola(x, kCurvature, lies); },
                                                back ? 6.0 : -6.0, back ? -6.0 : 6.0, 12000));
      double least = 0.0, most = 0.0;
      for (std::size_t i = 0; i < chords.strokes.size(); ++i)
        for (int k = 0; k <= 100; ++k) {
          const double x = chords.begin(i).x + 0.01 * k * (chords.end(i).x - chords.begin(i).x);
          const double miss = beyond(chords, i, x, kCurvature, lies);
          least = std::min(least, miss);
          most = std::max(most, miss);
        }
      // Slopes up to 0.21: e across the chord is up to 1.023 e upright; moves miss the parabola by 4e-9.
      EXPECT_LE(most, 1.024 * kWithin_mm);
      EXPECT_GE(most, 0.95 * kWithin_mm);
      EXPECT_GE(least, -1.024 * kWithin_mm);
      EXPECT_LE(least, -0.95 * kWithin_mm);
    }
}

TEST(FloorChords, AnArcTakesAsManyAsItsRadiusSays) {
  constexpr double kRadius_mm = 30.0;
  const auto arc = [](double a) {
    return Vec3(kRadius_mm * std::cos(a), kRadius_mm * std::sin(a), 0.002 * a);
  };
  const double expected = 0.5 * kPi * kRadius_mm / std::sqrt(16.0 * kWithin_mm * kRadius_mm);
  const Chords chords = chords_of(joints_of(arc, 0.1, 0.1 + 0.5 * kPi, 30000));
  EXPECT_NEAR(double(chords.strokes.size()), expected, 0.03 * expected + 1.0);
  double least = 0.0, most = 0.0;
  for (std::size_t i = 0; i < chords.strokes.size(); ++i)
    for (int k = 0; k <= 100; ++k) {
      const Vec3 p = chords.begin(i) + 0.01 * k * (chords.end(i) - chords.begin(i));
      least = std::min(least, glm::length(plan(p)) - kRadius_mm);
      most = std::max(most, glm::length(plan(p)) - kRadius_mm);
    }
  // Moves miss the arc by 1e-8.
  EXPECT_LE(most, kWithin_mm + kRounding_mm);
  EXPECT_GE(most, 0.95 * kWithin_mm);
  EXPECT_GE(least, -1.001 * kWithin_mm);
  EXPECT_LE(least, -0.95 * kWithin_mm);
}

TEST(FloorChords, EachBeginsWhereTheOneBeforeEnds) {
  const auto wave = [](double x) { return Vec3(x, 0.3 * std::sin(0.8 * x), 0.2 * std::sin(1.3 * x)); };
  const Joints joints = joints_of(wave, -3.0, 3.0, 300);
  const Chords chords = chords_of(joints);
  ASSERT_GT(chords.strokes.size(), 20u);
  ASSERT_LT(chords.strokes.size(), 150u);
  for (std::size_t i = 1; i < chords.strokes.size(); ++i) {
    EXPECT_EQ(plan(chords.begin(i)), plan(chords.end(i - 1)));
    EXPECT_NEAR(chords.begin(i).z, chords.end(i - 1).z, kRounding_mm);
    EXPECT_TRUE(chords.strokes[i].joins_previous);
  }
  EXPECT_EQ(plan(chords.begin(0)), plan(joints.front()));
  EXPECT_EQ(plan(chords.end(chords.strokes.size() - 1)), plan(joints.back()));
}

double distance_mm(Vec3 p, Vec3 a, Vec3 b) {
  const Vec3 along = b - a;
  const double u = std::clamp(glm::dot(p - a, along) / glm::dot(along, along), 0.0, 1.0);
  return glm::distance(p, a + u * along);
}

// Sideways and upward at once, with moves longer and shorter than the tolerance, and corners.
TEST(FloorChords, NoJointLiesFartherAwayThanWasAllowed) {
  for (const double step : {2e-5, 2e-3, 0.02})
    for (const double within : {1e-7, 5e-5, 1e-3}) {
      Joints joints{Vec3(1.0, 2.0, 3.0)};
      for (int i = 0; i < 3000; ++i) {
        const double a = 0.2 * std::sin(2e-2 * i) + (i % 271 == 0 ? 1.2 : 0.0) + (i / 900) * 1.4;
        joints.push_back(joints.back() + step * Vec3(std::cos(a), std::sin(a), 0.1 * std::cos(0.013 * i)));
      }
      const Chords chords = chords_of(joints, within);
      double worst = 0.0;
      for (const Vec3 joint : joints) {
        double nearest = 1e9;
        for (std::size_t i = 0; i < chords.strokes.size(); ++i)
          nearest = std::min(nearest, distance_mm(joint, chords.begin(i), chords.end(i)));
        worst = std::max(worst, nearest);
      }
      EXPECT_LE(worst, within + kRounding_mm) << step;
    }
}

TEST(FloorChords, StraightRunsEndInTheirJoints) {
  // Along one line, round a corner, along another that rises; uneven moves.
  Joints joints;
  for (int i = 0; i <= 40; ++i)
    joints.push_back(Vec3(-3.0, 1.0, 0.2) + std::pow(i / 40.0, 1.4) * Vec3(5.0, 1.7, 0.0));
  const Vec3 corner = joints.back();
  for (int i = 1; i <= 40; ++i)
    joints.push_back(corner + std::pow(i / 40.0, 0.8) * Vec3(-0.4, 3.0, 0.5));
  const Chords chords = chords_of(joints, 1e-7);
  ASSERT_EQ(chords.strokes.size(), 2u);
  EXPECT_EQ(chords.end(0), chords.begin(1));
  EXPECT_EQ(plan(chords.begin(0)), plan(joints.front()));
  EXPECT_EQ(plan(chords.end(0)), plan(corner));
  EXPECT_EQ(plan(chords.end(1)), plan(joints.back()));
  EXPECT_EQ(chords.strokes[0].z_mm, joints.front().z);
  EXPECT_EQ(chords.strokes[1].z_mm, corner.z);
}

TEST(FloorChords, AChainEndsInItsLastJoint) {
  const auto curve = [](double x) { return parabola(x, 0.035, true); };
  const Joints joints = joints_of(curve, -2.0, 2.0, 200);
  for (const bool mixes : {true, false}) {
    Chords chords;
    FloorMerger merger({.within_mm = kWithin_mm, .may_mix_owners = mixes, .ends_are_free = true},
                       chords.strokes, chords.runs);
    for (std::uint32_t i = 0; i < 200; ++i) // owners change at 70, cutters at 120, and a gap follows 160
      merger.add({joints[i], joints[i + 1], i < 70 ? 0u : 1u, std::uint16_t(i < 120 ? 0 : 1), i != 160});
    merger.finish();
    for (const std::size_t at : {70u, 120u, 160u}) {
      const bool ends_here = std::any_of(chords.strokes.begin(), chords.strokes.end(), [&](const auto &s) {
        return s.low == plan(joints[at]) && s.z_mm == joints[at].z;
      });
      EXPECT_TRUE(ends_here || (mixes && at == 70)) << at;
    }
    EXPECT_EQ(plan(chords.end(chords.strokes.size() - 1)), plan(joints.back()));
  }
}

// Members cover each chord from end to end, in order; a move that a joint of chords cuts belongs to both.
TEST(FloorChords, MembersFollowOneAnother) {
  for (const bool back : {false, true}) {
    const double from = back ? 6.0 : -6.0;
    const Joints joints = joints_of([](double x) { return parabola(x, 0.035, false); }, from, -from, 400);
    const Chords chords = chords_of(joints);
    std::uint32_t next = 0;
    bool is_cut = false;
    for (std::size_t i = 0; i < chords.strokes.size(); ++i) {
      const FloorStroke &s = chords.strokes[i];
      if (s.run_count == 0) { // what the last but one could not reach
        ASSERT_EQ(i + 1, chords.strokes.size());
        EXPECT_TRUE(s.owner == next || s.owner + 1 == next);
        next = s.owner + 1;
        break;
      }
      for (std::uint32_t n = 0; n < s.run_count; ++n) {
        const std::uint32_t k = s.run_first + (s.descends ? s.run_count - 1 - n : n);
        const std::uint32_t owner = chords.runs.owner[k];
        is_cut = is_cut || owner + 1 == next;
        ASSERT_TRUE(owner == next || (n == 0 && owner + 1 == next));
        next = owner + 1;
        // The upper joint of the move, or the chord's end where it ends within the move.
        const double place = glm::dot(plan(joints[s.descends ? owner : owner + 1]) - s.low, s.low_along);
        EXPECT_NEAR(chords.runs.joint_mm[k], std::min(place, s.length_mm), kRounding_mm);
      }
      EXPECT_EQ(s.owner, s.descends ? chords.runs.owner[s.run_first + s.run_count - 1]
                                    : chords.runs.owner[s.run_first]);
    }
    EXPECT_EQ(next, 400u);
    EXPECT_TRUE(is_cut) << "no chord ended within a move";
  }
}

} // namespace
} // namespace asperity::floor_test
