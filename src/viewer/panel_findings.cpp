// What is wrong: the findings of one or both jobs.
#include "asperity/report/number_text.h"
#include "finding_rows.h"
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string size_text(const Finding &finding) {
  return finding.size.empty() ? std::string("yes")
                              : quantity_text(finding.size.front().value, finding.size.front().unit);
}

ImU32 ink_of(const Ui &ui, Weight weight) {
  return weight == Weight::danger ? ui.inks.danger : (weight == Weight::flaw ? ui.inks.missed : ui.inks.soft);
}

const char *sign_of(Weight weight) {
  return weight == Weight::danger ? "danger" : (weight == Weight::flaw ? "flaw" : "note");
}

const Finding *finding_of(const Ui &ui, int seat, int at) {
  const Outcome *outcome = ui.state.judged(seat);
  return outcome && at >= 0 ? &outcome->findings[static_cast<std::size_t>(at)] : nullptr;
}

std::string place_of(const Outcome &outcome, const Finding &finding) {
  const auto feature = static_cast<std::size_t>(finding.feature);
  return finding.feature >= 0 && feature < outcome.job.features.size()
             ? name_of(outcome.job.features[feature])
             : std::string{};
}

bool is_chosen(const Ui &ui, int seat, int at) {
  return at >= 0 && ui.state.choice.seat == seat && ui.state.choice.finding == at;
}

/// One job's side of the second line.
void side(const Ui &ui, const FindingRow &row, int seat) {
  const int at = row.finding[static_cast<std::size_t>(seat)];
  const Finding *finding = finding_of(ui, seat, at);
  seat_letter(ui, seat);
  ImGui::SameLine();
  if (!finding)
    return soft_text(ui, "none");
  ink_text(ink_of(ui, finding->weight), size_text(*finding));
}

/// Both lines are one button; which half of the lower line was clicked says whose finding is meant.
int clicked_seat(const FindingRow &row, bool has_both, ImVec2 low, float width) {
  const int first = row.finding[0] >= 0 ? 0 : 1;
  if (!has_both || row.finding[0] < 0 || row.finding[1] < 0)
    return first;
  return ImGui::GetIO().MousePos.x > low.x + 0.5f * width ? 1 : 0;
}

void one_row(const Ui &ui, const FindingRow &row, bool has_both) {
  const int first = row.finding[0] >= 0 ? 0 : 1;
  const int at = row.finding[static_cast<std::size_t>(first)];
  const Finding &finding = *finding_of(ui, first, at);
  ImGui::PushID(first * 100000 + at);
  ImGui::Separator();
  const ImVec2 start = ImGui::GetCursorPos(), low = ImGui::GetCursorScreenPos();
  const float width = ImGui::GetContentRegionAvail().x, line = ImGui::GetTextLineHeight() + ui.px(3);
  const bool is_lit = is_chosen(ui, 0, row.finding[0]) || is_chosen(ui, 1, row.finding[1]);
  if (ImGui::Selectable("##row", is_lit, ImGuiSelectableFlags_None, {0, 2 * line})) {
    const int seat = clicked_seat(row, has_both, low, width);
    ui.wish(ChooseFinding{seat, row.finding[static_cast<std::size_t>(seat)]});
  }
  mark_place(ui, fmt::format("finding {}{}", first == 0 ? "A" : "B", at + 1));
  hint_word(ui, name_of(finding.kind));
  if (is_lit && !ImGui::IsItemVisible())
    ImGui::SetScrollHereY();
  const ImVec2 end = ImGui::GetCursorPos();
  ImGui::SetCursorPos(start);
  const std::string right = has_both ? std::string{} : size_text(finding);
  const float right_width = ImGui::CalcTextSize(right.c_str()).x;
  short_text(ui, ui.inks.ink,
             fmt::format("{}{}  {}", has_both ? (first == 0 ? "A" : "B") : "", at + 1, name_of(finding.kind)),
             width - right_width - ui.px(8));
  ImGui::SetCursorPos({start.x + width - right_width, start.y});
  text_of(right);
  ImGui::SetCursorPos({start.x, start.y + line});
  if (has_both) {
    side(ui, row, 0);
    ImGui::SameLine(start.x + 0.5f * width);
    side(ui, row, 1);
  } else {
    ink_text(ink_of(ui, finding.weight), sign_of(finding.weight));
    ImGui::SameLine();
    if (const std::string place = place_of(*ui.state.judged(first), finding); !place.empty())
      soft_text(ui, "on the " + place);
  }
  ImGui::SetCursorPos(end);
  ImGui::PopID();
}

} // namespace

void findings_panel(const Ui &ui) {
  const Outcome *a = ui.state.judged(0), *b = ui.state.judged(1);
  heading(ui, "What is wrong");
  if (!a && !b)
    return soft_text(ui, "No prediction yet.");
  for (int seat = 0; seat < 2; ++seat)
    if (ui.state.judged(seat) && !ui.state.seat(seat).has(Grain::fine))
      wrapped_soft_text(ui, "A first look, coarse: lines finer than its cells are not seen yet.");
  const std::vector<FindingRow> rows = finding_rows(a, b);
  if (rows.empty() && ui.state.seat(a ? 0 : 1).has(Grain::fine))
    wrapped_text("No flaw and no danger was found.");
  for (const FindingRow &row : rows)
    one_row(ui, row, a && b);
}

} // namespace asperity
