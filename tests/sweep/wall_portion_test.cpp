// Long paths are swept in portions: the same wall as in one go, wherever the path is cut.
#include "sweep/sweep_in_portions.h"

#include "wall_jobs.h"
#include "wall_reference.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace asperity::wall_test {

namespace {

/// Wanted: a tenth of a nanometre. Floats lose as much at 1 mm.
constexpr double kSame_mm = 1e-7;
/// What the slow search may be wrong by on walls followed level.
constexpr double kSearched_mm = 1e-6;
/// Of steep cutters at grazing contact, where a nanometre along the path is many across it.
constexpr double kWild_mm = 1e-3;

WallChart swept(WallChart chart, const SweptPath &path, std::size_t pieces, int threads = 2) {
  EXPECT_TRUE(sweep_in_portions(chart, path, threads, Progress(), pieces));
  return chart;
}

double wanted(const WallChart &chart, std::size_t cell) {
  return std::min(double(chart.envelope_mm[cell]), chart.blank_mm[0] + 0.05);
}

/// What the pieces of one owner leave of a cell, whatever the others do.
double e_by_owner(const WallChart &chart, const SweptPath &path, std::size_t cell) {
  SweptPath alone = path;
  std::erase_if(alone.pieces, [&](const SweptPiece &piece) { return piece.owner != chart.owner[cell]; });
  return reference_e_mm(chart, alone, cell % chart.columns(), cell / chart.columns());
}

/// Owners may differ where both leave the same.
void expect_same(const WallChart &whole, const WallChart &parts, const SweptPath &path, double searched_mm,
                 const std::string &what) {
  double worst = 0.0;
  for (std::size_t cell = 0; cell < whole.envelope_mm.size(); ++cell) {
    worst = std::max(worst, std::abs(wanted(whole, cell) - wanted(parts, cell)));
    if (whole.owner[cell] != parts.owner[cell] && wanted(whole, cell) <= double(whole.blank_mm[0])) {
      ASSERT_NEAR(e_by_owner(parts, path, cell), wanted(whole, cell), searched_mm) << what;
    }
  }
  EXPECT_LE(worst, kSame_mm) << what;
}

SweptPath lap(WallKind kind, CutterShape shape, unsigned seed) {
  return split(lap_of(kind, shape, seed % 2 == 0 ? -2.0 : 1.0, -2.0, 0.01, 0.02, seed), 3);
}

} // namespace

TEST(WallPortions, LapsLeaveTheSameWall) {
  unsigned seed = 100;
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : kCutterShapes) {
      const SweptPath path = lap(kind, shape, ++seed);
      const WallChart fresh = chart_of(kind, 0.1, 0.4f), whole = swept(fresh, path, path.pieces.size());
      for (const std::size_t pieces : {1u, 2u, 7u})
        expect_same(whole, swept(fresh, path, pieces), path, kSearched_mm,
                    name_of(kind) + ", " + name_of(shape) + " by " + std::to_string(pieces));
    }
}

TEST(WallPortions, WildPathsLeaveTheSameWall) {
  unsigned seed = 900;
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : kCutterShapes) {
      const SweptPath path = wild_path_of(kind, shape, 0.02, ++seed);
      const WallChart fresh = chart_of(kind, 0.1, 0.4f), whole = swept(fresh, path, path.pieces.size());
      for (const std::size_t pieces : {1u, 3u})
        expect_same(whole, swept(fresh, path, pieces), path, kWild_mm,
                    name_of(kind) + ", " + name_of(shape) + " by " + std::to_string(pieces));
    }
}

TEST(WallPortions, LapsMatchBruteForce) {
  unsigned seed = 130;
  std::mt19937 random(3);
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : kCutterShapes) {
      const SweptPath path = lap(kind, shape, ++seed);
      const WallChart chart = swept(chart_of(kind, 0.1, 0.4f), path, 2);
      for (int i = 0; i < 15; ++i) {
        const std::size_t column = random() % chart.columns(), row = random() % chart.rows();
        const double expected = std::min(reference_e_mm(chart, path, column, row), chart.blank_mm[0] + 0.05);
        EXPECT_NEAR(wanted(chart, chart.at(column, row)), expected, kSearched_mm)
            << name_of(kind) << ", " << name_of(shape);
      }
    }
}

TEST(WallPortions, BitsDependNeitherOnThreadsNorOnRoomLeft) {
  const SweptPath path = lap(WallKind::free_inside, CutterShape::corner_radius, 5);
  const WallChart fresh = chart_of(WallKind::free_inside, 0.1, 0.4f);
  const WallChart one = swept(fresh, path, 4, 1), three = swept(fresh, path, 4, 3);
  EXPECT_EQ(one.envelope_mm, three.envelope_mm);
  EXPECT_EQ(one.owner, three.owner);
  const WallChart just = swept(fresh, path, path.pieces.size()), ample = swept(fresh, path, 1000);
  EXPECT_EQ(just.envelope_mm, ample.envelope_mm);
  EXPECT_EQ(just.owner, ample.owner);
}

TEST(WallPortions, ProgressRisesThroughAllOfThemUntilCancelled) {
  const SweptPath path = lap(WallKind::boss, CutterShape::flat, 5);
  for (const double enough : {0.6, 2.0}) {
    Progress progress;
    double last = 0.0;
    progress.report = [&](std::string_view, double fraction) {
      EXPECT_GE(fraction, last);
      last = fraction;
      if (fraction > enough)
        progress.cancel();
    };
    WallChart chart = chart_of(WallKind::boss, 0.1, 0.4f);
    EXPECT_EQ(sweep_in_portions(chart, path, 1, progress, 3), enough > 1.0);
    EXPECT_NEAR(last, std::min(enough, 1.0), 0.1);
  }
}

// The bound for a path no longer grows once it fills a portion.
TEST(WallPortions, MemoryIsBounded) {
  const double full = double(kWallSweepPieces);
  EXPECT_LT(wall_sweep_bytes(0.5 * full), wall_sweep_bytes(full));
  EXPECT_EQ(wall_sweep_bytes(full), wall_sweep_bytes(100.0 * full));
}

} // namespace asperity::wall_test
