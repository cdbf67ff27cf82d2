// What is wrong: the findings of one or both jobs.
#include "asperity/report/number_text.h"
#include "finding_rows.h"
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string size_text(const Finding &finding) {
  return finding.size.empty() ? std::string{}
                              : quantity_text(finding.size.front().value, finding.size.front().unit);
}

ImU32 ink_of(const Ui &ui, Weight weight) {
  return weight == Weight::danger ? ui.inks.danger : (weight == Weight::flaw ? ui.inks.missed : ui.inks.soft);
}

const char *sign_of(Weight weight) {
  return weight == Weight::danger ? "danger" : (weight == Weight::flaw ? "flaw" : "note");
}

const Finding *finding_of(const Ui &ui, int seat, int at) {
  const Outcome *outcome = ui.state.outcome(seat);
  return outcome && at >= 0 ? &outcome->findings[static_cast<std::size_t>(at)] : nullptr;
}

void value_cell(const Ui &ui, const FindingRow &row, int seat) {
  ImGui::TableNextColumn();
  const int at = row.finding[static_cast<std::size_t>(seat)];
  const Finding *finding = finding_of(ui, seat, at);
  if (!finding) {
    soft_text(ui, "none");
    return;
  }
  const std::string size = size_text(*finding);
  if (ImGui::Selectable(fmt::format("{}##{}", size.empty() ? "yes" : size, seat).c_str(),
                        ui.state.choice.seat == seat && ui.state.choice.finding == at))
    ui.wish(ChooseFinding{seat, at});
}

void one_row(const Ui &ui, const FindingRow &row, bool has_both) {
  const int seat = row.finding[0] >= 0 ? 0 : 1;
  const int at = row.finding[static_cast<std::size_t>(seat)];
  const Finding &finding = *finding_of(ui, seat, at);
  ImGui::PushID(seat * 100000 + at);
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  const bool is_chosen = ui.state.choice.seat == seat && ui.state.choice.finding == at;
  const ImVec2 start = ImGui::GetCursorPos();
  const float two_lines = 2.0f * ImGui::GetTextLineHeight() + ui.px(2);
  if (ImGui::Selectable("##row", is_chosen, ImGuiSelectableFlags_None, {0, two_lines}))
    ui.wish(ChooseFinding{seat, at});
  mark_place(ui, fmt::format("finding {}{}", seat == 0 ? "A" : "B", at + 1));
  hint_word(ui, name_of(finding.kind));
  if (is_chosen && !ImGui::IsItemVisible())
    ImGui::SetScrollHereY();
  const ImVec2 end = ImGui::GetCursorPos();
  ImGui::SetCursorPos(start);
  text_of(fmt::format("{}{}  {}", has_both ? (seat == 0 ? "A" : "B") : "", at + 1, name_of(finding.kind)));
  ImGui::SetCursorPos({start.x, start.y + ImGui::GetTextLineHeight()});
  ink_text(ink_of(ui, finding.weight), sign_of(finding.weight));
  ImGui::SameLine();
  const auto feature = static_cast<std::size_t>(finding.feature);
  const Outcome &outcome = *ui.state.outcome(seat);
  if (finding.feature >= 0 && feature < outcome.job.features.size())
    soft_text(ui, fmt::format("on the {}", name_of(outcome.job.features[feature])));
  ImGui::SetCursorPos(end);
  for (int i = 0; i < 2; ++i)
    if (ui.state.outcome(i))
      value_cell(ui, row, i);
  ImGui::PopID();
}

} // namespace

void findings_panel(const Ui &ui) {
  const Outcome *a = ui.state.outcome(0), *b = ui.state.outcome(1);
  heading(ui, "What is wrong");
  if (!a && !b)
    return;
  const std::vector<FindingRow> rows = finding_rows(a, b);
  if (rows.empty()) {
    wrapped_text("No flaw and no danger was found.");
    return;
  }
  const bool has_both = a && b;
  if (!ImGui::BeginTable("findings", has_both ? 3 : 2, ImGuiTableFlags_BordersInnerH))
    return;
  ImGui::TableSetupColumn("finding", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableSetupColumn("A", ImGuiTableColumnFlags_WidthFixed, ui.px(66));
  if (has_both)
    ImGui::TableSetupColumn("B", ImGuiTableColumnFlags_WidthFixed, ui.px(66));
  for (const FindingRow &row : rows)
    one_row(ui, row, has_both);
  ImGui::EndTable();
}

} // namespace asperity
