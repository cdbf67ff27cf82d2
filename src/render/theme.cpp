// The look of everything that is drawn.
#include "asperity/render/theme.h"

namespace asperity {

Theme light_theme() {
  Theme t;
  t.ground = {246, 245, 241};
  t.ink = {30, 34, 40};
  t.soft_ink = {92, 98, 106};
  t.rule = {196, 194, 188};
  t.cut_stock = {206, 208, 204};
  t.uncut_stock = {216, 140, 62};
  t.printed_skin = {126, 110, 160};
  t.rest = {168, 166, 160};
  t.inside = {120, 116, 110};
  t.blank = {120, 132, 150};
  t.spoilboard = {214, 202, 178};
  t.holding = {96, 104, 116};
  t.cutter = {70, 78, 92};
  // By PathKind: feed dark and whole, rapid pale, plunge and ramp strong.
  t.path = {Rgb{24, 62, 98}, Rgb{142, 146, 150}, Rgb{176, 40, 74}, Rgb{0, 124, 108}};
  t.chosen = {232, 98, 0};
  t.mark = {24, 26, 32};
  t.mark_halo = {255, 255, 255};
  t.danger = {176, 0, 42};
  return t;
}

Theme dark_theme() {
  Theme t = light_theme();
  t.ground = {30, 33, 38};
  t.ink = {236, 234, 228};
  t.soft_ink = {164, 168, 174};
  t.rule = {80, 84, 90};
  t.inside = {74, 74, 76};
  t.blank = {150, 164, 184};
  t.spoilboard = {92, 84, 70};
  t.holding = {130, 140, 154};
  t.cutter = {166, 176, 190};
  t.path = {Rgb{150, 194, 236}, Rgb{110, 114, 120}, Rgb{255, 128, 150}, Rgb{92, 214, 190}};
  t.chosen = {255, 158, 64};
  t.mark = {250, 250, 246};
  t.mark_halo = {20, 22, 26};
  t.danger = {255, 110, 120};
  return t;
}

} // namespace asperity
