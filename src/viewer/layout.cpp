// The window: what is wanted and wrong on the left, where in the middle, why and what if on the right.
#include "panels.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr double kHead = 30, kTime = 40;

using Panel = void (*)(const Ui &);

void child(const Ui &ui, const char *name, float width, float height, Panel panel,
           ImGuiWindowFlags flags = 0) {
  if (ImGui::BeginChild(name, {width, height}, true, flags))
    panel(ui);
  ImGui::EndChild();
}

void left_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  const float wanted = std::min(0.36f * height, ui.px(250));
  const float numbers = 0.25f * height;
  child(ui, "wanted", width, wanted, wanted_panel);
  child(ui, "findings", width, height - wanted - numbers - 2 * gap, findings_panel);
  child(ui, "numbers", width, numbers, numbers_panel);
  ImGui::EndGroup();
}

void middle_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  const bool has_trace = ui.state.trace.is_asked && ui.state.strip.is_shown;
  const float strip = ui.state.strip.is_shown ? 0.25f * height : 0.0f;
  const float profile = has_trace ? std::max(0.2f * height, ui.px(110)) : 0.0f;
  float space = height - ui.px(kTime) - gap;
  if (strip > 0)
    space -= strip + gap;
  if (profile > 0)
    space -= profile + gap;
  constexpr ImGuiWindowFlags kStill = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;
  if (ImGui::BeginChild("space", {width, space}, true, kStill)) {
    choices_panel(ui);
    space_panel(ui);
  }
  ImGui::EndChild();
  if (strip > 0)
    child(ui, "strip", width, strip, strip_panel, kStill);
  if (profile > 0)
    child(ui, "profile", width, profile, profile_panel, kStill);
  child(ui, "time", width, ui.px(kTime), time_panel, kStill);
  ImGui::EndGroup();
}

void why_and_what_if(const Ui &ui, float width, float height) {
  if (!ImGui::BeginChild("why", {width, height}, true)) {
    ImGui::EndChild();
    return;
  }
  // A call from a key or a chosen finding brings its tab to the front once.
  ImGuiStorage *storage = ImGui::GetStateStorage();
  const ImGuiID seen_id = ImGui::GetID("tab call");
  const bool is_called = storage->GetInt(seen_id, 0) != ui.state.look.tab_call;
  storage->SetInt(seen_id, ui.state.look.tab_call);
  const auto flags = [&](bool what_if) {
    const bool comes = is_called && ui.state.look.what_if_in_front == what_if;
    return comes ? ImGuiTabItemFlags_SetSelected : ImGuiTabItemFlags_None;
  };
  if (ImGui::BeginTabBar("tabs")) {
    if (ImGui::BeginTabItem("Why", nullptr, flags(false))) {
      if (ImGui::BeginChild("why text"))
        why_panel(ui);
      ImGui::EndChild();
      ImGui::EndTabItem();
    }
    const bool has_changes = !ui.state.seat(ui.state.space.front).changes.empty();
    if (ImGui::BeginTabItem(has_changes ? "What if \xE2\x97\x8F###whatif" : "What if###whatif", nullptr,
                            flags(true))) {
      if (ImGui::BeginChild("what if text"))
        what_if_panel(ui);
      ImGui::EndChild();
      ImGui::EndTabItem();
    }
    ImGui::EndTabBar();
  }
  ImGui::EndChild();
}

void right_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float upper = 0.56f * height;
  why_and_what_if(ui, width, upper);
  child(ui, "program", width, height - upper - ImGui::GetStyle().ItemSpacing.y, program_panel);
  ImGui::EndGroup();
}

void sheets(const Ui &ui) {
  switch (ui.state.look.sheet) {
  case Sheet::help:
    return help_sheet(ui);
  case Sheet::open:
    return open_sheet(ui);
  case Sheet::save:
    return save_sheet(ui);
  case Sheet::problems:
    return problems_sheet(ui);
  case Sheet::none:
    return;
  }
}

} // namespace

void lay_out(const Ui &ui) {
  const ImVec2 whole = ImGui::GetIO().DisplaySize;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize(whole);
  constexpr ImGuiWindowFlags kFixed =
      ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings |
      ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse;
  ImGui::PushStyleVar(ImGuiStyleVar_WindowRounding, 0.0f);
  ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0f);
  ImGui::Begin("asperity", nullptr, kFixed);
  ImGui::PopStyleVar(2);
  ImGui::PushFont(ui.fonts.body);
  ImGui::PushStyleColor(ImGuiCol_ChildBg, IM_COL32_BLACK_TRANS);
  if (ImGui::BeginChild("head", {0, ui.px(kHead)}, false, ImGuiWindowFlags_NoScrollbar))
    head_panel(ui);
  ImGui::EndChild();
  ImGui::PopStyleColor();
  const ImVec2 rest = ImGui::GetContentRegionAvail();
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  const float left = std::min(std::clamp(0.25f * rest.x, ui.px(246), ui.px(380)), 0.3f * rest.x);
  const float right = std::min(std::clamp(0.26f * rest.x, ui.px(268), ui.px(420)), 0.32f * rest.x);
  left_column(ui, left, rest.y);
  ImGui::SameLine();
  middle_column(ui, std::max(rest.x - left - right - 2 * gap, ui.px(120)), rest.y);
  ImGui::SameLine();
  right_column(ui, right, rest.y);
  sheets(ui);
  ImGui::PopFont();
  ImGui::End();
  read_keys(ui);
}

} // namespace asperity
