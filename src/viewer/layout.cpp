// The window: what is wanted and wrong on the left, where in the middle, why and what if on the right. A
// narrow window has two columns, a low one shows the part or what lies below it.
#include "panels.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kHead = 30, kTime = 40;
constexpr double kWide = 940;  ///< three columns from here on, at scale 1
constexpr double kRoomy = 520; ///< part and sheet from here on

using Panel = void (*)(const Ui &);
constexpr ImGuiWindowFlags kStill = ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse;

void child(const Ui &ui, const char *name, float width, float height, Panel panel,
           ImGuiWindowFlags flags = 0) {
  if (ImGui::BeginChild(name, {width, height}, true, flags))
    panel(ui);
  ImGui::EndChild();
}

bool tab(const Ui &ui, const char *label, const char *id, Panel panel, ImGuiTabItemFlags flags = 0) {
  const bool is_front = ImGui::BeginTabItem(label, nullptr, flags);
  mark_place(ui, id);
  if (!is_front)
    return false;
  if (ImGui::BeginChild(id))
    panel(ui);
  ImGui::EndChild();
  ImGui::EndTabItem();
  return true;
}

void why_tabs(const Ui &ui, bool with_program) {
  // A call from a key or a chosen finding brings its tab to the front once.
  ImGuiStorage *storage = ImGui::GetStateStorage();
  const ImGuiID seen_id = ImGui::GetID("tab call");
  const bool is_called = storage->GetInt(seen_id, 0) != ui.state.look.tab_call;
  storage->SetInt(seen_id, ui.state.look.tab_call);
  const bool wants_what_if = ui.state.look.what_if_in_front;
  const auto flags = [&](bool what_if) {
    return is_called && wants_what_if == what_if ? ImGuiTabItemFlags_SetSelected : ImGuiTabItemFlags_None;
  };
  if (!ImGui::BeginTabBar("tabs"))
    return;
  tab(ui, "Why", "tab why", why_panel, flags(false));
  const bool has_changes = !ui.state.seat(ui.state.space.front).changes.empty();
  const bool is_what_if = tab(ui, has_changes ? "What if \xE2\x97\x8F###whatif" : "What if###whatif",
                              "tab what if", what_if_panel, flags(true));
  if (with_program)
    tab(ui, "Program", "tab program", program_panel);
  ImGui::EndTabBar();
  if (!is_called && is_what_if != wants_what_if)
    ui.wish(ShowWhatIf{.in_front = is_what_if, .by_hand = true});
}

void framed_why(const Ui &ui, float width, float height, bool with_program) {
  if (ImGui::BeginChild("why", {width, height}, true))
    why_tabs(ui, with_program);
  ImGui::EndChild();
}

void left_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  const float wanted = std::min(0.32f * height, ui.px(230));
  const float numbers = 0.34f * height;
  child(ui, "wanted", width, wanted, wanted_panel);
  child(ui, "findings", width, height - wanted - numbers - 2 * gap, findings_panel);
  child(ui, "numbers", width, numbers, numbers_panel);
  ImGui::EndGroup();
}

void part(const Ui &ui, float width, float height) {
  if (ImGui::BeginChild("space", {width, height}, true, kStill)) {
    choices_panel(ui);
    space_panel(ui);
  }
  ImGui::EndChild();
}

/// Instead of the part; how to get back stands above it.
void lower_alone(const Ui &ui, float width, float height) {
  if (ImGui::BeginChild("lower alone", {width, height}, true, kStill)) {
    choices_panel(ui);
    lower_panel(ui);
  }
  ImGui::EndChild();
}

void middle_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float gap = ImGui::GetStyle().ItemSpacing.y;
  const Lower lower = lower_shown(ui);
  const bool has_trace = ui.state.trace.is_asked && lower == Lower::flat;
  const float profile = has_trace ? std::max(0.2f * height, ui.px(110)) : 0.0f;
  float space = height - ui.px(kTime) - gap;
  if (profile > 0)
    space -= profile + gap;
  if (lower != Lower::none && !is_roomy(ui)) {
    lower_alone(ui, width, space);
  } else if (lower != Lower::none) {
    const float below = (lower == Lower::section ? 0.34f : 0.29f) * height;
    part(ui, width, space - below - gap);
    child(ui, "lower", width, below, lower_panel, kStill);
  } else {
    part(ui, width, space);
  }
  if (profile > 0)
    child(ui, "profile", width, profile, profile_panel, kStill);
  child(ui, "time", width, ui.px(kTime), time_panel, kStill);
  ImGui::EndGroup();
}

void right_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float upper = 0.56f * height;
  framed_why(ui, width, upper, false);
  child(ui, "program", width, height - upper - ImGui::GetStyle().ItemSpacing.y, program_panel);
  ImGui::EndGroup();
}

/// All that is words, in one column.
void words_column(const Ui &ui, float width, float height) {
  ImGui::BeginGroup();
  const float upper = 0.46f * height;
  if (ImGui::BeginChild("judged", {width, upper}, true) && ImGui::BeginTabBar("judged tabs")) {
    tab(ui, "Wrong", "tab wrong", findings_panel);
    tab(ui, "Wanted", "tab wanted", wanted_panel);
    tab(ui, "Numbers", "tab numbers", numbers_panel);
    ImGui::EndTabBar();
  }
  ImGui::EndChild();
  framed_why(ui, width, height - upper - ImGui::GetStyle().ItemSpacing.y, true);
  ImGui::EndGroup();
}

void columns(const Ui &ui) {
  const ImVec2 rest = ImGui::GetContentRegionAvail();
  const float gap = ImGui::GetStyle().ItemSpacing.x;
  if (!is_wide(ui)) {
    const float words = std::min(std::max(0.36f * rest.x, ui.px(212)), 0.44f * rest.x);
    middle_column(ui, rest.x - words - gap, rest.y);
    ImGui::SameLine();
    return words_column(ui, words, rest.y);
  }
  const float left = std::clamp(0.25f * rest.x, ui.px(250), ui.px(380));
  const float right = std::clamp(0.26f * rest.x, ui.px(250), ui.px(420));
  left_column(ui, left, rest.y);
  ImGui::SameLine();
  middle_column(ui, std::max(rest.x - left - right - 2 * gap, ui.px(120)), rest.y);
  ImGui::SameLine();
  right_column(ui, right, rest.y);
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

bool is_wide(const Ui &ui) { return ImGui::GetIO().DisplaySize.x >= ui.px(kWide); }

bool is_roomy(const Ui &ui) { return ImGui::GetIO().DisplaySize.y >= ui.px(kRoomy); }

Lower lower_shown(const Ui &ui) { return is_roomy(ui) ? ui.state.look.lower : ui.state.look.lower_alone; }

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
  columns(ui);
  sheets(ui);
  ImGui::PopFont();
  ImGui::End();
  read_keys(ui);
}

} // namespace asperity
