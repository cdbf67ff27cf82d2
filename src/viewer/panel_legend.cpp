// What lies over a picture: colour legend, numbers on marks, words on plates.
#include "panels.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr std::size_t kMostEntries = 7;
constexpr double kScaleWidth = 190;

std::string value_text(double value) {
  return std::abs(value) >= 100.0 ? fmt::format("{:.0f}", value) : fmt::format("{:.3g}", value);
}

double legend_height(const Ui &ui, const Legend &legend) {
  const auto line = static_cast<double>(ImGui::GetTextLineHeight()) / ui.state.look.scale;
  double height = legend.title.empty() ? 8 : 10 + line;
  if (!legend.stops.empty())
    height += 18 + line;
  height += line * static_cast<double>(std::min(legend.entries.size(), kMostEntries));
  if (legend.entries.size() > kMostEntries)
    height += line;
  return height;
}

void draw_scale(const Ui &ui, const Legend &legend, ImVec2 at) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  const double low = legend.stops.front().value, high = legend.stops.back().value;
  const float width = ui.px(kScaleWidth), tall = ui.px(11);
  const auto x_of = [&](double value) {
    return at.x + width * static_cast<float>(high > low ? (value - low) / (high - low) : 0.0);
  };
  for (std::size_t i = 0; i + 1 < legend.stops.size(); ++i) {
    const ImU32 from = colour_of(legend.stops[i].colour), to = colour_of(legend.stops[i + 1].colour);
    list->AddRectFilledMultiColor({x_of(legend.stops[i].value), at.y},
                                  {x_of(legend.stops[i + 1].value), at.y + tall}, from, to, to, from);
  }
  list->AddRect(at, {at.x + width, at.y + tall}, ui.inks.soft);
  const float below = at.y + tall + ui.px(2);
  for (const double value : {low, 0.5 * (low + high), high}) {
    const std::string text = value_text(value);
    const float half = 0.5f * ImGui::CalcTextSize(text.c_str()).x;
    const float x = std::clamp(x_of(value) - half, at.x, at.x + width - 2 * half);
    list->AddText({x, below}, ui.inks.ink, text.c_str());
  }
}

} // namespace

void draw_plate(const Ui &ui, ImVec2 at, std::string_view text, ImU32 ink) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  const char *end = text.data() + text.size();
  const ImVec2 size = ImGui::CalcTextSize(text.data(), end);
  const float pad = ui.px(4);
  list->AddRectFilled({at.x - pad, at.y - pad / 2}, {at.x + size.x + pad, at.y + size.y + pad / 2},
                      (ui.inks.panel & 0x00FFFFFFu) | 0xDC000000u, pad);
  list->AddText(at, ink, text.data(), end);
}

void draw_legend(const Ui &ui, const Drawn &drawn, ImVec2 low, ImVec2 high) {
  const Legend &legend = drawn.legend;
  if (legend.title.empty() && legend.entries.empty())
    return;
  ImDrawList *list = ImGui::GetWindowDrawList();
  const float line = ImGui::GetTextLineHeight(), pad = ui.px(6);
  const float tall = ui.px(legend_height(ui, legend));
  const std::string title =
      legend.unit.empty() ? legend.title : fmt::format("{} [{}]", legend.title, legend.unit);
  float wide = std::max(ui.px(legend.stops.empty() ? 0 : kScaleWidth), ImGui::CalcTextSize(title.c_str()).x);
  for (std::size_t i = 0; i < std::min(legend.entries.size(), kMostEntries); ++i)
    wide = std::max(wide, ImGui::CalcTextSize(legend.entries[i].name.c_str()).x + ui.px(66));
  if (high.y - low.y < tall + ui.px(16))
    return;
  ImVec2 at{low.x + ui.px(14), high.y - tall - ui.px(8)};
  list->AddRectFilled({at.x - pad, at.y - pad}, {at.x + wide + pad, high.y - ui.px(8)},
                      (ui.inks.panel & 0x00FFFFFFu) | 0xDC000000u, pad);
  if (!title.empty()) {
    list->AddText(at, ui.inks.ink, title.c_str());
    at.y += line + ui.px(4);
  }
  if (!legend.stops.empty()) {
    draw_scale(ui, legend, at);
    at.y += line + ui.px(16);
  }
  for (std::size_t i = 0; i < std::min(legend.entries.size(), kMostEntries); ++i) {
    const LegendEntry &entry = legend.entries[i];
    list->AddRectFilled({at.x, at.y + line * 0.15f}, {at.x + ui.px(14), at.y + line * 0.85f},
                        colour_of(entry.colour));
    list->AddText({at.x + ui.px(20), at.y}, ui.inks.ink,
                  fmt::format("{}  {:.0f} %", entry.name, 100.0 * entry.share).c_str());
    at.y += line;
  }
  if (legend.entries.size() > kMostEntries)
    list->AddText({at.x + ui.px(20), at.y}, ui.inks.soft,
                  fmt::format("and {} more", legend.entries.size() - kMostEntries).c_str());
}

void draw_mark_numbers(const Ui &ui, const ShownPicture &picture, ImVec2 low) {
  ImDrawList *list = ImGui::GetWindowDrawList();
  const Theme theme = ui.state.look.is_dark ? dark_theme() : light_theme();
  constexpr double kInside = 0.62; ///< of the mark's radius: its ring stays
  for (const PlacedMark &mark : picture.drawn.marks) {
    if (mark.is_hidden)
      continue;
    const auto shown = [&](double px) { return static_cast<float>(px * picture.shrink); };
    const ImVec2 middle{low.x + shown(mark.x_px), low.y + shown(mark.y_px)};
    const std::string number = std::to_string(mark.finding + 1);
    const ImVec2 size = ImGui::CalcTextSize(number.c_str());
    list->AddCircleFilled(middle, std::max(shown(kInside * mark.radius_px), 0.55f * size.y),
                          colour_of(theme.mark_halo));
    list->AddText({middle.x - 0.5f * size.x, middle.y - 0.5f * size.y}, colour_of(theme.mark),
                  number.c_str());
  }
}

} // namespace asperity
