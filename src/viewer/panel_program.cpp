// The program's text beside the picture.
#include "panels.h"

#include "asperity/passes/job_program.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void one_line(const Ui &ui, int seat, const std::vector<std::string> &lines, std::uint32_t line) {
  const bool is_lit = ui.state.choice.seat == seat && ui.state.choice.line == line;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  if (ImGui::Selectable(fmt::format("{:>6}  {}##{}", line, lines[line - 1], line).c_str(), is_lit))
    ui.wish(ChooseLine{seat, line});
  mark_place(ui, fmt::format("line {}", line));
  if (is_lit)
    ImGui::GetWindowDrawList()->AddRectFilled(at, {at.x + ui.px(3), at.y + ImGui::GetTextLineHeight()},
                                              ui.inks.changed);
}

/// Moves the text once for every call to scroll.
void follow(const Ui &ui, std::size_t count) {
  ImGuiStorage *storage = ImGui::GetStateStorage();
  const ImGuiID id = ImGui::GetID("scrolled");
  if (storage->GetInt(id, 0) == ui.state.choice.scroll || ui.state.choice.line == 0)
    return;
  // Only a text that has been laid out once knows how tall its lines are.
  const float below = ImGui::GetScrollMaxY(), window = ImGui::GetWindowHeight();
  if (below <= 0.0f && ImGui::GetTextLineHeight() * static_cast<float>(count) > window)
    return;
  storage->SetInt(id, ui.state.choice.scroll);
  const float row = (below + window) / static_cast<float>(std::max<std::size_t>(count, 1));
  const auto line = static_cast<float>(std::min<std::size_t>(ui.state.choice.line, count));
  ImGui::SetScrollY(std::max(0.0f, line * row - 0.5f * window));
}

} // namespace

void program_panel(const Ui &ui) {
  const int seat = ui.state.space.front;
  const auto &result = ui.state.seat(seat).result;
  heading(ui, "Program");
  if (!result || result->program_lines.empty())
    return;
  if (result->job) {
    ImGui::SameLine();
    const Job &job = *result->job;
    soft_text(ui, (job.passes.empty() ? job.program : planned_name(job)).filename().string());
  }
  const std::vector<std::string> &lines = result->program_lines;
  ImGui::PushFont(ui.fonts.mono);
  if (ImGui::BeginChild("lines", {0, 0}, false, ImGuiWindowFlags_HorizontalScrollbar)) {
    follow(ui, lines.size());
    ImGuiListClipper clipper;
    clipper.Begin(static_cast<int>(lines.size()));
    while (clipper.Step())
      for (int i = clipper.DisplayStart; i < clipper.DisplayEnd; ++i)
        one_line(ui, seat, lines, static_cast<std::uint32_t>(i) + 1);
  }
  ImGui::EndChild();
  ImGui::PopFont();
}

} // namespace asperity
