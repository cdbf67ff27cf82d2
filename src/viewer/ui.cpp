// The few things that all panels do.
#include "ui.h"

#include "words.h"
#include "wrap_words.h"

namespace asperity {

namespace {

const char *end_of(std::string_view text) { return text.data() + text.size(); }

std::string in_lines(std::string_view text, float width) {
  return wrap_words(text, width, [](std::string_view part) {
    return static_cast<double>(ImGui::CalcTextSize(part.data(), end_of(part)).x);
  });
}

} // namespace

void text_of(std::string_view text) { ImGui::TextUnformatted(text.data(), end_of(text)); }

void ink_text(ImU32 ink, std::string_view text) {
  ImGui::PushStyleColor(ImGuiCol_Text, ink);
  text_of(text);
  ImGui::PopStyleColor();
}

void soft_text(const Ui &ui, std::string_view text) { ink_text(ui.inks.soft, text); }

void heading(const Ui &ui, std::string_view text) {
  ImGui::PushFont(ui.fonts.strong);
  text_of(text);
  ImGui::PopFont();
}

void wrapped_text(std::string_view text) { text_of(in_lines(text, ImGui::GetContentRegionAvail().x)); }

void wrapped_soft_text(const Ui &ui, std::string_view text) {
  ImGui::PushStyleColor(ImGuiCol_Text, ui.inks.soft);
  wrapped_text(text);
  ImGui::PopStyleColor();
}

std::string shortened(std::string_view text, float width) {
  const auto fits = [&](std::string_view part) {
    return ImGui::CalcTextSize(part.data(), end_of(part)).x <= width;
  };
  if (fits(text))
    return std::string(text);
  std::string part(text);
  while (!part.empty() && !fits(part + "\xE2\x80\xA6")) {
    // Whole characters of UTF-8 go.
    while (!part.empty() && (static_cast<unsigned char>(part.back()) & 0xC0u) == 0x80u)
      part.pop_back();
    if (!part.empty())
      part.pop_back();
  }
  return part + "\xE2\x80\xA6";
}

void short_text(const Ui &ui, ImU32 ink, std::string_view text, float width) {
  const std::string part = shortened(text, width);
  ink_text(ink, part);
  if (part.size() != text.size())
    hint(ui, text);
}

void hint(const Ui &ui, std::string_view text) {
  if (text.empty() || !ImGui::IsItemHovered(ImGuiHoveredFlags_AllowWhenDisabled))
    return;
  ImGui::BeginTooltip();
  text_of(in_lines(text, ui.px(340)));
  ImGui::EndTooltip();
}

void hint_word(const Ui &ui, std::string_view word) { hint(ui, meaning_of(word)); }

void seat_letter(const Ui &ui, int seat) {
  ImGui::PushFont(ui.fonts.strong);
  ink_text(seat == 0 ? ui.inks.a : ui.inks.b, seat == 0 ? "A" : "B");
  ImGui::PopFont();
}

void mark_place(const Ui &ui, const std::string &name) {
  const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
  ui.says.places[name] = {low.x, low.y, high.x - low.x, high.y - low.y};
}

void same_line_if_fits(float width) {
  const float right = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
  if (ImGui::GetItemRectMax().x + ImGui::GetStyle().ItemSpacing.x + width <= right)
    ImGui::SameLine();
}

float button_width(const char *label) {
  return ImGui::CalcTextSize(label, nullptr, true).x + 2 * ImGui::GetStyle().FramePadding.x;
}

bool small_choice(const char *label, bool is_chosen) {
  if (is_chosen)
    ImGui::PushStyleColor(ImGuiCol_Button, ImGui::GetStyleColorVec4(ImGuiCol_ButtonActive));
  const bool is_pressed = ImGui::Button(label);
  if (is_chosen)
    ImGui::PopStyleColor();
  return is_pressed;
}

} // namespace asperity
