// A flat sheet's picture on the screen.
#include "sheet_frame.h"

#include "drag.h"
#include "panels.h"
#include "profile_plot.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

SheetFrame sheet_frame(const Ui &ui, const char *name, const SheetView &sheet) {
  const ImVec2 all = ImGui::GetContentRegionAvail();
  const ImVec2 size{std::max(all.x, 16.0f), std::max(all.y, 16.0f)};
  const ImVec2 low = ImGui::GetCursorScreenPos();
  ImGui::InvisibleButton(name, size,
                         ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                             ImGuiButtonFlags_MouseButtonMiddle);
  mark_place(ui, name);
  return {low, {low.x + size.x, low.y + size.y}, sheet, {static_cast<int>(size.x), static_cast<int>(size.y)}};
}

void begin_sheet_picture(const SheetFrame &frame, const ShownPicture &picture) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->PushClipRect(frame.low, frame.high, true);
  list->AddImage(picture.texture, frame.low, frame.high, {0, 1}, {1, 0});
}

void end_sheet_picture() { ImGui::GetWindowDrawList()->PopClipRect(); }

void draw_scale_bar(const Ui &ui, const SheetFrame &frame) {
  const double px_mm = frame.sheet.across_mm_per_px();
  const double length_mm = round_step(frame.size.width_px * px_mm, 8);
  const ImVec2 at{frame.low.x + ui.px(12), frame.high.y - ui.px(10)};
  const std::string words = fmt::format("{:g} mm", length_mm);
  draw_plate(ui, {at.x + ui.px(4), at.y - ImGui::GetTextLineHeight() - ui.px(5)}, words, ui.inks.ink);
  ImGui::GetWindowDrawList()->AddLine(at, {at.x + static_cast<float>(length_mm / px_mm), at.y}, ui.inks.ink,
                                      ui.px(3));
}

std::optional<SheetView> moved_by_mouse(const SheetFrame &frame) {
  const ImGuiIO &io = ImGui::GetIO();
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0f) {
    const auto wheel = static_cast<double>(io.MouseWheel);
    const double x = static_cast<double>(io.MousePos.x - frame.low.x);
    const double y = static_cast<double>(io.MousePos.y - frame.low.y);
    return io.KeyCtrl ? stretched(frame.sheet, wheel)
                      : zoomed(frame.sheet, zoom_factor(wheel), x, y, frame.size);
  }
  const bool is_held = io.MouseDown[ImGuiMouseButton_Right] || io.MouseDown[ImGuiMouseButton_Middle];
  if (ImGui::IsItemActive() && is_held && (io.MouseDelta.x != 0.0f || io.MouseDelta.y != 0.0f))
    return moved(frame.sheet, static_cast<double>(io.MouseDelta.x), static_cast<double>(io.MouseDelta.y));
  return std::nullopt;
}

} // namespace asperity
