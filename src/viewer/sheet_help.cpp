// Keys and mouse on one sheet.
#include "panels.h"

namespace asperity {

namespace {

struct Row {
  const char *keys, *does;
};

constexpr Row kMouse[] = {{"left drag", "turns the part"},
                          {"right or middle drag", "moves it"},
                          {"wheel", "comes closer, at the pointer"},
                          {"L held, left drag", "moves the lamp"},
                          {"click on the surface", "lights the program line that cut there"},
                          {"click on a numbered mark", "goes to that finding"},
                          {"click, drag on the flat sheet", "lays a short or a long roughness trace"},
                          {"wheel on the flat sheet", "comes closer, down to single tooth marks"},
                          {"Ctrl + wheel on the flat sheet", "stretches it upwards"}};
constexpr Row kKeys[] = {{"N / P", "next / previous finding"},
                         {"Home", "whole part in the picture"},
                         {"arrows, + and -", "turn, closer, farther"},
                         {"T / F / R", "look from above / from the front / from the right"},
                         {"1 ... 9", "colours: lamp, residual, line, level, roughness, bending, chip load, "
                                     "speed, difference"},
                         {"E / Shift+E", "draw residuals larger / smaller"},
                         {"M", "path on or off"},
                         {"U / X", "the surface laid flat / cut through"},
                         {"space", "play or pause"},
                         {"Tab", "bring the other job to the front"},
                         {"W", "one / beside / wipe"},
                         {"I", "values to try"},
                         {"F5", "read anew and predict"},
                         {"Ctrl+Z / Ctrl+Y", "undo / redo a tried value"},
                         {"Ctrl+S", "save the tried values as a new job"},
                         {"Ctrl+O", "open a job"},
                         {"Esc", "close a sheet, stop a prediction"},
                         {"Ctrl+Q", "leave"},
                         {"F1", "this sheet"}};

void rows(const char *id, const Row *begin, const Row *end) {
  if (!ImGui::BeginTable(id, 2))
    return;
  ImGui::TableSetupColumn("keys", ImGuiTableColumnFlags_WidthStretch, 0.42f);
  ImGui::TableSetupColumn("does", ImGuiTableColumnFlags_WidthStretch, 0.58f);
  for (const Row *row = begin; row != end; ++row) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    wrapped_text(row->keys);
    ImGui::TableNextColumn();
    wrapped_text(row->does);
  }
  ImGui::EndTable();
}

} // namespace

void help_sheet(const Ui &ui) {
  const ImVec2 whole = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0.5f * whole.x, 0.5f * whole.y}, ImGuiCond_Always, {0.5f, 0.5f});
  ImGui::SetNextWindowSize({std::min(ui.px(640), 0.94f * whole.x), std::min(ui.px(640), 0.94f * whole.y)});
  bool is_open = true;
  if (ImGui::Begin("Keys and mouse (F1)", &is_open,
                   ImGuiWindowFlags_NoCollapse | ImGuiWindowFlags_NoSavedSettings |
                       ImGuiWindowFlags_NoResize)) {
    heading(ui, "Mouse");
    rows("mouse", std::begin(kMouse), std::end(kMouse));
    heading(ui, "Keys");
    rows("keys", std::begin(kKeys), std::end(kKeys));
    ImGui::Spacing();
    wrapped_text("Point at a word to read what it means. A prediction is a model's word, not a measurement: "
                 "whoever runs the machine decides.");
  }
  ImGui::End();
  if (!is_open)
    ui.wish(ShowSheet{Sheet::help});
}

} // namespace asperity
