// Things always true of a swept wall: order, repetition, mirror, splitting and threads do not matter.
#include "sweep/changed_path.h"
#include "wall_jobs.h"

#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstring>

namespace asperity::wall_test {

namespace {

// Splitting changes where rounding falls and nothing else; a float32 step at 0.5 mm is 0.06 nm.
constexpr double kNanometre_mm = 1e-6;

WallChart swept(WallChart chart, const SweptPath &path, int threads = 2) {
  Progress progress;
  EXPECT_TRUE(sweep_wall(chart, path, threads, progress));
  return chart;
}

double above_band(const WallChart &chart, float e) {
  return std::min(static_cast<double>(e), chart.blank_mm[0] + 0.05);
}

void expect_alike(const WallChart &a, const WallChart &b, double within_mm, const std::string &what) {
  double worst = 0.0;
  for (std::size_t cell = 0; cell < a.envelope_mm.size(); ++cell)
    worst =
        std::max(worst, std::abs(above_band(a, a.envelope_mm[cell]) - above_band(b, b.envelope_mm[cell])));
  EXPECT_LE(worst, within_mm) << what;
}

template <class Check> void for_every_job(const Check &check) {
  unsigned seed = 100;
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : kCutterShapes) {
      ++seed;
      check(kind, lap_of(kind, shape, seed % 2 == 0 ? -2.0 : 1.0, -2.0, 0.01, 0.02, seed),
            name_of(kind) + ", " + name_of(shape));
    }
}

} // namespace

TEST(SweepWallProperty, OrderOfPiecesDoesNotMatter) {
  for_every_job([](WallKind kind, SweptPath path, const std::string &what) {
    const WallChart chart = chart_of(kind, 0.1, 0.4f);
    const WallChart in_order = swept(chart, path);
    std::mt19937 random(5);
    std::shuffle(path.pieces.begin(), path.pieces.end(), random);
    for (SweptPiece &piece : path.pieces)
      piece.joins_previous = false;
    expect_alike(in_order, swept(chart, path), kNanometre_mm, what);
  });
}

TEST(SweepWallProperty, MorePassesNeverRaiseTheWall) {
  for_every_job([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart once = swept(chart_of(kind, 0.1, 0.4f), path);
    const WallChart twice = swept(once, lap_of(kind, CutterShape::flat, -1.0, -1.0, 0.0, 0.03, 77));
    for (std::size_t cell = 0; cell < once.envelope_mm.size(); ++cell)
      ASSERT_LE(twice.envelope_mm[cell], once.envelope_mm[cell]) << what;
  });
}

TEST(SweepWallProperty, SweepingTwiceChangesNothing) {
  for_every_job([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart once = swept(chart_of(kind, 0.1, 0.4f), path);
    const WallChart twice = swept(once, path);
    EXPECT_EQ(once.envelope_mm, twice.envelope_mm) << what;
    EXPECT_EQ(once.owner, twice.owner) << what;
  });
}

TEST(SweepWallProperty, PiecesSplitInManyGiveTheSameWall) {
  for_every_job([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart chart = chart_of(kind, 0.25, 0.4f);
    expect_alike(swept(chart, path), swept(chart, split(path, 40)), kNanometre_mm, what);
  });
}

TEST(SweepWallProperty, ALapSplitInAThousandGivesTheSameWall) {
  const SweptPath path = lap_of(WallKind::boss, CutterShape::corner_radius, -1.0, -2.0, 0.01, 0.02, 9);
  const WallChart chart = chart_of(WallKind::boss, 0.25, 0.4f);
  expect_alike(swept(chart, path), swept(chart, split(path, 1000)), kNanometre_mm, "boss");
}

TEST(SweepWallProperty, ResultBitsDoNotDependOnThreads) {
  for_every_job([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart chart = chart_of(kind, 0.1, 0.4f);
    const WallChart one = swept(chart, path, 1);
    for (const int threads : {2, 7}) {
      const WallChart many = swept(chart, path, threads);
      EXPECT_EQ(0, std::memcmp(one.envelope_mm.data(), many.envelope_mm.data(),
                               one.envelope_mm.size() * sizeof(float)))
          << what;
      EXPECT_EQ(one.owner, many.owner) << what;
    }
  });
}

// Mirror the job in the y axis: left becomes right, the outline runs the other way, the wall is the same.
TEST(SweepWallProperty, MirroredJobCutsAMirroredWall) {
  const SweptPath path = lap_of(WallKind::rectangle_outside, CutterShape::ball, 0.5, -2.0, 0.01, 0.02, 3);
  const Outline outline = Outline::rounded_rectangle({0, 0}, 12.0, 8.0, 1.0);
  const SweptPath moved = changed(path, [](BentPiece &piece) {
    piece.curve = piece.curve.moved_by({-1, 0, 0});
  });
  const auto flip = [](Vec3 p) { return Vec3(-p.x, p.y, p.z); };
  const SweptPath mirrored = changed(moved, [&](BentPiece &piece) {
    const Curve c = piece.curve;
    piece.curve = c.is_line()
                      ? Curve::line(flip(c.begin), flip(c.end))
                      : Curve::plan_arc(flip(c.begin), flip(c.end), plan(flip(c.centre)), -c.sweep_rad);
    for (AxisOffset *offset : {&piece.begin, &piece.end}) {
      std::swap(offset->left, offset->right);
      for (std::size_t i = 0; i < kBendNodes; ++i) {
        offset->left[i].x *= -1;
        offset->right[i].x *= -1;
      }
    }
  });

  // Under the mirror s goes to s_flip - s, where s_flip is the place of the outline's mirrored start.
  double s_flip = 0.0;
  for (std::size_t i = 0; i < outline.elements().size(); ++i)
    if (glm::length(outline.elements()[i].begin * Vec2(-1, 1) - outline.point(0.0)) < 1e-9)
      s_flip = outline.element_start_mm(i);
  WallChart chart = make_wall_chart(outline, false, -3.0, 3.0, 0.05);
  std::vector<double> s_mirrored;
  for (const double s : chart.s_mm)
    s_mirrored.push_back(std::fmod(s_flip - s + outline.length_mm(), outline.length_mm()));
  std::vector<double> s_sorted = s_mirrored;
  std::sort(s_sorted.begin(), s_sorted.end());
  WallChart other = make_wall_chart(outline, false, s_sorted, chart.z_mm);
  for (WallChart *each : {&chart, &other})
    std::fill(each->blank_mm.begin(), each->blank_mm.end(), 0.4f);
  const WallChart a = swept(chart, moved), b = swept(other, mirrored);
  for (std::size_t i = 0; i < a.columns(); ++i) {
    const auto k = static_cast<std::size_t>(std::find(s_sorted.begin(), s_sorted.end(), s_mirrored[i]) -
                                            s_sorted.begin());
    ASSERT_LT(glm::length(a.foot[i] - Vec2(-b.foot[k].x, b.foot[k].y)), 1e-9);
    for (std::size_t row = 0; row < a.rows(); ++row)
      ASSERT_NEAR(above_band(a, a.envelope_mm[a.at(i, row)]), above_band(b, b.envelope_mm[b.at(k, row)]),
                  kNanometre_mm);
  }
}

} // namespace asperity::wall_test
