// What is wanted of the part, and whether the prediction meets it.
#include "asperity/report/number_text.h"
#include "finding_rows.h"
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void value_cell(const Ui &ui, const WantedCheck *check) {
  ImGui::TableNextColumn();
  if (!check)
    return;
  ink_text(check->met ? ui.inks.met : ui.inks.missed,
           fmt::format("{} {}", quantity_text(check->predicted, check->unit),
                       check->met ? "\xE2\x9C\x93" : "\xE2\x9C\x97"));
  hint(ui, check->met ? "Met." : "Not met.");
}

void one_row(const Ui &ui, const WantedRow &row, bool has_both) {
  const WantedCheck &check = row.check[0] ? *row.check[0] : *row.check[1];
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  wrapped_text(fmt::format("{}: {}", check.feature, check.what));
  hint_word(ui, check.what == "lip height" ? "base lip" : check.what);
  ImGui::PushTextWrapPos(0.0f);
  soft_text(ui, check.wanted);
  ImGui::PopTextWrapPos();
  if (has_both || row.check[0])
    value_cell(ui, row.check[0]);
  if (has_both || !row.check[0])
    value_cell(ui, row.check[1]);
}

} // namespace

void wanted_panel(const Ui &ui) {
  heading(ui, "What is wanted");
  const Outcome *a = ui.state.outcome(0), *b = ui.state.outcome(1);
  if (!a && !b) {
    soft_text(ui, "No prediction yet.");
    return;
  }
  const bool has_both = a && b;
  const std::vector<WantedRow> rows = wanted_rows(a, b);
  if (rows.empty()) {
    wrapped_text("The job asks for no size and no finish: give it some under its walls and floors.");
    return;
  }
  if (!ImGui::BeginTable("checks", has_both ? 3 : 2,
                         ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingStretchProp))
    return;
  ImGui::TableSetupColumn("wanted", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupColumn("A", ImGuiTableColumnFlags_WidthFixed);
  if (has_both)
    ImGui::TableSetupColumn("B", ImGuiTableColumnFlags_WidthFixed);
  if (has_both) {
    ImGui::TableNextRow();
    for (int column = 0; column < 3; ++column) {
      ImGui::TableNextColumn();
      if (column > 0)
        seat_letter(ui, column - 1);
    }
  }
  for (const WantedRow &row : rows)
    one_row(ui, row, has_both);
  ImGui::EndTable();
}

} // namespace asperity
