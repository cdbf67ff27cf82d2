// What must hold whatever the path: splitting, order, threads, mirrors, ties.
#include "asperity/base/units.h"
#include "asperity/sweep/sweep_floor.h"

#include "sweep/changed_path.h"
#include "sweep/floor_jobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <utility>

namespace asperity::floor_test {
namespace {

constexpr double kPromised_mm = 1e-6;
/// Cells at the very rim are reached or not by rounding; no more than this part of them may differ.
constexpr double kRimShare = 1e-3;

void expect_same(const FloorChart &a, const FloorChart &b, const std::string &what) {
  ASSERT_EQ(a.envelope_mm.size(), b.envelope_mm.size());
  std::size_t at_rim = 0, reached = 0;
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell) {
    const float p = a.envelope_mm[cell], q = b.envelope_mm[cell];
    reached += std::isfinite(p);
    if (std::isinf(p) && std::isinf(q))
      continue;
    if (std::isinf(p) != std::isinf(q)) {
      ++at_rim;
      continue;
    }
    ASSERT_NEAR(double(p), double(q), kPromised_mm) << what << " at cell " << cell;
  }
  EXPECT_LE(double(at_rim), kRimShare * double(a.envelope_mm.size())) << what;
  EXPECT_GT(reached, 100u) << what;
}

FloorChart swept(const SweptPath &path, int threads = 2, double spacing_mm = 0.2) {
  FloorChart chart = square_chart(4.0, spacing_mm);
  sweep(chart, path, threads);
  return chart;
}

SweptPath unjoined(SweptPath path) {
  for (SweptPiece &piece : path.pieces)
    piece.joins_previous = false;
  return path;
}

TEST(FloorProperty, AMoveSplitInAThousandLeavesTheSame) {
  const Curve curves[] = {Curve::line({-1.7, -0.9, 0.1}, {1.4, 1.3, 0.9}),
                          Curve::line({-1.7, -0.9, 0.1}, {1.4, 1.3, 0.1}),
                          Curve::plan_arc({2.1, 0, 0.1}, {0, 2.1, 0.1}, {0, 0}, 0.5 * kPi),
                          Curve::plan_arc({2.1, 0, 0.5}, {-2.1, 0, 0.1}, {0, 0}, -kPi),
                          Curve::plan_arc({0.5, 0, 0.5}, {0.5, 0, 0.1}, {0, 0}, 2 * kPi)};
  for (const NamedProfile &cutter : all_profiles())
    for (const Curve &curve : curves) {
      SweptPath whole = path_with(cutter.profile), split = whole;
      add(whole, curve);
      for (int i = 0; i < 1000; ++i)
        add(split, curve.portion(i / 1000.0, (i + 1) / 1000.0), i > 0);
      expect_same(swept(whole), swept(split), cutter.name);
    }
}

TEST(FloorProperty, SharingCellsAmongJoinedPiecesChangesNothing) {
  unsigned number = 100;
  for (const double turn_rad : {0.01, 0.3, 0.9, 3.0})
    for (const double slope : {0.0, 0.05, 1.5})
      for (const NamedProfile &cutter : all_profiles()) {
        const SweptPath path =
            wandering_path(cutter.profile, number++, 50, turn_rad, slope, slope == 0.0 ? 0.0 : 0.01);
        expect_same(swept(path), swept(unjoined(path)), cutter.name);
      }
}

TEST(FloorProperty, BitsDoNotDependOnTheThreadCount) {
  const SweptPath path = wandering_path(CutterProfile::corner_radius(1.5, 0.3), 3, 200, 0.4, 0.2, 0.01);
  const FloorChart one = swept(path, 1, 0.05);
  for (const int threads : {0, 2, 5}) {
    const FloorChart other = swept(path, threads, 0.05);
    EXPECT_EQ(one.envelope_mm, other.envelope_mm);
    EXPECT_EQ(one.owner, other.owner);
  }
}

TEST(FloorProperty, OrderOfPiecesDoesNotMatter) {
  for (const NamedProfile &cutter : all_profiles()) {
    const SweptPath forwards = unjoined(wandering_path(cutter.profile, 9, 150, 0.5, 0.2, 0.01));
    SweptPath backwards = forwards;
    std::reverse(backwards.pieces.begin(), backwards.pieces.end());
    EXPECT_EQ(swept(forwards).envelope_mm, swept(backwards).envelope_mm) << cutter.name;
    EXPECT_EQ(swept(forwards).owner, swept(backwards).owner) << cutter.name;
  }
}

TEST(FloorProperty, MorePassesNeverRaiseTheFloor) {
  for (const NamedProfile &cutter : all_profiles()) {
    const SweptPath first = wandering_path(cutter.profile, 21, 60, 0.5, 0.2, 0.01);
    const SweptPath second = wandering_path(cutter.profile, 22, 60, 0.5, 0.2, 0.01);
    FloorChart chart = swept(first);
    const FloorChart before = chart;
    sweep(chart, second);
    std::size_t lowered = 0;
    for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell) {
      ASSERT_LE(chart.envelope_mm[cell], before.envelope_mm[cell]);
      lowered += chart.envelope_mm[cell] < before.envelope_mm[cell];
    }
    EXPECT_GT(lowered, 0u);
  }
}

TEST(FloorProperty, AMirroredPathLeavesAMirroredFloor) {
  for (const NamedProfile &cutter : all_profiles()) {
    const SweptPath path = wandering_path(cutter.profile, 31, 90, 0.5, 0.2, 0.01);
    const SweptPath mirrored = changed(path, [](BentPiece &piece) {
      for (Vec3 *p : {&piece.curve.begin, &piece.curve.end, &piece.curve.centre})
        p->x = -p->x;
      piece.curve.start_rad = kPi - piece.curve.start_rad;
      piece.curve.sweep_rad = -piece.curve.sweep_rad;
      for (AxisOffset *offset : {&piece.begin, &piece.end})
        for (std::size_t node = 0; node < kBendNodes; ++node) {
          std::swap(offset->left[node], offset->right[node]);
          offset->left[node].x = -offset->left[node].x;
          offset->right[node].x = -offset->right[node].x;
        }
    });
    FloorChart expected = swept(path);
    for (std::size_t j = 0; j < expected.ny; ++j)
      std::reverse(expected.envelope_mm.begin() + std::ptrdiff_t(j * expected.nx),
                   expected.envelope_mm.begin() + std::ptrdiff_t((j + 1) * expected.nx));
    expect_same(expected, swept(mirrored), cutter.name);
  }
}

TEST(FloorProperty, TheSmallestOwnerKeepsEqualDepths) {
  for (const NamedProfile &cutter : all_profiles())
    for (const bool swapped : {false, true}) {
      SweptPath path = path_with(cutter.profile);
      for (int i = 0; i < 3; ++i)
        add(path, Curve::line({-2, 0, 0}, {2, 0, 0}));
      path.pieces[0].owner = swapped ? 4 : 9;
      path.pieces[1].owner = swapped ? 9 : 4;
      path.pieces[2].owner = 6;
      const FloorChart chart = swept(path);
      for (std::size_t cell = 0; cell < chart.owner.size(); ++cell)
        ASSERT_EQ(chart.owner[cell], std::isinf(chart.envelope_mm[cell]) ? kNobody : 4u) << cutter.name;
    }
}

TEST(FloorProperty, ALaterSweepMayBringASmallerOwner) {
  for (const NamedProfile &cutter : all_profiles()) {
    SweptPath path = path_with(cutter.profile);
    add(path, Curve::line({-2, 0, 0}, {2, 0, 0}));
    path.pieces[0].owner = 9;
    FloorChart chart = swept(path);
    path.pieces[0].owner = 4;
    sweep(chart, path);
    EXPECT_EQ(std::count(chart.owner.begin(), chart.owner.end(), 9u), 0) << cutter.name;
  }
}

TEST(FloorProperty, TheFirstOfManyLevelMovesOwnsWhatItsFlatTipReached) {
  const CutterProfile flat = CutterProfile::flat(1.5);
  SweptPath path = path_with(flat);
  for (int i = 0; i < 100; ++i)
    add(path, Curve::line({-3 + 0.06 * i, 0, 0}, {-3 + 0.06 * (i + 1), 0, 0}), i > 0);
  const FloorChart chart = swept(path);
  for (std::size_t cell = 0; cell < chart.owner.size(); ++cell) {
    if (std::isinf(chart.envelope_mm[cell]))
      continue;
    // The first piece whose end comes within a radius of the cell.
    const double x = chart.x_mm(cell % chart.nx), y = chart.y_mm(cell / chart.nx);
    const double enters = x - std::sqrt(std::max(0.0, 2.25 - y * y));
    const double first = std::clamp(std::ceil((enters + 3.0) / 0.06) - 1.0, 0.0, 99.0);
    if (std::abs((enters + 3.0) / 0.06 - std::round((enters + 3.0) / 0.06)) > 1e-6) {
      ASSERT_EQ(double(chart.owner[cell]), first) << x << " " << y;
    }
  }
}

TEST(FloorProperty, PassesElsewhereChangeNothing) {
  SweptPath path = path_with(CutterProfile::ball(1.5));
  add(path, Curve::line({100, 100, 0}, {200, 100, 0}));
  add(path, Curve::plan_arc({-1e4, 0, 0}, {-1e4, 0, 0}, {-1e4 - 5, 0}, 2 * kPi));
  const FloorChart chart = swept(path);
  EXPECT_TRUE(
      std::all_of(chart.owner.begin(), chart.owner.end(), [](std::uint32_t o) { return o == kNobody; }));
}

TEST(FloorProperty, AnEmptyPathChangesNothing) {
  FloorChart chart = square_chart(1.0);
  EXPECT_TRUE(sweep_floor(chart, SweptPath(), 2, Progress()));
  EXPECT_EQ(chart.owner[0], kNobody);
}

TEST(FloorProperty, ACancelledSweepSaysSo) {
  Progress progress;
  progress.cancel();
  FloorChart chart = square_chart(1.0);
  EXPECT_FALSE(
      sweep_floor(chart, wandering_path(CutterProfile::ball(1.5), 1, 10, 0.1, 0.1, 0.0), 2, progress));
}

TEST(FloorProperty, ProgressRisesToTheEnd) {
  Progress progress;
  double last = 0.0;
  progress.report = [&](std::string_view, double fraction) {
    EXPECT_GE(fraction, last);
    last = fraction;
  };
  FloorChart chart = square_chart(4.0, 0.02);
  EXPECT_TRUE(
      sweep_floor(chart, wandering_path(CutterProfile::ball(1.5), 1, 10, 0.1, 0.1, 0.0), 1, progress));
  EXPECT_EQ(last, 1.0);
}

} // namespace
} // namespace asperity::floor_test
