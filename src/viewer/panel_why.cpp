// Why: the chosen finding, or the chosen place of the surface and what made it.
#include "asperity/report/number_text.h"
#include "panels.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void paragraph(const Ui &ui, const char *title, std::string_view text) {
  if (text.empty())
    return;
  ImGui::Spacing();
  wrapped_soft_text(ui, title);
  wrapped_text(text);
}

void line_buttons(const Ui &ui, const Finding &finding) {
  if (finding.lines.empty())
    return;
  ImGui::Spacing();
  wrapped_soft_text(ui, fmt::format("Program lines ({} in all)", finding.line_count));
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  for (std::size_t i = 0; i < finding.lines.size(); ++i) {
    const std::string label = std::to_string(finding.lines[i]);
    const float width = ImGui::CalcTextSize(label.c_str()).x + 3 * ImGui::GetStyle().FramePadding.x;
    if (i > 0 && ImGui::GetItemRectMax().x + width < right)
      ImGui::SameLine();
    if (ImGui::SmallButton(label.c_str()))
      ui.wish(ChooseLine{ui.state.choice.seat, finding.lines[i]});
    hint(ui, "Lights this line in the program and its piece of the path.");
  }
}

void finding_text(const Ui &ui, const Finding &finding) {
  heading(ui, fmt::format("{}  {}", ui.state.choice.finding + 1, name_of(finding.kind)));
  hint_word(ui, name_of(finding.kind));
  wrapped_text(finding.where);
  for (const Quantity &size : finding.size)
    wrapped_text(fmt::format("{}: {}", size.name, quantity_text(size.value, size.unit)));
  paragraph(ui, "Cause", finding.cause);
  paragraph(ui, "Cure", finding.remedy);
  paragraph(ui, "This number rests on", finding.rests_on);
  line_buttons(ui, finding);
}

const CutSample *sample_on(const Outcome &outcome, int piece, Vec3 p) {
  const CutSample *best = nullptr;
  for (const CutSample &sample : outcome.cut.samples)
    if (static_cast<int>(sample.piece) == piece &&
        (!best || glm::length(sample.position_mm - p) < glm::length(best->position_mm - p)))
      best = &sample;
  return best;
}

void place_text(const Ui &ui, const Outcome &outcome, const Pick &cell) {
  const auto feature = static_cast<std::size_t>(cell.feature);
  heading(ui, fmt::format("A place on the {}", name_of(outcome.job.features[feature])));
  wrapped_text(
      fmt::format("x {:.3f}, y {:.3f}, z {:.3f} mm", cell.point_mm.x, cell.point_mm.y, cell.point_mm.z));
  wrapped_text(fmt::format("residual {}", um_text(um_from_mm(cell.residual_mm))));
  hint_word(ui, "residual");
  if (cell.piece < 0) {
    wrapped_text("No pass has cut here.");
    return;
  }
  const PathPiece &piece = outcome.path.pieces[static_cast<std::size_t>(cell.piece)];
  wrapped_text(fmt::format("made by program line {}", piece.line));
  if (const CutSample *at = sample_on(outcome, cell.piece, cell.point_mm)) {
    wrapped_text(fmt::format("at {:.0f} mm/min of {:.0f} programmed, chip load {:.4f} mm",
                             mm_per_min_from_mm_per_s(static_cast<double>(at->speed_mm_per_s)),
                             mm_per_min_from_mm_per_s(piece.feed_mm_per_s),
                             static_cast<double>(at->feed_per_tooth_mm)));
    hint_word(ui, "chip load");
    wrapped_text(fmt::format(
        "depth of cut {:.2f} mm, bending {}, {} cut", static_cast<double>(at->axial_depth_mm),
        um_text(um_from_mm(static_cast<double>(at->tip_bend_mm))), at->climb ? "climb" : "conventional"));
    hint_word(ui, "bending");
  }
}

} // namespace

void why_panel(const Ui &ui) {
  const Choice &choice = ui.state.choice;
  const Outcome *outcome = ui.state.outcome(choice.seat);
  if (!outcome) {
    wrapped_text("Open a job: the prediction is made by itself.");
    return;
  }
  if (ui.state.has_both()) {
    seat_letter(ui, choice.seat);
    ImGui::SameLine();
    wrapped_soft_text(ui, outcome->job.title);
  }
  if (choice.finding >= 0)
    finding_text(ui, outcome->findings[static_cast<std::size_t>(choice.finding)]);
  else if (choice.cell)
    place_text(ui, *outcome, *choice.cell);
  else
    wrapped_text(
        "Choose a finding on the left, or click the surface: here stands what made it and what cures "
        "it.");
  if (outcome->notes.empty())
    return;
  ImGui::Spacing();
  ImGui::Separator();
  ImGui::Spacing();
  wrapped_soft_text(ui, "What this prediction rests on");
  for (const std::string &note : outcome->notes)
    wrapped_soft_text(ui, "\xC2\xB7 " + note);
}

} // namespace asperity
