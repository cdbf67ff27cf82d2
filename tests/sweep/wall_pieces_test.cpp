// Pieces that come nowhere near a wall are not laid out, and leave it as it is.
#include "sweep/sweep_wall_pieces.h"

#include "wall_jobs.h"

#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace asperity::wall_test {

namespace {

const WallChart &boss() {
  static const WallChart chart = chart_of(WallKind::boss, 0.07, 0.4f);
  return chart;
}

std::vector<std::uint32_t> pieces_about_boss(const SweptPath &path, int threads) {
  const std::vector<WallElement> elements = wall_elements_of(boss());
  const double e_most_mm = 0.45;
  return pieces_about({elements, e_most_mm, boss().z_mm.front(), boss().z_mm.back()}, path,
                      {0, path.pieces.size(), path.pieces.size()}, wall_cutters_of(path), threads);
}

double highest_mm() { return boss().z_mm.back(); }

/// Straight to and fro at this height, far enough to pass the boss on either side, in short pieces.
SweptPath raster_at(double z_mm) {
  PathMaker maker(cutter_of(CutterShape::flat));
  maker.start({-40.0, -40.0, z_mm});
  for (int line = 0; line <= 40; ++line) {
    const double y = -40.0 + 2.0 * line, turn = line % 2 == 0 ? 1.0 : -1.0;
    for (int k = 0; k <= 40; ++k)
      maker.line_to({turn * (-40.0 + 2.0 * k), y, z_mm});
  }
  return maker.path();
}

} // namespace

TEST(WallPieces, AboveTheWallNoneIsNeeded) {
  EXPECT_TRUE(pieces_about_boss(raster_at(highest_mm() + 0.01), 1).empty());
  EXPECT_FALSE(pieces_about_boss(raster_at(highest_mm() - 0.01), 1).empty());
}

TEST(WallPieces, AreThoseThatComeNearAndTheirNeighbours) {
  // A disc of the cutter's radius about a point of the piece meets the wall's ring, or the piece is next to
  // one of which that is true. [plane geometry; the distance to a circle is that to its centre less its
  // radius]
  const SweptPath path = raster_at(highest_mm() - 1.0);
  const double radius_mm = path.cutters[0].profile.radius_mm(), ring_mm = glm::length(boss().foot[0]);
  std::vector<char> is_near(path.pieces.size(), 0);
  for (std::size_t i = 0; i < path.pieces.size(); ++i)
    for (int k = 0; k <= 20; ++k) {
      const Vec2 p = plan(path.pieces[i].begin + 0.05 * k * (path.pieces[i].end - path.pieces[i].begin));
      if (std::abs(glm::length(p) - ring_mm) <= radius_mm + 0.4)
        is_near[i] = 1;
    }
  const std::vector<std::uint32_t> needed = pieces_about_boss(path, 2);
  EXPECT_EQ(needed, pieces_about_boss(path, 1));
  EXPECT_TRUE(std::is_sorted(needed.begin(), needed.end()));
  EXPECT_LT(needed.size(), path.pieces.size() * 2 / 3);
  for (std::uint32_t i = 0; i < path.pieces.size(); ++i)
    for (std::uint32_t k = i > 0 ? i - 1 : 0; k <= i + 1 && k < path.pieces.size(); ++k)
      if (is_near[k]) {
        EXPECT_TRUE(std::binary_search(needed.begin(), needed.end(), i)) << i;
      }
}

TEST(WallPieces, FarPiecesBetweenLapsChangeNoBit) {
  for (const WallKind kind : kWallKinds)
    for (const CutterShape shape : kCutterShapes) {
      const SweptPath lap = lap_of(kind, shape, -0.3, -1.2, 0.02, 0.01, 7);
      const SweptPath again = lap_of(kind, shape, -1.2, -1.2, 0.01, 0.01, 8);
      SweptPath with_far = lap, without = lap;
      const auto append = [](SweptPath &to, const SweptPath &from) {
        for (const SweptPiece &piece : from.pieces) {
          BentPiece bent = from.bent(piece);
          bent.owner += 1000;
          to.add(bent);
        }
      };
      BentPiece far = lap.bent(lap.pieces.back());
      far.curve = Curve::line({500.0, 0.0, -1.0}, {500.0, 1.0, -1.0});
      far.joins_previous = false;
      for (int k = 0; k < 5; ++k)
        with_far.add(far);
      append(with_far, again);
      append(without, again);
      WallChart a = chart_of(kind, 0.09, 0.4f), b = a;
      ASSERT_TRUE(sweep_wall(a, with_far, 1, Progress()));
      ASSERT_TRUE(sweep_wall(b, without, 1, Progress()));
      EXPECT_EQ(a.envelope_mm, b.envelope_mm) << name_of(kind) << ", " << name_of(shape);
    }
}

} // namespace asperity::wall_test
