// The moment on the path: a slider, and playing.
#include "panels.h"

#include "asperity/render/scene.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>

namespace asperity {

void time_panel(const Ui &ui) {
  const SpaceState &space = ui.state.space;
  const Outcome *outcome = ui.state.outcome(space.front);
  if (!outcome || outcome->path.pieces.empty()) {
    soft_text(ui, "The path's time stands here.");
    return;
  }
  if (ImGui::Button(space.is_playing ? "Pause" : "Play"))
    ui.wish(SetPlaying{!space.is_playing});
  hint(ui, "Moves the cutter along the path (space bar).");
  ImGui::SameLine();
  double rate = space.play_rate;
  constexpr double kSlow = 0.1, kFast = 100;
  ImGui::SetNextItemWidth(ui.px(64));
  if (ImGui::SliderScalar("##rate", ImGuiDataType_Double, &rate, &kSlow, &kFast, "%.3gx",
                          ImGuiSliderFlags_Logarithmic))
    ui.wish(SetPlayRate{rate});
  hint(ui, "How much faster than on the machine.");
  ImGui::SameLine();
  const auto tip = tip_at(outcome->path, space.moment_s);
  const PathPiece *piece = tip ? &outcome->path.pieces[tip->piece] : nullptr;
  const std::string words = fmt::format("{:.1f} s", space.moment_s);
  const std::string line = piece ? fmt::format("line {}", piece->line) : std::string{};
  const float room = ImGui::CalcTextSize("line 000000").x + ui.px(12);
  double moment = space.moment_s;
  constexpr double kStart = 0.0;
  ImGui::SetNextItemWidth(std::max(ImGui::GetContentRegionAvail().x - room, ui.px(60)));
  if (ImGui::SliderScalar("##moment", ImGuiDataType_Double, &moment, &kStart, &outcome->path.duration_s,
                          words.c_str()))
    ui.wish(SetMoment{moment});
  hint(ui, fmt::format("{} of {} on the machine.", duration_text(space.moment_s),
                       duration_text(outcome->path.duration_s)));
  ImGui::SameLine();
  if (piece && ImGui::Button(line.c_str()))
    ui.wish(ChooseLine{space.front, piece->line});
  hint(ui, "The program line that runs at this moment.");
}

} // namespace asperity
