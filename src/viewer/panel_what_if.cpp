// What if: values that can be tried in place.
#include "panels.h"
#include "what_if.h"

#include <imgui_stdlib.h>

#include <fmt/format.h>

#include <cstdlib>

namespace asperity {

namespace {

void edit_word(const Ui &ui, int seat, const WhatIfKey &key, const std::string &text) {
  if (!ImGui::BeginCombo("##word", shown(text).c_str()))
    return;
  for (const std::string &word : key.words)
    if (ImGui::Selectable(word.c_str(), word == shown(text)))
      ui.wish(ChangeValue{seat, key.id, word});
  ImGui::EndCombo();
}

void edit(const Ui &ui, int seat, const WhatIfKey &key, const std::string &text) {
  ImGui::SetNextItemWidth(-FLT_MIN);
  if (key.kind == KeyKind::word) {
    edit_word(ui, seat, key, text);
  } else if (key.kind == KeyKind::toggle) {
    bool on = text == "true";
    if (ImGui::Checkbox("##on", &on))
      ui.wish(ChangeValue{seat, key.id, on ? "true" : "false"});
  } else {
    double value = std::strtod(text.c_str(), nullptr);
    ImGui::InputDouble("##value", &value, 0.0, 0.0, "%.5g");
    if (ImGui::IsItemDeactivatedAfterEdit())
      ui.wish(ChangeValue{seat, key.id, toml_text(value)});
  }
  mark_place(ui, key.id);
  hint(ui, key.meaning);
}

void one_value(const Ui &ui, int seat, const WhatIfKey &key, const Changes &changes) {
  const auto change = changes.find(key.id);
  const bool is_changed = change != changes.end();
  const std::string text = is_changed ? change->second : key.own;
  ImGui::PushID(key.id.c_str());
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  ImGui::PushStyleColor(ImGuiCol_Text, is_changed ? ui.inks.changed : ui.inks.ink);
  wrapped_text(key.unit.empty() ? key.label : fmt::format("{} [{}]", key.label, key.unit));
  ImGui::PopStyleColor();
  hint(ui, key.meaning + (is_changed ? fmt::format("\nThe job says {}.", shown(key.own)) : std::string{}));
  ImGui::TableNextColumn();
  edit(ui, seat, key, text);
  ImGui::TableNextColumn();
  if (is_changed && ImGui::SmallButton("back"))
    ui.wish(ResetValue{seat, key.id});
  ImGui::PopID();
}

void buttons(const Ui &ui, int seat) {
  const Seat &at = ui.state.seat(seat);
  const auto button = [&](const char *label, bool can, const char *meaning) {
    ImGui::BeginDisabled(!can);
    const bool is_pressed = ImGui::Button(label);
    mark_place(ui, label);
    ImGui::EndDisabled();
    hint(ui, meaning);
    return is_pressed;
  };
  if (button("Predict", at.is_taken() && !at.run.is_running, "Predicts with these values (F5)."))
    ui.wish(Predict{seat});
  ImGui::SameLine();
  if (button("Undo", !at.past.empty(), "Takes the last change back (Ctrl+Z)."))
    ui.wish(Undo{seat});
  ImGui::SameLine();
  if (button("Redo", !at.future.empty(), "Makes it again (Ctrl+Y)."))
    ui.wish(Redo{seat});
  ImGui::SameLine();
  if (button("Save as", !at.changes.empty(), "Writes a new job with these values, comments kept (Ctrl+S)."))
    ui.wish(ShowSheet{Sheet::save});
}

} // namespace

void what_if_panel(const Ui &ui) {
  const int seat = ui.state.space.front;
  const Seat &at = ui.state.seat(seat);
  if (!at.result || !at.result->job) {
    soft_text(ui, "No job is open.");
    return;
  }
  if (ui.state.has_both()) {
    seat_letter(ui, seat);
    ImGui::SameLine();
  }
  buttons(ui, seat);
  std::string group;
  bool is_open = false;
  for (const WhatIfKey &key : what_if_keys(*at.result->job, at.changes)) {
    if (key.group != group) {
      if (is_open)
        ImGui::EndTable();
      group = key.group;
      heading(ui, group);
      is_open = ImGui::BeginTable(group.c_str(), 3);
      if (is_open) {
        ImGui::TableSetupColumn("label", ImGuiTableColumnFlags_WidthStretch, 1.2f);
        ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthFixed, ui.px(82));
        ImGui::TableSetupColumn("back", ImGuiTableColumnFlags_WidthFixed, ui.px(44));
      }
    }
    if (is_open)
      one_value(ui, seat, key, at.changes);
  }
  if (is_open)
    ImGui::EndTable();
}

} // namespace asperity
