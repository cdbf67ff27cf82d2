// The map of local Ra, read in blocks, is the same as read from the whole chart at once.
#include "ra_map.h"

#include "bench.h"

#include "asperity/sweep/sweep_floor.h"
#include "asperity/sweep/sweep_wall.h"

#include <gtest/gtest.h>

#include <bit>

using namespace asperity;
using bench::Bench;

namespace {

void expect_same_map(const RaMap &a, const RaMap &b, std::size_t block_cells) {
  ASSERT_EQ(a.windows.size(), b.windows.size());
  EXPECT_EQ(a.columns, b.columns);
  EXPECT_EQ(a.closed, b.closed);
  for (std::size_t i = 0; i < a.windows.size(); ++i) {
    EXPECT_EQ(std::bit_cast<std::uint64_t>(a.windows[i].ra_um),
              std::bit_cast<std::uint64_t>(b.windows[i].ra_um))
        << "window " << i << ", blocks of " << block_cells;
    EXPECT_EQ(a.windows[i].roughest, b.windows[i].roughest) << i;
  }
}

void expect_blocks_to_agree(const Chart &chart, const TextureSource &source) {
  const RaMap whole = ra_map(chart, source, 1, std::numeric_limits<std::size_t>::max());
  ASSERT_GT(whole.rows, 4u);
  EXPECT_TRUE(roughest_window(whole)) << "nothing is cut";
  for (const std::size_t block_cells : {1u, 50u, 123u, 256u})
    expect_same_map(ra_map(chart, source, 2, block_cells), whole, block_cells);
}

} // namespace

TEST(RaMap, AFloorReadInBlocksIsTheFloorReadAtOnce) {
  Cutter ball = bench::plain_cutter(CutterKind::ball);
  Bench bench(ball);
  for (int i = -20; i <= 20; ++i) // scallops, and strips that no pass reaches
    bench.feed({-40, 0.4 * i, 0.02 * (i % 3)}, {40, 0.41 * i, 0.01}, {50, 30000});
  FloorChart chart = std::get<FloorChart>(bench.top_chart(0.1));
  ASSERT_TRUE(sweep_floor(chart, bench.swept, 1, Progress()));
  expect_blocks_to_agree(chart, bench.source());
}

TEST(RaMap, AWallReadInBlocksIsTheWallReadAtOnce) {
  Cutter ball = bench::plain_cutter(CutterKind::ball);
  Bench bench(ball);
  for (int i = 0; i < 12; ++i)
    bench.feed({-35, bench.beside_y_mm() + 0.003 * (i % 4), -10 + 0.7 * i},
               {35, bench.beside_y_mm(), -10 + 0.7 * i}, {50, 30000});
  const WallFeature &wall = bench.wall();
  WallChart chart =
      make_wall_chart(wall.outline, wall.side == Side::inside, wall.z_bottom_mm, wall.z_top_mm, 0.1);
  std::fill(chart.blank_mm.begin(), chart.blank_mm.end(), 1.0f);
  ASSERT_TRUE(sweep_wall(chart, bench.swept, 1, Progress()));
  expect_blocks_to_agree(chart, bench.source());
}
