// A finishing lap hides the roughing laps before it: they are left out, and the wall is the same.
#include "sweep/sweep_wall_hidden.h"

#include "sweep/changed_path.h"
#include "wall_jobs.h"
#include "wall_reference.h"

#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace asperity::wall_test {

namespace {

// As in the other comparisons with brute force: 10 nm wanted, far less seen.
constexpr double kExact_mm = 1e-6;
constexpr double kAllowance_mm = 0.3;

/// Roughing laps at two levels, then a finishing lap at the full depth; offsets up to 10 um.
SweptPath roughed_and_finished(WallKind kind, unsigned seed) {
  SweptPath path = lap_of(kind, CutterShape::flat, 1.3, 1.3, kAllowance_mm, 0.01, seed);
  for (const auto &[z, clearance] : {std::pair(-0.4, kAllowance_mm), std::pair(-1.6, 0.0)}) {
    const SweptPath lap = lap_of(kind, CutterShape::flat, z, z, clearance, 0.01, ++seed);
    const auto owners = static_cast<std::uint32_t>(path.pieces.size());
    for (const SweptPiece &piece : lap.pieces) {
      BentPiece bent = lap.bent(piece);
      bent.owner += owners;
      path.add(bent);
    }
  }
  return path;
}

WallPlan plan_of(const WallChart &chart, const SweptPath &path) {
  return plan_wall(chart, path, {0, path.pieces.size(), path.pieces.size()}, ColumnFinder(chart), 1);
}

} // namespace

TEST(WallHidden, RoughingLapsWaitAndFinishingLapsGoFirst) {
  for (const WallKind kind : kWallKinds) {
    const SweptPath path = roughed_and_finished(kind, 40);
    const WallChart chart = chart_of(kind, 0.07, 0.4f);
    const WallPlan plan = plan_of(chart, path);
    EXPECT_TRUE(plan.others_wait) << name_of(kind);
    ASSERT_FALSE(plan.first.empty()) << name_of(kind);
    std::size_t roughing = 0, roughing_first = 0, finishing = 0, finishing_first = 0;
    for (std::size_t i = 0; i < plan.strokes.size(); ++i)
      for (const WallSide side : kWallSides) {
        if (plan.spans_of(i, side).empty())
          continue;
        const bool is_finishing = plan.strokes[i].z_begin_mm < -1.5;
        const bool is_first = plan.reaches[i].goes_first[static_cast<std::size_t>(side)];
        ++(is_finishing ? finishing : roughing);
        (is_finishing ? finishing_first : roughing_first) += is_first ? 1 : 0;
      }
    EXPECT_EQ(finishing_first, finishing) << name_of(kind);
    // A lap round a corner comes too near its sides, as boxes see it.
    const bool is_round = kind == WallKind::boss || kind == WallKind::bore;
    EXPECT_LE(roughing_first, is_round ? 0 : roughing * 2 / 3) << name_of(kind) << " of " << roughing;
  }
}

TEST(WallHidden, TheLeastEntryIsThatOfALapBesideTheWall) {
  // The contact of a concentric lap lies everywhere at its clearance. [plane geometry]
  for (const WallKind kind : {WallKind::boss, WallKind::bore}) {
    const SweptPath path = lap_of(kind, CutterShape::flat, -1.0, -1.0, kAllowance_mm, 0.0, 1);
    const WallChart chart = chart_of(kind, 0.07, 0.4f);
    const WallPlan plan = plan_of(chart, path);
    std::size_t seen = 0;
    for (std::size_t i = 0; i < plan.strokes.size(); ++i) {
      if (!plan.strokes[i].is_arc ||
          (plan.spans_of(i, WallSide::left).empty() && plan.spans_of(i, WallSide::right).empty()))
        continue;
      ++seen;
      EXPECT_NEAR(plan.reaches[i].least_mm, kAllowance_mm, 2e-6) << name_of(kind);
    }
    EXPECT_GT(seen, 10u) << name_of(kind);
  }
}

TEST(WallHidden, MatchesBruteForce) {
  unsigned seed = 60;
  for (const WallKind kind : kWallKinds) {
    const SweptPath path = roughed_and_finished(kind, ++seed);
    WallChart chart = chart_of(kind, 0.07, 0.4f);
    ASSERT_TRUE(sweep_wall(chart, path, 1, Progress()));
    const double highest = chart.blank_mm[0] + 0.05;
    std::mt19937 random(seed);
    for (int i = 0; i < 60; ++i) {
      const std::size_t column = random() % chart.columns(), row = random() % chart.rows();
      const double expected = std::min(highest, reference_e_mm(chart, path, column, row));
      const double got = std::min(highest, double(chart.envelope_mm[chart.at(column, row)]));
      EXPECT_NEAR(got, expected, kExact_mm) << name_of(kind) << ", column " << column << ", row " << row;
    }
  }
}

TEST(WallHidden, RoughingFirstOrLastLeavesTheSame) {
  // As the lowest of all passes does not depend on their order. [definition of the envelope]
  unsigned seed = 80;
  for (const WallKind kind : kWallKinds) {
    const SweptPath path = roughed_and_finished(kind, ++seed);
    SweptPath turned;
    turned.cutters = path.cutters;
    const std::size_t finishing =
        static_cast<std::size_t>(std::find_if(path.pieces.begin(), path.pieces.end(),
                                              [](const SweptPiece &p) { return p.end.z < -1.5; }) -
                                 path.pieces.begin());
    for (std::size_t i = 0; i < path.pieces.size(); ++i)
      turned.add(path.bent(path.pieces[(finishing + i) % path.pieces.size()]));
    for (SweptPiece &piece : turned.pieces)
      piece.joins_previous = piece.joins_previous && &piece != turned.pieces.data();
    WallChart a = chart_of(kind, 0.07, 0.4f), b = a;
    ASSERT_TRUE(sweep_wall(a, path, 1, Progress()));
    ASSERT_TRUE(sweep_wall(b, turned, 2, Progress()));
    for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell)
      if (a.envelope_mm[cell] < a.blank_mm[cell]) {
        ASSERT_EQ(a.envelope_mm[cell], b.envelope_mm[cell]) << name_of(kind) << ", cell " << cell;
        ASSERT_EQ(a.owner[cell], b.owner[cell]) << name_of(kind) << ", cell " << cell;
      }
  }
}

} // namespace asperity::wall_test
