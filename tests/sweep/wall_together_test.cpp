// Laps of many short strokes under a cutter that leans more and less as it goes: neighbouring rows are cut by
// them together.
#include "sweep/changed_path.h"
#include "wall_jobs.h"
#include "wall_reference.h"

#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace asperity::wall_test {

namespace {

// As in the other comparisons with brute force: 10 nm wanted, far less seen.
constexpr double kExact_mm = 1e-6;
constexpr double kStroke_mm = 0.35;

enum class Way { chords, arcs, ramps };
constexpr Way kWays[] = {Way::chords, Way::arcs, Way::ramps};

/// Two laps, one below the other. Offsets wander by a fifth of a micrometre a stroke, heights by a tenth of a
/// nanometre, as forces make them do.
SweptPath laps_of(WallKind kind, CutterShape shape, Way way, unsigned seed) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> draw(-1.0, 1.0);
  PathMaker maker(cutter_of(shape));
  bool is_first = true;
  for (const double z : {1.21, -1.43}) {
    const double fall = way == Way::ramps ? 0.9 : 0.0;
    const SweptPath lap = lap_of(kind, shape, z, z - fall, 0.02, 0.0, seed);
    for (const SweptPiece &piece : lap.pieces) {
      const Curve curve = lap.curve(piece);
      if (is_first)
        maker.start(curve.begin);
      is_first = false;
      const bool is_plunge = plan(curve.end) == plan(curve.begin);
      const int count = is_plunge ? 1 : static_cast<int>(std::ceil(curve.length_mm() / kStroke_mm));
      for (int i = 0; i < count; ++i)
        if (way == Way::chords)
          maker.line_to(curve.point(double(i + 1) / count));
        else
          maker.curve(curve.portion(double(i) / count, double(i + 1) / count));
    }
  }
  Vec2 left(0.004, 0.001), right(0.003, 0.002);
  const auto offset = [&] {
    AxisOffset at;
    left += 2e-4 * Vec2(draw(random), draw(random));
    right += 2e-4 * Vec2(draw(random), draw(random));
    for (std::size_t i = 0; i < kBendNodes; ++i) {
      at.left[i] = (1.0 - 0.12 * double(i)) * left;
      at.right[i] = (1.0 - 0.12 * double(i)) * right;
    }
    at.axial_mm = 1e-7 * draw(random);
    return at;
  };
  AxisOffset at = offset();
  return changed(maker.path(), [&](BentPiece &piece) {
    piece.begin = at;
    at = offset();
    piece.end = at;
  });
}

template <class Check> void for_every_wall(const Check &check) {
  unsigned seed = 300;
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : {CutterShape::flat, CutterShape::corner_radius})
      for (const Way way : kWays) {
        const SweptPath path = laps_of(kind, shape, way, ++seed);
        check(kind, path, name_of(kind) + ", " + name_of(shape) + ", seed " + std::to_string(seed));
      }
}

WallChart swept(WallChart chart, const SweptPath &path) {
  Progress progress;
  EXPECT_TRUE(sweep_wall(chart, path, 1, progress));
  return chart;
}

} // namespace

TEST(WallCutTogether, MatchesBruteForce) {
  for_every_wall([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart chart = swept(chart_of(kind, 0.07, 0.4f), path);
    const double highest = chart.blank_mm[0] + 0.05;
    std::mt19937 random(17);
    for (int i = 0; i < 25; ++i) {
      const std::size_t column = random() % chart.columns(), row = random() % chart.rows();
      const double expected = std::min(highest, reference_e_mm(chart, path, column, row));
      const double got = std::min(highest, double(chart.envelope_mm[chart.at(column, row)]));
      EXPECT_NEAR(got, expected, kExact_mm) << what << ", column " << column << ", z " << chart.z_mm[row];
    }
  });
}

TEST(WallCutTogether, ARowDoesNotDependOnItsNeighbours) {
  for_every_wall([](WallKind kind, const SweptPath &path, const std::string &what) {
    const WallChart all = swept(chart_of(kind, 0.07, 0.4f), path);
    for (const std::size_t row : {std::size_t{3}, all.rows() / 3, all.rows() / 2, all.rows() - 2}) {
      WallChart one = make_wall_chart(outline_of(kind), is_inside(kind), all.s_mm, {all.z_mm[row]});
      std::fill(one.blank_mm.begin(), one.blank_mm.end(), all.blank_mm[0]);
      one = swept(one, path);
      for (std::size_t i = 0; i < all.columns(); ++i) {
        ASSERT_EQ(one.envelope_mm[i], all.envelope_mm[all.at(i, row)]) << what << ", column " << i;
        ASSERT_EQ(one.owner[i], all.owner[all.at(i, row)]) << what << ", column " << i;
      }
    }
  });
}

} // namespace asperity::wall_test
