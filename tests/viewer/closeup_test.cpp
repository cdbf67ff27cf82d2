// The flat sheet under a loupe: laid only where it is needed, sharp, in the sheet's own places.
#include "closeup.h"
#include "small_outcome.h"

#include <cmath>

using namespace asperity;
using namespace asperity::test_support;

namespace {

constexpr PictureSize kSize{400, 120};

SheetView view_at(double mm_per_px) { return {.centre_mm = {20.0, 2.0}, .mm_per_px = mm_per_px}; }

} // namespace

TEST(CloseupAsk, IsMadeOnlyWhereThePixelsAreFinerThanTheChart) {
  const Outcome &outcome = *bush_result()->outcome; // a chart of 0.1 mm cells
  EXPECT_FALSE(closeup_ask(outcome, 0, view_at(0.1), kSize));
  const auto ask = closeup_ask(outcome, 0, view_at(0.01), kSize);
  ASSERT_TRUE(ask);
  EXPECT_DOUBLE_EQ(ask->spacing_mm, 0.01);
  EXPECT_LT(ask->box.low_mm.x, 18.0) << "the view and a margin";
  EXPECT_GE(ask->box.low_mm.y, 0.0) << "not beyond the sheet";
  EXPECT_FALSE(closeup_ask(outcome, 7, view_at(0.01), kSize)) << "there is no such feature";
}

TEST(Closeup, ShowsTheToothMarksThatTheChartDoesNot) {
  // 900 mm/min at 18000 rpm: 0.05 mm a turn. Across one row single marks rise and fall many times.
  const auto outcome = bush_result()->outcome;
  const auto ask = closeup_ask(*outcome, 0, view_at(0.005), kSize);
  ASSERT_TRUE(ask);
  const auto closeup = lay_closeup(outcome, *ask, 0, {});
  ASSERT_TRUE(closeup);
  const auto &chart = std::get<FloorChart>(closeup->sheet->charts[0]);
  int turns = 0;
  for (std::size_t i = 1; i + 1 < chart.nx; ++i) {
    const auto at = [&](std::size_t k) { return chart.envelope_mm[chart.at(k, chart.ny / 2)]; };
    turns += at(i) > at(i - 1) && at(i) >= at(i + 1) ? 1 : 0;
  }
  const double length_mm = chart.spacing_mm * static_cast<double>(chart.nx);
  // At least one ridge a turn; at most one for each of two teeth on each of the two levels that come by here.
  EXPECT_GE(turns, 0.9 * length_mm / 0.05);
  EXPECT_LE(turns, 4.0 * length_mm / 0.05);
  EXPECT_TRUE(serves(*closeup, *outcome, *ask));
  const auto elsewhere = closeup_ask(*outcome, 0, {.centre_mm = {40.0, 2.0}, .mm_per_px = 0.005}, kSize);
  EXPECT_FALSE(serves(*closeup, *outcome, *elsewhere));
}

TEST(Closeup, LiesWhereTheChartLies) {
  // Mean of the cells under one chart cell against that cell: the marks are under a tenth of a micrometre
  // high, and hang above the smooth sweep of the longest tooth.
  constexpr double kMarks_um = 0.2;
  const auto outcome = bush_result()->outcome;
  const auto closeup = lay_closeup(outcome, *closeup_ask(*outcome, 0, view_at(0.01), kSize), 0, {});
  ASSERT_TRUE(closeup);
  const auto &fine = std::get<FloorChart>(closeup->sheet->charts[0]);
  const auto &wall = std::get<WallChart>(outcome->charts[0]);
  const double seam = seam_mm(*outcome, 0), length = wall.outline.length_mm();
  for (std::size_t i = 10; i < fine.nx; i += 40) {
    const double s = std::fmod(fine.x_mm(i) + seam, length);
    const auto column = static_cast<std::size_t>(s / length * static_cast<double>(wall.columns()));
    const auto row =
        static_cast<std::size_t>(fine.y_mm(fine.ny / 2) / 4.0 * static_cast<double>(wall.rows()));
    EXPECT_NEAR(1e3 * fine.residual_mm(fine.at(i, fine.ny / 2)), 1e3 * wall.residual_mm(wall.at(column, row)),
                kMarks_um);
  }
}

TEST(Closeup, AStoppedOneBringsNothing) {
  Progress progress;
  progress.cancel();
  const auto outcome = bush_result()->outcome;
  EXPECT_FALSE(lay_closeup(outcome, *closeup_ask(*outcome, 0, view_at(0.01), kSize), 0, progress));
}

TEST(Closeup, OfAnOlderPredictionIsNotShown) {
  AppState state = state_with_bush();
  const auto outcome = state.seats[0].outcome;
  state.strip.sheet = view_at(0.01);
  apply(state, CloseupLaid{0, lay_closeup(outcome, *closeup_ask(*outcome, 0, view_at(0.01), kSize), 0, {})});
  EXPECT_NE(sharp_closeup(state, 0, kSize), nullptr);
  apply(state, SetColour{Colour::speed});
  EXPECT_EQ(sharp_closeup(state, 0, kSize), nullptr) << "marks have no speed of their own";
  apply(state, SetColour{Colour::lamp});
  apply(state, RunEnded{0, bush_with_large_cutter()});
  EXPECT_EQ(sharp_closeup(state, 0, kSize), nullptr);
}
