// The feature cut through: stock, lip, board, blank (dashed) and wanted surface (dotted).
#include "panels.h"
#include "sheet_frame.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr float kClick_px = 5.0f;

void words_over(const Ui &ui, const SheetFrame &frame, const Outcome &outcome, const ShownPicture &picture) {
  const bool is_wall =
      std::holds_alternative<WallChart>(outcome.charts[static_cast<std::size_t>(ui.state.strip.feature)]);
  const double times = picture.drawn.exaggeration;
  const std::string words = times > 1.0 ? fmt::format("cut surface x{:.0f}", times) : "true size";
  draw_plate(ui, {frame.high.x - ImGui::CalcTextSize(words.c_str()).x - ui.px(10), frame.low.y + ui.px(6)},
             words, ui.inks.ink);
  if (!ImGui::IsItemHovered())
    return;
  const Vec2 at = frame.place(ImGui::GetIO().MousePos);
  const std::string where = is_wall ? fmt::format("{:.3f} mm out, z {:.3f} mm", at.x, at.y)
                                    : fmt::format("x {:.3f} mm, {:.3f} mm above", at.x, at.y);
  draw_plate(ui, {frame.low.x + ui.px(8), frame.low.y + ui.px(6)}, where, ui.inks.ink);
}

} // namespace

void section_panel(const Ui &ui) {
  const int seat = ui.state.space.front;
  const Outcome &outcome = *ui.state.outcome(seat);
  const SheetFrame frame = sheet_frame(ui, "section picture", ui.state.section.sheet);
  ui.says.section_size[static_cast<std::size_t>(seat)] = frame.size;
  const ShownPicture &picture = ui.pictures.section[static_cast<std::size_t>(seat)];
  if (!picture.is_there)
    return;
  begin_sheet_picture(frame, picture);
  draw_mark_numbers(ui, picture, frame.low);
  draw_scale_bar(ui, frame);
  words_over(ui, frame, outcome, picture);
  if (const auto view = moved_by_mouse(frame))
    ui.wish(SetSectionView{*view});
  const ImGuiIO &io = ImGui::GetIO();
  const bool is_drag = io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] >= kClick_px * kClick_px;
  if (ImGui::IsItemDeactivated() && ImGui::IsMouseReleased(ImGuiMouseButton_Left) && !is_drag)
    ui.says.pick = PickAt{seat, PictureKind::section, static_cast<double>(io.MousePos.x - frame.low.x),
                          static_cast<double>(io.MousePos.y - frame.low.y), frame.size};
  end_sheet_picture();
}

} // namespace asperity
