// The feature laid flat: a wall unrolled, a floor from above; a click or a drag lays a trace.
#include "drag.h"
#include "panels.h"
#include "sheet_frame.h"

#include "asperity/render/scene.h"

#include <fmt/format.h>

#include <GLFW/glfw3.h>

#include <cmath>

namespace asperity {

namespace {

constexpr float kClick_px = 5.0f;

void take_mouse(const Ui &ui, const SheetFrame &frame) {
  const ImGuiIO &io = ImGui::GetIO();
  if (const auto view = moved_by_mouse(frame))
    ui.wish(SetSheetView{*view});
  const bool is_lamp = io.KeysDown[GLFW_KEY_L];
  const ImVec2 moved = io.MouseDelta;
  if (ImGui::IsItemActive() && io.MouseDown[ImGuiMouseButton_Left] && is_lamp &&
      (moved.x != 0.0f || moved.y != 0.0f))
    ui.wish(SetStripLamp{
        dragged(ui.state.strip.lamp, static_cast<double>(moved.x), static_cast<double>(moved.y))});
  const ImVec2 from = io.MouseClickedPos[ImGuiMouseButton_Left];
  const bool is_drag = io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] >= kClick_px * kClick_px;
  if (ImGui::IsItemActive() && io.MouseDown[ImGuiMouseButton_Left] && is_drag && !is_lamp)
    ImGui::GetWindowDrawList()->AddLine(from, io.MousePos, ui.inks.changed, ui.px(2));
  if (!ImGui::IsItemDeactivated() || !ImGui::IsMouseReleased(ImGuiMouseButton_Left) || is_lamp)
    return;
  if (!is_drag)
    ui.says.pick =
        PickAt{ui.state.space.front, PictureKind::strip, static_cast<double>(io.MousePos.x - frame.low.x),
               static_cast<double>(io.MousePos.y - frame.low.y), frame.size};
  ui.wish(TraceBetween{frame.place(from), frame.place(is_drag ? io.MousePos : from)});
}

void draw_trace(const Ui &ui, const SheetFrame &frame, const Outcome &outcome) {
  const auto seat = static_cast<std::size_t>(ui.state.space.front);
  const std::vector<Vec3> &line = ui.state.trace.line_mm[seat];
  if (line.empty() || ui.state.trace.feature != ui.state.strip.feature)
    return;
  const auto feature = static_cast<std::size_t>(ui.state.strip.feature);
  const ImVec2 begin = frame.pixel(strip_place_mm(outcome, feature, line.front()));
  const ImVec2 end = frame.pixel(strip_place_mm(outcome, feature, line.back()));
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->AddLine(begin, end, ui.inks.panel, ui.px(5));
  list->AddLine(begin, end, ui.inks.changed, ui.px(2));
  for (const ImVec2 &at : {begin, end})
    list->AddCircleFilled(at, ui.px(4), ui.inks.changed);
}

void say_where(const Ui &ui, const SheetFrame &frame, const Outcome &outcome) {
  if (!ImGui::IsItemHovered())
    return;
  const bool is_wall =
      std::holds_alternative<WallChart>(outcome.charts[static_cast<std::size_t>(ui.state.strip.feature)]);
  const Vec2 at = frame.place(ImGui::GetIO().MousePos);
  draw_plate(ui, {frame.low.x + ui.px(8), frame.low.y + ui.px(6)},
             is_wall ? fmt::format("{:.3f} mm from the seam, z {:.3f} mm", at.x, at.y)
                     : fmt::format("x {:.3f} mm, y {:.3f} mm", at.x, at.y),
             ui.inks.ink);
}

} // namespace

void strip_panel(const Ui &ui) {
  const auto seat = static_cast<std::size_t>(ui.state.space.front);
  const Outcome &outcome = *ui.state.outcome(ui.state.space.front);
  const SheetFrame frame = sheet_frame(ui, "strip picture", ui.state.strip.sheet);
  ui.says.strip_size[seat] = frame.size;
  const bool is_close = ui.pictures.closeup[seat].is_there;
  const ShownPicture &picture = is_close ? ui.pictures.closeup[seat] : ui.pictures.strip[seat];
  if (!picture.is_there)
    return;
  begin_sheet_picture(frame, picture);
  draw_mark_numbers(ui, picture, frame.low);
  draw_trace(ui, frame, outcome);
  take_mouse(ui, frame);
  const double stretch = ui.state.strip.sheet.up_stretch;
  std::string words = fmt::format("residuals x{:.0f}", picture.drawn.exaggeration);
  if (std::abs(stretch - 1.0) > 0.01)
    words += fmt::format(", {:.2g} times taller", stretch);
  if (is_close)
    words += ", single tooth marks";
  draw_plate(ui, {frame.high.x - ImGui::CalcTextSize(words.c_str()).x - ui.px(10), frame.low.y + ui.px(6)},
             words, ui.inks.ink);
  draw_scale_bar(ui, frame);
  say_where(ui, frame, outcome);
  end_sheet_picture();
}

} // namespace asperity
