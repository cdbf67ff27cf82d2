// The key numbers of one or both jobs, feature by feature.
#include "number_rows.h"
#include "panels.h"

#include <algorithm>

namespace asperity {

namespace {

void value(const Ui &ui, const NumberRow &row, int seat) {
  const std::string &text = row.value[static_cast<std::size_t>(seat)];
  if (text.empty())
    return soft_text(ui, "\xE2\x80\x93");
  if (row.better != seat)
    return text_of(text);
  ink_text(ui.inks.met, text);
  hint(ui, "The better of the two.");
}

/// Widest text of one column of values.
float width_of(const std::vector<NumberRow> &rows, std::size_t seat) {
  float width = 0.0f;
  for (const NumberRow &row : rows)
    width = std::max(width, ImGui::CalcTextSize(row.value[seat].c_str()).x);
  return width;
}

} // namespace

void numbers_panel(const Ui &ui) {
  heading(ui, "Numbers");
  const Outcome *a = ui.state.judged(0), *b = ui.state.judged(1);
  const bool has_both = a && b;
  if (!a && !b)
    return soft_text(ui, "No prediction yet.");
  const std::vector<NumberRow> rows = number_rows(ui.state.numbers(0), ui.state.numbers(1));
  if (!ImGui::BeginTable("numbers", has_both ? 3 : 2, ImGuiTableFlags_BordersInnerH))
    return;
  ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch);
  for (const int seat : {0, 1})
    if (ui.state.judged(seat))
      ImGui::TableSetupColumn(seat == 0 ? "A" : "B", ImGuiTableColumnFlags_WidthFixed,
                              width_of(rows, static_cast<std::size_t>(seat)));
  std::string feature;
  for (const NumberRow &row : rows) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    if (row.feature != feature) {
      heading(ui, feature = row.feature);
      ImGui::TableNextRow();
      ImGui::TableNextColumn();
    }
    wrapped_text(row.what);
    hint_word(ui, row.what.substr(0, row.what.find_first_of(" ,")));
    for (const int seat : {0, 1})
      if (ui.state.judged(seat)) {
        ImGui::TableNextColumn();
        value(ui, row, seat);
      }
  }
  ImGui::EndTable();
}

} // namespace asperity
