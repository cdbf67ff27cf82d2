// What is wanted of the part, and whether the prediction meets it.
#include "asperity/report/number_text.h"
#include "finding_rows.h"
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void value(const Ui &ui, const WantedCheck &check) {
  ink_text(check.met ? ui.inks.met : ui.inks.missed,
           fmt::format("{} {}", quantity_text(check.predicted, check.unit),
                       check.met ? "\xE2\x9C\x93" : "\xE2\x9C\x97"));
  hint(ui, check.met ? "Met." : "Not met.");
}

/// Right end of the line, or the next line where it does not fit.
void to_the_right(float width) {
  const float at = ImGui::GetWindowContentRegionMax().x - width;
  if (ImGui::GetItemRectMax().x - ImGui::GetWindowPos().x + ImGui::GetStyle().ItemSpacing.x < at)
    ImGui::SameLine(at);
}

void one_row(const Ui &ui, const WantedRow &row, bool has_both) {
  const WantedCheck &check = row.check[0] ? *row.check[0] : *row.check[1];
  ImGui::Separator();
  text_of(fmt::format("{}: {}", check.feature, check.what));
  hint_word(ui, check.what == "lip height" ? "base lip" : check.what);
  if (!has_both) {
    to_the_right(ui.px(92));
    value(ui, check);
    soft_text(ui, check.wanted);
    return;
  }
  to_the_right(ImGui::CalcTextSize(check.wanted.c_str()).x);
  soft_text(ui, check.wanted);
  for (int seat = 0; seat < 2; ++seat) {
    if (seat == 1)
      ImGui::SameLine(0.5f * ImGui::GetWindowWidth());
    seat_letter(ui, seat);
    ImGui::SameLine();
    if (const WantedCheck *each = row.check[static_cast<std::size_t>(seat)])
      value(ui, *each);
    else
      soft_text(ui, "not asked");
  }
}

} // namespace

void wanted_panel(const Ui &ui) {
  heading(ui, "What is wanted");
  const Outcome *a = ui.state.judged(0), *b = ui.state.judged(1);
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
  for (const WantedRow &row : rows)
    one_row(ui, row, has_both);
}

} // namespace asperity
