// Sections: stock, lip and spoilboard where plane geometry puts them.
#include "headless.h"

#include "support/sheave_outcome.h"

namespace asperity {

namespace {

using namespace render_test;

class SectionDrawing : public Drawing {};

} // namespace

TEST_F(SectionDrawing, LipStockAndBoardLieWhereTheyAre) {
  Outcome outcome = test_support::rim_outcome(0.1);
  outcome.job.holding.spoilboard_top_z_mm = 0.0;
  DrawRequest request;
  request.view = View::section;
  request.size = {600, 800};
  request.section_at_mm = 100.0;
  request.exaggeration = 1.0;
  request.things.marks = false;
  const SheetBox box = section_box(outcome, 0, 100.0);
  request.sheet = sheet_on(box.low_mm, box.high_mm, request.size);
  const OffscreenPicture picture = drawn(outcome, request);
  const auto at = [&](double out_mm, double z_mm) {
    return pixel_at(picture, request.sheet.pixel({out_mm, z_mm}, request.size));
  };
  const Theme &theme = request.theme;
  EXPECT_EQ(at(-1.0, 7.0), theme.cut_stock);
  EXPECT_EQ(at(0.5, 7.0), theme.ground);
  EXPECT_EQ(at(0.5, 0.3), theme.uncut_stock); // the lip is 0.6 mm high and stands out by the blank's 1 mm
  EXPECT_EQ(at(0.5, 0.8), theme.ground);
  EXPECT_EQ(at(1.2, 0.3), theme.ground);
  EXPECT_EQ(at(1.2, -0.5), theme.spoilboard);
}

TEST_F(SectionDrawing, TheCutSurfaceIsDrawnSoManyTimesFartherOut) {
  const Outcome outcome = test_support::rim_outcome(0.1); // 8 um proud at z = 2
  DrawRequest request;
  request.view = View::section;
  request.size = {600, 800};
  request.section_at_mm = 100.0;
  request.exaggeration = 100.0;
  request.things.marks = false;
  const SheetBox box = section_box(outcome, 0, 100.0);
  request.sheet = sheet_on(box.low_mm, box.high_mm, request.size);
  const OffscreenPicture picture = drawn(outcome, request);
  const auto at = [&](double out_mm) {
    return pixel_at(picture, request.sheet.pixel({out_mm, 2.0}, request.size));
  };
  EXPECT_EQ(at(0.7), request.theme.cut_stock);
  EXPECT_EQ(at(0.9), request.theme.ground);
}

TEST_F(SectionDrawing, PickGivesTheCellAtThatHeight) {
  const Outcome outcome = test_support::rim_outcome(0.1);
  DrawRequest request;
  request.view = View::section;
  request.size = {600, 800};
  request.section_at_mm = 50.0;
  request.things.marks = false;
  const SheetBox box = section_box(outcome, 0, 50.0);
  request.sheet = sheet_on(box.low_mm, box.high_mm, request.size);
  Renderer renderer;
  renderer.show(outcome);
  const Vec2 at = request.sheet.pixel({0.0, 9.0}, request.size);
  const Pick pick = renderer.pick(request, at.x, at.y);
  const auto &chart = std::get<WallChart>(outcome.charts[0]);
  EXPECT_NEAR(chart.s_mm[pick.column], 50.0, 0.051); // half a cell
  EXPECT_NEAR(chart.z_mm[pick.row], 9.0, 0.051);
}

} // namespace asperity
