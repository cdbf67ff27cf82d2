// Whole pictures of the rim, compared with kept ones.
#include "golden.h"
#include "headless.h"

#include "support/sheave_outcome.h"

#include <cmath>
#include <limits>

namespace asperity {

namespace {

using namespace render_test;

class GoldenPicture : public Drawing {
protected:
  void expect_like(const std::string &name, const DrawRequest &request, const Outcome &outcome,
                   const CellQuantity &quantity = {}) {
    Renderer renderer;
    renderer.show(outcome);
    if (!quantity.of_feature.empty())
      renderer.set_quantity(quantity);
    const OffscreenPicture picture = offscreen_picture(renderer, request, 2);
    ASSERT_EQ(picture.fault, "");
    EXPECT_EQ(compared_with_golden(name, picture.image), "");
  }
};

Outcome rim_on_board() {
  Outcome outcome = test_support::rim_outcome(0.1);
  outcome.job.holding.spoilboard_top_z_mm = 0.0;
  // Owners in two halves, so that who made it can be seen.
  auto &chart = std::get<WallChart>(outcome.charts[0]);
  for (std::size_t cell = 0; cell < chart.owner.size(); ++cell)
    if (chart.owner[cell] != kNobody && cell % chart.columns() < chart.columns() / 2)
      chart.owner[cell] = 0;
  return outcome;
}

DrawRequest part_request(const Outcome &outcome, Colouring colouring) {
  DrawRequest request;
  request.size = {360, 240};
  request.colouring = colouring;
  request.camera = camera_on(surface_points(outcome), request.size, 0.25, 0.4);
  return request;
}

} // namespace

TEST_F(GoldenPicture, RimUnderTheLamp) {
  const Outcome outcome = rim_on_board();
  expect_like("rim-lamp", part_request(outcome, Colouring::lamp), outcome);
}

TEST_F(GoldenPicture, RimByResidual) {
  const Outcome outcome = rim_on_board();
  expect_like("rim-residual", part_request(outcome, Colouring::residual), outcome);
}

TEST_F(GoldenPicture, RimByLine) {
  const Outcome outcome = rim_on_board();
  expect_like("rim-line", part_request(outcome, Colouring::line), outcome);
}

TEST_F(GoldenPicture, RimUnrolledByResidual) {
  const Outcome outcome = rim_on_board();
  DrawRequest request = strip_request(outcome, {480, 120}, Colouring::residual);
  request.sheet = sheet_on(strip_box(outcome, 0).low_mm, strip_box(outcome, 0).high_mm, request.size, 3.0);
  expect_like("rim-strip-residual", request, outcome);
}

TEST_F(GoldenPicture, RimUnrolledByAQuantity) {
  const Outcome outcome = rim_on_board();
  const auto &chart = std::get<WallChart>(outcome.charts[0]);
  // A speed that falls to a third and comes back, once round; none on the uppermost rows.
  CellQuantity speed{"speed along the path", "mm/min", {std::vector<float>(chart.envelope_mm.size())}};
  for (std::size_t cell = 0; cell < speed.of_feature[0].size(); ++cell) {
    const double round = static_cast<double>(cell % chart.columns()) / static_cast<double>(chart.columns());
    speed.of_feature[0][cell] = cell / chart.columns() + 4 > chart.rows()
                                    ? std::numeric_limits<float>::quiet_NaN()
                                    : static_cast<float>(900.0 * (2.0 + std::cos(2.0 * kPi * round)) / 3.0);
  }
  DrawRequest request = strip_request(outcome, {480, 120}, Colouring::quantity);
  request.sheet = sheet_on(strip_box(outcome, 0).low_mm, strip_box(outcome, 0).high_mm, request.size, 3.0);
  expect_like("rim-strip-speed", request, outcome, speed);
}

TEST_F(GoldenPicture, RimCutThrough) {
  const Outcome outcome = rim_on_board();
  DrawRequest request = strip_request(outcome, {300, 240}, Colouring::lamp);
  request.view = View::section;
  const SheetBox box = section_box(outcome, 0, request.section_at_mm);
  request.sheet = sheet_on(box.low_mm, box.high_mm, request.size);
  expect_like("rim-section", request, outcome);
}

} // namespace asperity
