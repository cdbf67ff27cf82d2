// The part in space: one job, two beside each other, or one picture split by a line.
#include "drag.h"
#include "panels.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <GLFW/glfw3.h>

#include <algorithm>

namespace asperity {

namespace {

constexpr float kClick_px = 5.0f;
constexpr double kBar_px = 8;

/// OpenGL's rows run upwards.
void draw_texture(const ShownPicture &picture, ImVec2 low, ImVec2 high, float from = 0.0f, float to = 1.0f) {
  const float width = high.x - low.x;
  ImGui::GetWindowDrawList()->AddImage(picture.texture, {low.x + from * width, low.y},
                                       {low.x + to * width, high.y}, {from, 1}, {to, 0});
}

bool was_clicked(ImGuiMouseButton button) {
  const ImGuiIO &io = ImGui::GetIO();
  return ImGui::IsMouseReleased(button) && io.MouseDragMaxDistanceSqr[button] < kClick_px * kClick_px;
}

/// Orbit, move, zoom, lamp and pick over a picture that fills low..high.
void take_mouse(const Ui &ui, int seat, ImVec2 low, ImVec2 high) {
  const ImGuiIO &io = ImGui::GetIO();
  const PictureSize size{static_cast<int>(high.x - low.x), static_cast<int>(high.y - low.y)};
  const Camera &camera = ui.state.space.camera;
  const double x = static_cast<double>(io.MousePos.x - low.x), y = static_cast<double>(io.MousePos.y - low.y);
  if (ImGui::IsItemHovered() && io.MouseWheel != 0.0f)
    ui.wish(SetCamera{zoomed(camera, zoom_factor(static_cast<double>(io.MouseWheel)), x, y, size)});
  const double dx = static_cast<double>(io.MouseDelta.x), dy = static_cast<double>(io.MouseDelta.y);
  const bool has_moved = dx != 0.0 || dy != 0.0;
  if (ImGui::IsItemActive() && has_moved) {
    if (io.MouseDown[ImGuiMouseButton_Right] || io.MouseDown[ImGuiMouseButton_Middle])
      ui.wish(SetCamera{moved(camera, dx, dy, size)});
    else if (io.KeysDown[GLFW_KEY_L])
      ui.wish(SetLamp{dragged(ui.state.space.lamp, dx, dy)});
    else if (io.MouseDragMaxDistanceSqr[ImGuiMouseButton_Left] >= kClick_px * kClick_px)
      ui.wish(SetCamera{orbited(camera, dx, dy)});
  }
  if (ImGui::IsItemDeactivated() && was_clicked(ImGuiMouseButton_Left))
    ui.says.pick = PickAt{seat, PictureKind::space, x, y, size};
}

void picture_button(const char *id, ImVec2 size) {
  ImGui::InvisibleButton(id, size,
                         ImGuiButtonFlags_MouseButtonLeft | ImGuiButtonFlags_MouseButtonRight |
                             ImGuiButtonFlags_MouseButtonMiddle);
}

/// What is shown while the prediction is made.
const char *name_of_look(const Seat &seat) {
  if (!seat.outcome || seat.has(Grain::fine))
    return "Predicting";
  return seat.has(Grain::coarse) ? "First look, coarse; making it fine" : "Blank and path; predicting";
}

void waiting(const Ui &ui, int seat, ImVec2 low) {
  const Seat &at = ui.state.seat(seat);
  const ImVec2 place{low.x + ui.px(14), low.y + ui.px(14)};
  if (at.run.is_running)
    draw_plate(ui, place,
               fmt::format("{}: {} ({:.0f} %)", name_of_look(at), at.run.stage, 100.0 * at.run.fraction),
               ui.inks.ink);
  else if (!at.fault.empty())
    draw_plate(ui, place, at.fault, ui.inks.danger);
  else if (!at.is_taken())
    draw_plate(ui, place, "Drop a job file (TOML) here, or open one with Ctrl+O.", ui.inks.ink);
}

void over_picture(const Ui &ui, int seat, ImVec2 low, ImVec2 high) {
  const ShownPicture &picture = ui.pictures.space[static_cast<std::size_t>(seat)];
  draw_legend(ui, picture.drawn, low, high);
  draw_mark_numbers(ui, picture, low);
  std::string text = ui.state.seat(seat).has(Grain::coarse)
                         ? fmt::format("residuals drawn x{:.0f}", picture.drawn.exaggeration)
                         : std::string("nothing cut yet");
  if (ui.state.has_both())
    text = fmt::format("{}  {}", seat == 0 ? "A" : "B", text);
  draw_plate(ui, {low.x + ui.px(8), low.y + ui.px(8)}, text, ui.inks.ink);
  if (!ui.state.seat(seat).has(Grain::fine) && !ui.state.seat(seat).run.is_running)
    draw_plate(ui, {low.x + ui.px(8), low.y + ui.px(34)}, "stopped: only a first look (F5)", ui.inks.changed);
  else if (ui.state.seat(seat).is_stale())
    draw_plate(ui, {low.x + ui.px(8), low.y + ui.px(34)}, "older than the values being tried (F5)",
               ui.inks.changed);
}

void one_picture(const Ui &ui, int seat, ImVec2 size) {
  const ImVec2 low = ImGui::GetCursorScreenPos(), high{low.x + size.x, low.y + size.y};
  ui.says.space_size[static_cast<std::size_t>(seat)] = {static_cast<int>(size.x), static_cast<int>(size.y)};
  picture_button(seat == 0 ? "picture A" : "picture B", size);
  mark_place(ui, seat == 0 ? "picture A" : "picture B");
  const ShownPicture &picture = ui.pictures.space[static_cast<std::size_t>(seat)];
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->PushClipRect(low, high, true);
  if (picture.is_there && ui.state.outcome(seat)) {
    draw_texture(picture, low, high);
    over_picture(ui, seat, low, high);
    take_mouse(ui, seat, low, high);
  }
  if (!ui.state.outcome(seat) || ui.state.seat(seat).run.is_running)
    waiting(ui, seat, {low.x, low.y + (ui.state.outcome(seat) ? ui.px(52) : 0.0f)});
  list->PopClipRect();
}

/// The line between the two jobs; it lies over the picture and wins the pointer there.
void wipe_line(const Ui &ui, ImVec2 low, ImVec2 high) {
  const float line = low.x + static_cast<float>(ui.state.space.wipe) * (high.x - low.x);
  const float bar = ui.px(kBar_px);
  ImGui::SetCursorScreenPos({std::clamp(line - bar, low.x, high.x - 2 * bar), low.y});
  ImGui::InvisibleButton("wipe line", {2 * bar, high.y - low.y});
  mark_place(ui, "wipe line");
  if (ImGui::IsItemActive() && ImGui::GetIO().MouseDelta.x != 0.0f)
    ui.wish(SetWipe{static_cast<double>((ImGui::GetIO().MousePos.x - low.x) / (high.x - low.x))});
  if (ImGui::IsItemHovered() || ImGui::IsItemActive())
    ImGui::SetMouseCursor(ImGuiMouseCursor_ResizeEW);
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->AddLine({line, low.y}, {line, high.y}, ui.inks.ink, ui.px(2));
  const float middle = 0.5f * (low.y + high.y);
  list->AddRectFilled({line - bar / 2, middle - 2 * bar}, {line + bar / 2, middle + 2 * bar}, ui.inks.ink,
                      bar / 2);
  draw_plate(ui, {line - ui.px(26), low.y + ui.px(8)}, "A", ui.inks.a);
  draw_plate(ui, {line + ui.px(16), low.y + ui.px(8)}, "B", ui.inks.b);
}

void wiped_picture(const Ui &ui, ImVec2 size) {
  const ImVec2 low = ImGui::GetCursorScreenPos(), high{low.x + size.x, low.y + size.y};
  for (PictureSize &wanted : ui.says.space_size)
    wanted = {static_cast<int>(size.x), static_cast<int>(size.y)};
  picture_button("wiped picture", size);
  ImGui::SetItemAllowOverlap();
  mark_place(ui, "wiped picture");
  const auto &pictures = ui.pictures.space;
  if (!pictures[0].is_there || !pictures[1].is_there)
    return;
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->PushClipRect(low, high, true);
  const auto at = static_cast<float>(ui.state.space.wipe);
  draw_texture(pictures[0], low, high, 0.0f, at);
  draw_texture(pictures[1], low, high, at, 1.0f);
  take_mouse(ui, ImGui::GetIO().MousePos.x < low.x + at * size.x ? 0 : 1, low, high);
  draw_legend(ui, pictures[0].drawn, low, high);
  draw_plate(ui, {low.x + ui.px(8), low.y + ui.px(8)},
             fmt::format("residuals drawn x{:.0f} | x{:.0f}", pictures[0].drawn.exaggeration,
                         pictures[1].drawn.exaggeration),
             ui.inks.ink);
  wipe_line(ui, low, high);
  list->PopClipRect();
}

} // namespace

void space_panel(const Ui &ui) {
  const ImVec2 all = ImGui::GetContentRegionAvail();
  const ImVec2 size{std::max(all.x, 16.0f), std::max(all.y, 16.0f)};
  switch (ui.state.space.arrangement) {
  case Arrangement::front:
    return one_picture(ui, ui.state.space.front, size);
  case Arrangement::wipe:
    return wiped_picture(ui, size);
  case Arrangement::beside: {
    const float gap = ui.px(4), half = std::max((size.x - gap) / 2, 8.0f);
    one_picture(ui, 0, {half, size.y});
    ImGui::SameLine(0, gap);
    return one_picture(ui, 1, {half, size.y});
  }
  }
}

} // namespace asperity
