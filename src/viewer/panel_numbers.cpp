// Sizes, roughness and times.
#include "number_rows.h"
#include "panels.h"

namespace asperity {

void numbers_panel(const Ui &ui) {
  heading(ui, "Numbers");
  const Outcome *a = ui.state.outcome(0), *b = ui.state.outcome(1);
  const bool has_both = a && b;
  if ((!a && !b) || !ImGui::BeginTable("numbers", has_both ? 3 : 2, ImGuiTableFlags_BordersInnerH))
    return;
  ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupColumn("A", ImGuiTableColumnFlags_WidthFixed);
  if (has_both)
    ImGui::TableSetupColumn("B", ImGuiTableColumnFlags_WidthFixed);
  for (const NumberRow &row : number_rows(a, b)) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    wrapped_text(row.what);
    hint_word(ui, row.word);
    for (int seat = 0; seat < 2; ++seat) {
      if (!ui.state.outcome(seat))
        continue;
      ImGui::TableNextColumn();
      text_of(row.value[static_cast<std::size_t>(seat)]);
    }
  }
  ImGui::EndTable();
}

} // namespace asperity
