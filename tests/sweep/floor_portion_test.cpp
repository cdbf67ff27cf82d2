// Long paths are swept in portions: the same floor as in one go, wherever the path is cut.
#include "sweep/sweep_in_portions.h"

#include "sweep/floor_jobs.h"
#include "sweep/floor_reference.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace asperity::floor_test {
namespace {

/// Storage in floats and arithmetic above the plane: the sweep's own promise.
constexpr double kPromised_mm = 1e-6;
/// Promised exactness of arcs whose bending changes.
constexpr double kHelix_mm = 1e-5;

/// Portions of so many pieces.
FloorPortions by(std::size_t pieces) { return {.at_once = pieces, .pieces = pieces}; }

FloorChart swept(const SweptPath &path, const FloorPortions &portions, int threads = 2) {
  FloorChart chart = square_chart(4.0);
  EXPECT_TRUE(sweep_in_portions(chart, path, threads, Progress(), portions));
  return chart;
}

/// What the pieces of one owner leave of a cell, whatever the others do.
double height_by_owner(const FloorChart &chart, const SweptPath &path, std::size_t cell) {
  SweptPath alone = path;
  std::erase_if(alone.pieces, [&](const SweptPiece &piece) { return piece.owner != chart.owner[cell]; });
  const Vec2 place(chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx));
  return reference_contact(alone, place).z_mm - chart.base_mm - double(chart.wanted_mm[cell]);
}

/// Owners may differ where both leave the same.
void expect_same(const FloorChart &whole, const FloorChart &parts, const SweptPath &path,
                 const std::string &what) {
  for (std::size_t cell = 0; cell < whole.envelope_mm.size(); ++cell) {
    const double expected = double(whole.envelope_mm[cell]), got = double(parts.envelope_mm[cell]);
    ASSERT_TRUE(got == expected || std::abs(got - expected) <= kPromised_mm)
        << what << ": " << got << " for " << expected;
    if (parts.owner[cell] != whole.owner[cell]) {
      ASSERT_NEAR(height_by_owner(parts, path, cell), expected, kPromised_mm) << what;
    }
  }
}

template <class Check> void for_every_path(const Check &check) {
  unsigned number = 300;
  for (const double turn_rad : {0.02, 0.6})
    for (const double slope : {0.0, 0.3})
      for (const NamedProfile &cutter : all_profiles())
        check(wandering_path(cutter.profile, number++, 60, turn_rad, slope, 0.01), cutter.name);
}

TEST(FloorPortions, WanderingsLeaveTheSameFloor) {
  for_every_path([](const SweptPath &path, const std::string &what) {
    const FloorChart whole = swept(path, {});
    for (const std::size_t pieces : {1u, 7u})
      expect_same(whole, swept(path, by(pieces)), path, what + " by " + std::to_string(pieces));
  });
}

TEST(FloorPortions, WanderingsMatchBruteForce) {
  for_every_path([](const SweptPath &path, const std::string &what) {
    expect_reference(swept(path, by(9)), path, 40, kHelix_mm, what);
  });
}

// Moves so short that they are merged, found by hulls and cut across a merged run.
TEST(FloorPortions, ManyTinyMovesLeaveTheSameFloor) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  for (int pass = 0; pass < 4; ++pass) {
    const auto at = [&](int i) {
      const double x = (pass % 2 == 0 ? 1.0 : -1.0) * (0.003 * i - 3.0);
      return Vec3(x, 0.4 * pass - 0.8, i < 1000 ? 0.02 * x : 0.1 * std::sin(x));
    };
    for (int i = 0; i < 2000; ++i)
      add(path, Curve::line(at(i), at(i + 1)), i > 0);
  }
  const FloorChart whole = swept(path, {});
  for (const std::size_t pieces : {333u, 1024u, 2048u})
    expect_same(whole, swept(path, by(pieces)), path, std::to_string(pieces));
  // As many pieces as it takes for enough strokes.
  expect_same(whole, swept(path, {.at_once = 1024, .strokes = 1000}), path, "strokes");
}

TEST(FloorPortions, EndWhenThereAreEnoughStrokes) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  for (int i = 0; i < 3000; ++i) // straight on for 1024, then zigzag
    add(path,
        Curve::line({0.001 * i, i > 1024 ? 0.01 * (i % 2) : 0.0, 0},
                    {0.001 * (i + 1), i >= 1024 ? 0.01 * ((i + 1) % 2) : 0.0, 0}),
        i > 0);
  const FloorPortions portions{.at_once = 512, .strokes = 600};
  const FloorPath first = floor_path(path, 0, portions, 2);
  EXPECT_EQ(first.end, 2048u); // two strokes, then 1024
  EXPECT_LE(first.strokes.size(), 600u + 512u);
  const FloorPath second = floor_path(path, first.end, portions, 2);
  EXPECT_EQ(second.end, 3000u);
}

TEST(FloorPortions, BitsDependNeitherOnThreadsNorOnRoomLeft) {
  const SweptPath path = wandering_path(CutterProfile::ball(1.5), 3, 60, 0.4, 0.2, 0.01);
  const FloorChart one = swept(path, by(13), 1), three = swept(path, by(13), 3);
  EXPECT_EQ(one.envelope_mm, three.envelope_mm);
  EXPECT_EQ(one.owner, three.owner);
  const FloorChart just = swept(path, by(path.pieces.size())), ample = swept(path, by(1000));
  EXPECT_EQ(just.envelope_mm, ample.envelope_mm);
  EXPECT_EQ(just.owner, ample.owner);
}

TEST(FloorPortions, TheSmallestOwnerKeepsEqualDepths) {
  for (const NamedProfile &cutter : all_profiles()) {
    SweptPath path = path_with(cutter.profile);
    for (int i = 0; i < 3; ++i)
      add(path, Curve::line({-2, 0, 0}, {2, 0, 0}));
    path.pieces[0].owner = 9;
    path.pieces[1].owner = 4;
    path.pieces[2].owner = 6;
    const FloorChart chart = swept(path, by(1));
    for (std::size_t cell = 0; cell < chart.owner.size(); ++cell)
      ASSERT_EQ(chart.owner[cell], std::isinf(chart.envelope_mm[cell]) ? kNobody : 4u) << cutter.name;
  }
}

TEST(FloorPortions, ProgressRisesThroughAllOfThem) {
  const SweptPath path = wandering_path(CutterProfile::ball(1.5), 1, 10, 0.1, 0.1, 0.0);
  Progress progress;
  double last = 0.0;
  int reports = 0;
  progress.report = [&](std::string_view, double fraction) {
    EXPECT_GE(fraction, last);
    last = fraction;
    ++reports;
  };
  FloorChart chart = square_chart(4.0, 0.05);
  EXPECT_TRUE(sweep_in_portions(chart, path, 1, progress, by(4)));
  EXPECT_DOUBLE_EQ(last, 1.0);
  EXPECT_GE(reports, 9); // three portions over three rows of tiles
}

TEST(FloorPortions, CancellingEndsTheSweepInAnyOfThem) {
  const SweptPath path = wandering_path(CutterProfile::ball(1.5), 1, 10, 0.1, 0.1, 0.0);
  Progress progress;
  double last = 0.0;
  progress.report = [&](std::string_view, double fraction) {
    last = fraction;
    if (fraction > 0.4)
      progress.cancel();
  };
  FloorChart chart = square_chart(4.0, 0.05);
  EXPECT_FALSE(sweep_in_portions(chart, path, 1, progress, by(4)));
  EXPECT_LT(last, 0.6);
}

// The bound for a path no longer grows once it fills a portion.
TEST(FloorPortions, MemoryIsBounded) {
  const double full = double(kFloorSweepPieces);
  EXPECT_LT(floor_sweep_bytes(0.5 * double(kFloorSweepStrokes)),
            floor_sweep_bytes(double(kFloorSweepStrokes)));
  EXPECT_LT(floor_sweep_bytes(0.5 * full), floor_sweep_bytes(full));
  EXPECT_EQ(floor_sweep_bytes(full), floor_sweep_bytes(100.0 * full));
}

} // namespace
} // namespace asperity::floor_test
