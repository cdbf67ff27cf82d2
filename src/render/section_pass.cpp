// A section on the graphics card.
#include "section_pass.h"

namespace asperity {

namespace {

constexpr Vec2 kBlankDash_mm{0.35, 0.2};
constexpr Vec2 kWantedDash_mm{0.08, 0.08};

} // namespace

void draw_section(const SectionShape &shape, const DrawRequest &request, const Eye &eye,
                  const SolidPass &solids, const LinePass &lines) {
  glDisable(GL_DEPTH_TEST);
  const auto fill = [&](const SolidShape &solid, Rgb colour) {
    SolidOnCard on_card;
    on_card.upload(solid);
    solids.draw(eye, on_card, {.colour = colour, .is_plain = true});
  };
  const auto outline = [&](const std::vector<LineStretch> &stretches, const LineLook &look) {
    LinesOnCard on_card;
    on_card.upload(stretches);
    lines.draw(eye, on_card, look);
  };
  if (request.things.spoilboard)
    fill(shape.spoilboard, request.theme.spoilboard);
  fill(shape.stock, request.theme.cut_stock);
  fill(shape.uncut, request.theme.uncut_stock);
  outline(shape.blank, {.colour = request.theme.soft_ink, .width_px = 1.6, .dash_mm = kBlankDash_mm});
  outline(shape.wanted, {.colour = request.theme.path[2], .width_px = 1.4, .dash_mm = kWantedDash_mm});
  outline(shape.surface, {.colour = request.theme.ink, .width_px = 2.2});
}

} // namespace asperity
