// How the part is shown: colours, exaggeration, what is shown, lamp.
#include "panels.h"
#include "words.h"

#include "asperity/render/scene.h"

#include <fmt/format.h>

namespace asperity {

namespace {

struct ColourName {
  const char *name, *meaning;
};
constexpr ColourName kColourNames[kColours] = {
    {"lamp", "As it would look under a raking lamp."},
    {"residual", "Stock left above, or cut below, the wanted surface."},
    {"program line", "The line whose move made each place."},
    {"level", "The height of the pass that made each place."},
    {"local roughness", "Ra by places, tooth marks included."},
    {"bending", "How far the tip was pushed away while it made each place."},
    {"chip load", "Feed per tooth while it made each place."},
    {"speed", "Speed along the path while it made each place."},
    {"difference B - A", "How much more B leaves than A, where both have the same charts."}};

void colour_choice(const Ui &ui) {
  const Colour now = ui.state.space.colour;
  ImGui::SetNextItemWidth(ui.px(110));
  if (!ImGui::BeginCombo("##colour", kColourNames[static_cast<int>(now)].name, ImGuiComboFlags_HeightLarge)) {
    hint(ui, "What the colours mean (keys 1 to 9).");
    return;
  }
  for (int i = 0; i < kColours; ++i) {
    const auto colour = static_cast<Colour>(i);
    if (colour == Colour::difference && !ui.state.has_both())
      continue;
    if (ImGui::Selectable(kColourNames[i].name, colour == now))
      ui.wish(SetColour{colour});
    hint(ui, kColourNames[i].meaning);
  }
  ImGui::EndCombo();
}

void exaggeration_choice(const Ui &ui) {
  const ShownPicture &picture = ui.pictures.space[static_cast<std::size_t>(ui.state.space.front)];
  double times = ui.state.space.exaggeration > 0 ? ui.state.space.exaggeration
                                                 : std::max(picture.drawn.exaggeration, 1.0);
  constexpr double kLeast = 1.0;
  ImGui::SetNextItemWidth(ui.px(100));
  if (ImGui::SliderScalar("##exaggeration", ImGuiDataType_Double, &times, &kLeast, &kMostExaggeration,
                          "drawn x%.0f", ImGuiSliderFlags_Logarithmic | ImGuiSliderFlags_AlwaysClamp))
    ui.wish(SetExaggeration{times});
  hint(ui, std::string(meaning_of("exaggeration")) + " Ctrl+click types a number.");
  if (ui.state.space.exaggeration > 0) {
    ImGui::SameLine();
    if (ImGui::Button("auto"))
      ui.wish(SetExaggeration{0});
    hint(ui, "Chooses the factor by the size of the residuals.");
  }
}

void things_choice(const Ui &ui) {
  if (ImGui::Button("Show"))
    ImGui::OpenPopup("things");
  hint(ui, "What is drawn beside the surfaces.");
  if (!ImGui::BeginPopup("things"))
    return;
  SetThings wish{ui.state.space.things, ui.state.space.path_kind};
  Things &things = wish.things;
  bool is_new = ImGui::Checkbox("surfaces", &things.surfaces);
  is_new |= ImGui::Checkbox("rest of the part", &things.rest_of_part);
  is_new |= ImGui::Checkbox("blank", &things.blank);
  is_new |= ImGui::Checkbox("spoilboard", &things.spoilboard);
  is_new |= ImGui::Checkbox("bolts and clamps", &things.holding);
  is_new |= ImGui::Checkbox("findings", &things.marks);
  is_new |= ImGui::Checkbox("cutter", &things.cutter);
  ImGui::Separator();
  is_new |= ImGui::Checkbox("path", &things.path);
  ImGui::BeginDisabled(!things.path);
  const Theme theme = ui.state.look.is_dark ? dark_theme() : light_theme();
  for (std::size_t kind = 0; kind < 4; ++kind) {
    ImGui::PushStyleColor(ImGuiCol_CheckMark, colour_of(theme.path[kind]));
    is_new |= ImGui::Checkbox(fmt::format("{} moves", name_of(static_cast<PathKind>(kind))).c_str(),
                              &wish.path_kind[kind]);
    ImGui::PopStyleColor();
  }
  ImGui::EndDisabled();
  if (is_new)
    ui.wish(wish);
  ImGui::EndPopup();
}

bool angle(const Ui &ui, const char *label, double &value_rad, double low_deg, double high_deg,
           const char *meaning) {
  double value_deg = deg_from_rad(value_rad);
  ImGui::SetNextItemWidth(ui.px(170));
  const bool is_new = ImGui::SliderScalar(label, ImGuiDataType_Double, &value_deg, &low_deg, &high_deg,
                                          "%.0f deg", ImGuiSliderFlags_AlwaysClamp);
  hint(ui, meaning);
  value_rad = rad_from_deg(value_deg);
  return is_new;
}

bool share(const Ui &ui, const char *label, double &value, double high) {
  constexpr double kNone = 0.0;
  ImGui::SetNextItemWidth(ui.px(170));
  return ImGui::SliderScalar(label, ImGuiDataType_Double, &value, &kNone, &high, "%.2f",
                             ImGuiSliderFlags_AlwaysClamp);
}

bool lamp_rows(const Ui &ui, Lamp &lamp) {
  bool is_new =
      angle(ui, "direction", lamp.azimuth_rad, -180, 180, "Where the lamp stands, seen from above.");
  is_new |= angle(ui, "height", lamp.elevation_rad, 1, 89, "Low lamps throw long shadows: small steps show.");
  is_new |= share(ui, "strength", lamp.strength, 2.0);
  is_new |= share(ui, "all round", lamp.ambient, 1.0);
  is_new |= share(ui, "gloss", lamp.highlight, 1.0);
  return is_new;
}

void lamp_choice(const Ui &ui) {
  if (ImGui::Button("Lamp"))
    ImGui::OpenPopup("lamp");
  hint(ui, "Hold L and drag in the picture, or set it here.");
  if (!ImGui::BeginPopup("lamp"))
    return;
  Lamp space = ui.state.space.lamp, strip = ui.state.strip.lamp;
  heading(ui, "Over the part");
  ImGui::PushID("space");
  bool is_new = lamp_rows(ui, space);
  is_new |= ImGui::Checkbox("turns with the eye", &space.turns_with_eye);
  ImGui::PopID();
  if (is_new)
    ui.wish(SetLamp{space});
  heading(ui, "Over the flat sheet");
  ImGui::PushID("strip");
  if (lamp_rows(ui, strip))
    ui.wish(SetStripLamp{strip});
  ImGui::PopID();
  ImGui::EndPopup();
}

} // namespace

void choices_panel(const Ui &ui) {
  colour_choice(ui);
  same_line_if_fits(ui.px(100));
  exaggeration_choice(ui);
  same_line_if_fits(button_width("Show"));
  things_choice(ui);
  same_line_if_fits(button_width("Lamp"));
  lamp_choice(ui);
  same_line_if_fits(button_width("Fit"));
  if (ImGui::Button("Fit"))
    ui.wish(FitPart{});
  hint(ui, "The whole part in the picture (Home).");
  const auto lower = [&](const char *label, Lower wanted, const char *meaning) {
    same_line_if_fits(button_width(label));
    const bool is_there = lower_shown(ui) == wanted;
    if (small_choice(label, is_there))
      ui.wish(ShowLower{is_there ? Lower::none : wanted, !is_roomy(ui)});
    mark_place(ui, label);
    hint(ui, meaning);
  };
  lower("Flat", Lower::flat, "The chosen surface laid flat: a wall unrolled, a floor from above (U).");
  lower("Cut", Lower::section, "The chosen surface cut through, lip and board with it (X).");
}

} // namespace asperity
