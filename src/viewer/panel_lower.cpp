// Below the part: the chosen feature laid flat or cut through.
#include "panels.h"
#include "place.h"

#include <fmt/format.h>

namespace asperity {

namespace {

void feature_choice(const Ui &ui, const Outcome &outcome) {
  const auto now = static_cast<std::size_t>(ui.state.strip.feature);
  ImGui::SetNextItemWidth(ui.px(120));
  if (ImGui::BeginCombo("##feature", name_of(outcome.job.features[now]).c_str())) {
    for (std::size_t i = 0; i < outcome.job.features.size(); ++i)
      if (ImGui::Selectable(fmt::format("{}##{}", name_of(outcome.job.features[i]), i).c_str(), i == now))
        ui.wish(ShowFeature{static_cast<int>(i)});
    ImGui::EndCombo();
  }
  hint(ui, "Which surface is shown here.");
}

void cut_choice(const Ui &ui, const Outcome &outcome) {
  const auto feature = static_cast<std::size_t>(ui.state.strip.feature);
  const bool is_wall = std::holds_alternative<WallChart>(outcome.charts[feature]);
  const CutRange range = cut_range(outcome, feature);
  double at = ui.state.section.at_mm;
  same_line_if_fits(ui.px(120));
  ImGui::SetNextItemWidth(std::max(ImGui::GetContentRegionAvail().x, ui.px(90)));
  if (ImGui::SliderScalar("##cut", ImGuiDataType_Double, &at, &range.low_mm, &range.high_mm,
                          is_wall ? "cut at s = %.2f mm" : "cut at y = %.2f mm",
                          ImGuiSliderFlags_AlwaysClamp))
    ui.wish(SetSection{at});
  mark_place(ui, "cut");
  hint(ui, is_wall
               ? "Where the wall is cut through: arc length round its outline. A chosen finding or a clicked "
                 "place moves it there."
               : "Where the floor is cut through. A chosen finding or a clicked place moves it there.");
}

} // namespace

void lower_panel(const Ui &ui) {
  const Outcome *outcome = ui.state.outcome(ui.state.space.front);
  const Lower lower = lower_shown(ui);
  if (!outcome || static_cast<std::size_t>(ui.state.strip.feature) >= outcome->charts.size()) {
    soft_text(ui, "The chosen surface is laid flat here.");
    return;
  }
  feature_choice(ui, *outcome);
  same_line_if_fits(button_width("Fit"));
  if (ImGui::Button("Fit##lower")) {
    if (lower == Lower::flat)
      ui.wish(FitStrip{});
    else
      ui.wish(FitCut{});
  }
  hint(ui, "All of it in the picture.");
  if (lower == Lower::section) {
    cut_choice(ui, *outcome);
    return section_panel(ui);
  }
  same_line_if_fits(ImGui::CalcTextSize("drag: roughness trace").x);
  soft_text(ui, "drag: roughness trace");
  hint(ui,
       "Drag along or up the surface to lay a trace and read its roughness; a click lays a short one and "
       "lights the line that cut there. Wheel: closer, down to single tooth marks; Ctrl+wheel: taller; right "
       "drag: moves; L + drag: lamp.");
  strip_panel(ui);
}

} // namespace asperity
