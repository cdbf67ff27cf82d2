// The trace laid on the surface: profile, mean line, and what a roughness tester would show.
#include "number_rows.h"
#include "panels.h"
#include "profile_plot.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

void reading(const Ui &ui, int seat, const Trace &trace) {
  const StylusReading &r = trace.reading;
  if (ui.state.has_both()) {
    seat_letter(ui, seat);
    ImGui::SameLine();
  }
  text_of(fmt::format("Ra {}", roughness_text(um_from_mm(r.parameters.ra_mm))));
  hint_word(ui, "Ra");
  ImGui::SameLine();
  text_of(fmt::format("Rz {}", roughness_text(um_from_mm(r.parameters.rz_mm))));
  hint_word(ui, "Rz");
  ImGui::SameLine();
  text_of(fmt::format("cutoff {:.3g} mm", r.settings.cutoff_mm));
  hint_word(ui, "cutoff");
  ImGui::SameLine();
  soft_text(ui, r.fit.too_short() ? fmt::format("only {} of {} sections fit: an indication", r.fit.sections,
                                                r.fit.wanted_sections)
                                  : fmt::format("{} sections", r.fit.sections));
}

void grid(const Ui &ui, const PlotRange &range, ImVec2 low, ImVec2 high) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  list->AddRect(low, high, ui.inks.rule);
  const double step_um = round_step(range.high_um - range.low_um, 4);
  for (double at = std::ceil(range.low_um / step_um) * step_um; at <= range.high_um; at += step_um) {
    const float y =
        high.y - static_cast<float>((at - range.low_um) / (range.high_um - range.low_um)) * (high.y - low.y);
    list->AddLine({low.x, y}, {high.x, y}, ui.inks.rule);
    const std::string text = fmt::format("{:.3g}", std::abs(at) < 1e-9 ? 0.0 : at);
    list->AddText(
        {low.x - ImGui::CalcTextSize(text.c_str()).x - ui.px(4), y - 0.5f * ImGui::GetTextLineHeight()},
        ui.inks.soft, text.c_str());
  }
  const double step_mm = round_step(range.end_mm - range.begin_mm, 6);
  for (double at = std::ceil(range.begin_mm / step_mm) * step_mm; at <= range.end_mm; at += step_mm) {
    const float x = low.x + static_cast<float>((at - range.begin_mm) / (range.end_mm - range.begin_mm)) *
                                (high.x - low.x);
    list->AddLine({x, high.y}, {x, high.y + ui.px(4)}, ui.inks.soft);
    const std::string text = fmt::format("{:.6g}", at);
    list->AddText({x - 0.5f * ImGui::CalcTextSize(text.c_str()).x, high.y + ui.px(4)}, ui.inks.soft,
                  text.c_str());
  }
}

void plot(const Ui &ui, const Trace &trace, const PlotRange &range, ImU32 ink, ImVec2 low, ImVec2 high) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  const std::vector<ImVec2> profile = plot_line(trace.profile_mm, trace, range, low, high);
  list->AddPolyline(profile.data(), static_cast<int>(profile.size()), ink, 0, ui.px(1.4));
  const std::vector<ImVec2> mean = plot_line(trace.waviness_mm, trace, range, low, high);
  list->AddPolyline(mean.data(), static_cast<int>(mean.size()), ui.inks.soft, 0, ui.px(1));
}

/// Range of both traces, with a little air.
bool range_of(const TraceState &state, PlotRange &range) {
  bool is_there = false;
  for (const std::optional<Trace> &trace : state.laid) {
    if (!trace)
      continue;
    if (!is_there)
      range = {trace->begin_mm, trace->begin_mm, 0, 0};
    range.hold(*trace);
    is_there = true;
  }
  const double air = std::max(0.08 * (range.high_um - range.low_um), 0.02);
  range.low_um -= air;
  range.high_um += air;
  return is_there;
}

void words_instead(const Ui &ui) {
  const TraceState &trace = ui.state.trace;
  const auto seat = static_cast<std::size_t>(ui.state.space.front);
  if (trace.is_running[0] || trace.is_running[1] || trace.is_wanted[seat])
    soft_text(ui, "The trace is being laid, tooth marks included...");
  else
    wrapped_text(trace.why[seat].empty() ? "The trace does not meet the surface." : trace.why[seat]);
}

} // namespace

void profile_panel(const Ui &ui) {
  if (ImGui::SmallButton("x"))
    ui.wish(ClearTrace{});
  hint(ui, "Takes the trace away.");
  ImGui::SameLine();
  PlotRange range;
  if (!range_of(ui.state.trace, range))
    return words_instead(ui);
  bool is_first = true;
  for (int seat = 0; seat < 2; ++seat)
    if (const auto &trace = ui.state.trace.laid[static_cast<std::size_t>(seat)]) {
      if (!is_first)
        ImGui::SameLine(0, ui.px(16));
      is_first = false;
      ImGui::BeginGroup();
      reading(ui, seat, *trace);
      ImGui::EndGroup();
    }
  const ImVec2 at = ImGui::GetCursorScreenPos(), room = ImGui::GetContentRegionAvail();
  const ImVec2 low{at.x + ui.px(44), at.y + ui.px(2)};
  const ImVec2 high{at.x + room.x - ui.px(8), at.y + room.y - ui.px(20)};
  if (high.x - low.x < ui.px(40) || high.y - low.y < ui.px(20))
    return;
  grid(ui, range, low, high);
  ImGui::GetWindowDrawList()->PushClipRect(low, high, true);
  for (std::size_t seat = 0; seat < 2; ++seat)
    if (ui.state.trace.laid[seat])
      plot(ui, *ui.state.trace.laid[seat], range, seat == 0 ? ui.inks.a : ui.inks.b, low, high);
  ImGui::GetWindowDrawList()->PopClipRect();
  ImGui::GetWindowDrawList()->AddText({low.x + ui.px(4), low.y + ui.px(1)}, ui.inks.soft, "um");
  const std::string along = fmt::format("mm along {}", ui.state.trace.request.along);
  ImGui::GetWindowDrawList()->AddText(
      {high.x - ImGui::CalcTextSize(along.c_str()).x, high.y - ImGui::GetTextLineHeight() - ui.px(2)},
      ui.inks.soft, along.c_str());
}

} // namespace asperity
