// The look of the window: quiet ground, dark ink, one colour for what is pointed at.
#include "ui_style.h"

#include "asperity/render/theme.h"

#include <imgui_freetype.h>

#include <filesystem>

namespace asperity {

namespace {

constexpr const char *kFolder = "/usr/share/fonts/truetype/dejavu/";
constexpr float kBody_px = 14.0f;

// Latin, Greek, general punctuation, arrows, mathematical signs, shapes, tick and cross.
constexpr ImWchar kRanges[] = {0x0020, 0x024F, 0x0370, 0x03FF, 0x2010, 0x2044, 0x2190, 0x21FF, 0x2200,
                               0x22FF, 0x2300, 0x23CF, 0x25A0, 0x25FF, 0x2713, 0x2718, 0};

ImVec4 tint(int r, int g, int b, double cover = 1.0) {
  return {static_cast<float>(r) / 255.0f, static_cast<float>(g) / 255.0f, static_cast<float>(b) / 255.0f,
          static_cast<float>(cover)};
}

void colour_controls(ImVec4 *c, ImVec4 raised, ImVec4 hovered, ImVec4 pressed, ImVec4 chosen) {
  c[ImGuiCol_FrameBg] = c[ImGuiCol_Button] = raised;
  c[ImGuiCol_FrameBgHovered] = c[ImGuiCol_ButtonHovered] = c[ImGuiCol_HeaderHovered] = hovered;
  c[ImGuiCol_FrameBgActive] = c[ImGuiCol_ButtonActive] = c[ImGuiCol_HeaderActive] = pressed;
  c[ImGuiCol_Header] = c[ImGuiCol_TextSelectedBg] = pressed;
  c[ImGuiCol_Tab] = c[ImGuiCol_TabUnfocused] = raised;
  c[ImGuiCol_TabHovered] = hovered;
  c[ImGuiCol_TabActive] = c[ImGuiCol_TabUnfocusedActive] = pressed;
  c[ImGuiCol_CheckMark] = c[ImGuiCol_SliderGrab] = c[ImGuiCol_SliderGrabActive] = chosen;
  c[ImGuiCol_PlotHistogram] = chosen;
  c[ImGuiCol_SliderGrab].w = 0.45f; // the number stays readable through it
  c[ImGuiCol_SliderGrabActive].w = 0.6f;
  c[ImGuiCol_ScrollbarGrab] = hovered;
  c[ImGuiCol_ScrollbarGrabHovered] = c[ImGuiCol_ScrollbarGrabActive] = pressed;
  c[ImGuiCol_TableHeaderBg] = raised;
}

ImFont *load(const char *name, float size_px) {
  const std::string path = std::string(kFolder) + name;
  if (!std::filesystem::exists(path))
    return nullptr;
  return ImGui::GetIO().Fonts->AddFontFromFileTTF(path.c_str(), size_px, nullptr, kRanges);
}

} // namespace

ImU32 colour_of(Rgb colour, double cover) {
  return IM_COL32(colour.r, colour.g, colour.b, static_cast<int>(cover * 255.0 + 0.5));
}

Inks inks_of(bool is_dark) {
  if (is_dark)
    return {.ink = IM_COL32(236, 234, 228, 255),
            .soft = IM_COL32(168, 172, 178, 255),
            .rule = IM_COL32(80, 84, 90, 255),
            .panel = IM_COL32(38, 41, 47, 255),
            .met = IM_COL32(122, 204, 176, 255),
            .missed = IM_COL32(255, 170, 84, 255),
            .danger = IM_COL32(255, 116, 126, 255),
            .changed = IM_COL32(255, 204, 102, 255),
            .a = IM_COL32(138, 190, 240, 255),
            .b = IM_COL32(240, 168, 120, 255)};
  return {.ink = IM_COL32(28, 32, 38, 255),
          .soft = IM_COL32(88, 94, 102, 255),
          .rule = IM_COL32(196, 194, 188, 255),
          .panel = IM_COL32(252, 251, 248, 255),
          .met = IM_COL32(0, 104, 84, 255),
          .missed = IM_COL32(164, 78, 0, 255),
          .danger = IM_COL32(176, 0, 42, 255),
          .changed = IM_COL32(146, 92, 0, 255),
          .a = IM_COL32(22, 84, 142, 255),
          .b = IM_COL32(164, 70, 16, 255)};
}

void set_style(bool is_dark, double scale) {
  ImGuiStyle style;
  style.WindowRounding = style.ChildRounding = style.PopupRounding = 3.0f;
  style.FrameRounding = style.GrabRounding = style.TabRounding = 3.0f;
  style.WindowBorderSize = style.ChildBorderSize = 1.0f;
  style.FramePadding = {7, 3};
  style.ItemSpacing = {7, 5};
  style.WindowPadding = {9, 8};
  style.ScrollbarSize = 12;
  ImVec4 *c = style.Colors;
  if (is_dark) {
    ImGui::StyleColorsDark(&style);
    c[ImGuiCol_WindowBg] = tint(30, 33, 38);
    c[ImGuiCol_ChildBg] = tint(38, 41, 47);
    c[ImGuiCol_PopupBg] = tint(44, 48, 54);
    colour_controls(c, tint(56, 60, 67), tint(70, 76, 84), tint(84, 92, 102), tint(255, 158, 64));
  } else {
    ImGui::StyleColorsLight(&style);
    c[ImGuiCol_WindowBg] = tint(240, 238, 233);
    c[ImGuiCol_ChildBg] = tint(252, 251, 248);
    c[ImGuiCol_PopupBg] = tint(255, 255, 253);
    colour_controls(c, tint(228, 226, 220), tint(214, 212, 205), tint(196, 198, 198), tint(200, 84, 0));
  }
  const Inks inks = inks_of(is_dark);
  c[ImGuiCol_Text] = ImGui::ColorConvertU32ToFloat4(inks.ink);
  c[ImGuiCol_TextDisabled] = ImGui::ColorConvertU32ToFloat4(inks.soft);
  c[ImGuiCol_Border] = c[ImGuiCol_Separator] = ImGui::ColorConvertU32ToFloat4(inks.rule);
  c[ImGuiCol_TableBorderLight] = c[ImGuiCol_TableBorderStrong] = c[ImGuiCol_Border];
  c[ImGuiCol_ScrollbarBg] = tint(0, 0, 0, 0.0);
  style.ScaleAllSizes(static_cast<float>(scale));
  ImGui::GetStyle() = style;
}

Fonts load_fonts(double scale) {
  ImGuiIO &io = ImGui::GetIO();
  io.Fonts->Clear();
  io.Fonts->FontBuilderIO = ImGuiFreeType::GetBuilderForFreeType();
  io.Fonts->FontBuilderFlags = ImGuiFreeTypeBuilderFlags_LightHinting;
  const auto size_px = static_cast<float>(kBody_px * scale);
  Fonts fonts{.body = load("DejaVuSans.ttf", size_px),
              .strong = load("DejaVuSans-Bold.ttf", size_px),
              .mono = load("DejaVuSansMono.ttf", size_px * 0.93f)};
  fonts.has_lettering = fonts.body != nullptr;
  if (!fonts.body)
    fonts.body = io.Fonts->AddFontDefault();
  fonts.strong = fonts.strong ? fonts.strong : fonts.body;
  fonts.mono = fonts.mono ? fonts.mono : fonts.body;
  io.Fonts->Build();
  return fonts;
}

} // namespace asperity
