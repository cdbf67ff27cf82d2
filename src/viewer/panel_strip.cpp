// The feature laid flat: a wall unrolled, a floor from above; a click or a drag lays a trace.
#include "drag.h"
#include "panels.h"
#include "place.h"

#include "asperity/render/scene.h"

#include <fmt/format.h>

#include <GLFW/glfw3.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr float kClick_px = 5.0f;

void feature_choice(const Ui &ui, const Outcome &outcome) {
  const auto now = static_cast<std::size_t>(ui.state.strip.feature);
  ImGui::SetNextItemWidth(ui.px(130));
  if (ImGui::BeginCombo("##feature", name_of(outcome.job.features[now]).c_str())) {
    for (std::size_t i = 0; i < outcome.job.features.size(); ++i)
      if (ImGui::Selectable(fmt::format("{}##{}", name_of(outcome.job.features[i]), i).c_str(), i == now))
        ui.wish(ShowFeature{static_cast<int>(i)});
    ImGui::EndCombo();
  }
  hint(ui, "Which surface is laid flat here.");
  ImGui::SameLine();
  if (ImGui::Button("Fit##strip"))
    ui.wish(FitStrip{});
  same_line_if_fits(ImGui::CalcTextSize("drag across it: roughness trace").x);
  soft_text(ui, "drag across it: roughness trace");
  hint(ui, "Drag along or up the surface to lay a trace and read its roughness; a click lays a short one and "
           "lights the line that cut there. Wheel: closer; Ctrl+wheel: taller; right drag: moves; L + drag: "
           "lamp.");
}

struct Frame {
  ImVec2 low, high;
  const ShownPicture *picture;
  SheetView sheet;  ///< in shown pixels
  PictureSize size; ///< in shown pixels

  Vec2 place(ImVec2 p) const {
    return sheet.place_mm(static_cast<double>(p.x - low.x), static_cast<double>(p.y - low.y), size);
  }
  ImVec2 pixel(Vec2 place_mm) const {
    const Vec2 p = sheet.pixel(place_mm, size);
    return {low.x + static_cast<float>(p.x), low.y + static_cast<float>(p.y)};
  }
};

void take_mouse(const Ui &ui, const Frame &frame) {
  const ImGuiIO &io = ImGui::GetIO();
  const double x = static_cast<double>(io.MousePos.x - frame.low.x);
  const double y = static_cast<double>(io.MousePos.y - frame.low.y);
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0f) {
    const auto wheel = static_cast<double>(io.MouseWheel);
    ui.wish(SetSheetView{io.KeyCtrl ? stretched(frame.sheet, wheel)
                                    : zoomed(frame.sheet, zoom_factor(wheel), x, y, frame.size)});
  }
  const double dx = static_cast<double>(io.MouseDelta.x), dy = static_cast<double>(io.MouseDelta.y);
  const bool has_moved = dx != 0.0 || dy != 0.0;
  const bool is_lamp = io.KeysDown[GLFW_KEY_L];
  if (ImGui::IsItemActive() && has_moved) {
    if (io.MouseDown[ImGuiMouseButton_Right] || io.MouseDown[ImGuiMouseButton_Middle])
      ui.wish(SetSheetView{moved(frame.sheet, dx, dy)});
    else if (is_lamp)
      ui.wish(SetStripLamp{dragged(ui.state.strip.lamp, dx, dy)});
  }
  const ImVec2 from = io.MouseClickedPos[ImGuiMouseButton_Left];
  const bool is_drag = io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] >= kClick_px * kClick_px;
  if (ImGui::IsItemActive() && io.MouseDown[ImGuiMouseButton_Left] && is_drag && !is_lamp)
    ImGui::GetWindowDrawList()->AddLine(from, io.MousePos, ui.inks.changed, ui.px(2));
  if (!ImGui::IsItemDeactivated() || !ImGui::IsMouseReleased(ImGuiMouseButton_Left) || is_lamp)
    return;
  if (!is_drag)
    ui.says.pick = PickAt{ui.state.space.front, true, x, y};
  ui.wish(TraceBetween{frame.place(from), frame.place(is_drag ? io.MousePos : from)});
}

void draw_trace(const Ui &ui, const Frame &frame, const Outcome &outcome) {
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

void say_where(const Ui &ui, const Frame &frame, const Outcome &outcome) {
  if (!ImGui::IsItemHovered())
    return;
  const bool is_wall =
      std::holds_alternative<WallChart>(outcome.charts[static_cast<std::size_t>(ui.state.strip.feature)]);
  const Vec2 at = frame.place(ImGui::GetIO().MousePos);
  draw_plate(ui, {frame.low.x + ui.px(8), frame.high.y - ui.px(22)},
             is_wall ? fmt::format("{:.3f} mm from the seam, z {:.3f} mm", at.x, at.y)
                     : fmt::format("x {:.3f} mm, y {:.3f} mm", at.x, at.y),
             ui.inks.ink);
}

} // namespace

void strip_panel(const Ui &ui) {
  const int seat = ui.state.space.front;
  const Outcome *outcome = ui.state.outcome(seat);
  if (!outcome || outcome->charts.empty()) {
    soft_text(ui, "The chosen surface is laid flat here.");
    return;
  }
  feature_choice(ui, *outcome);
  const ImVec2 all = ImGui::GetContentRegionAvail();
  const ImVec2 size{std::max(all.x, 16.0f), std::max(all.y, 16.0f)};
  const ImVec2 low = ImGui::GetCursorScreenPos(), high{low.x + size.x, low.y + size.y};
  ui.says.strip_size[static_cast<std::size_t>(seat)] = {static_cast<int>(size.x), static_cast<int>(size.y)};
  ImGui::InvisibleButton("strip picture", size,
                         ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                             ImGuiButtonFlags_MouseButtonMiddle);
  mark_place(ui, "strip picture");
  const ShownPicture &picture = ui.pictures.strip[static_cast<std::size_t>(seat)];
  if (!picture.is_there)
    return;
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->PushClipRect(low, high, true);
  list->AddImage(picture.texture, low, high, {0, 1}, {1, 0});
  draw_mark_numbers(ui, picture, low);
  const Frame frame{
      low, high, &picture, ui.state.strip.sheet, {static_cast<int>(size.x), static_cast<int>(size.y)}};
  draw_trace(ui, frame, *outcome);
  take_mouse(ui, frame);
  const double times = picture.drawn.exaggeration;
  const std::string words =
      fmt::format("x{:.0f}, stretched up x{:.3g}", times, ui.state.strip.sheet.up_stretch);
  draw_plate(ui, {high.x - ImGui::CalcTextSize(words.c_str()).x - ui.px(10), low.y + ui.px(6)}, words,
             ui.inks.ink);
  say_where(ui, frame, *outcome);
  list->PopClipRect();
}

} // namespace asperity
