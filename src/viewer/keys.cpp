// What the keys ask for. Key numbers are GLFW's, as the window hands them on.
#include "drag.h"
#include "panels.h"

#include <GLFW/glfw3.h>

namespace asperity {

namespace {

bool pressed(int key, bool repeats = false) { return ImGui::IsKeyPressed(key, repeats); }

void control_keys(const Ui &ui) {
  const int front = ui.state.space.front;
  const bool is_shift = ImGui::GetIO().KeyShift;
  if (pressed(GLFW_KEY_Z, true))
    is_shift ? ui.wish(Redo{front}) : ui.wish(Undo{front});
  if (pressed(GLFW_KEY_Y, true))
    ui.wish(Redo{front});
  if (pressed(GLFW_KEY_S) && !ui.state.seat(front).changes.empty())
    ui.wish(ShowSheet{Sheet::save});
  if (pressed(GLFW_KEY_O))
    ui.wish(ShowSheet{Sheet::open, ui.state.seat(0).is_taken() ? 1 : 0});
  if (pressed(GLFW_KEY_Q))
    ui.wish(CloseWindow{});
}

void eye_keys(const Ui &ui) {
  const Camera &camera = ui.state.space.camera;
  constexpr double kStep_px = 20;
  const PictureSize size = ui.says.space_size[static_cast<std::size_t>(ui.state.space.front)];
  const auto turn = [&](double right, double down) { ui.wish(SetCamera{orbited(camera, right, down)}); };
  const auto zoom = [&](double wheel) {
    ui.wish(SetCamera{zoomed(camera, zoom_factor(wheel), 0.5 * size.width_px, 0.5 * size.height_px, size)});
  };
  if (pressed(GLFW_KEY_LEFT, true))
    turn(-kStep_px, 0);
  if (pressed(GLFW_KEY_RIGHT, true))
    turn(kStep_px, 0);
  if (pressed(GLFW_KEY_UP, true))
    turn(0, -kStep_px);
  if (pressed(GLFW_KEY_DOWN, true))
    turn(0, kStep_px);
  if (pressed(GLFW_KEY_EQUAL, true) || pressed(GLFW_KEY_KP_ADD, true))
    zoom(1);
  if (pressed(GLFW_KEY_MINUS, true) || pressed(GLFW_KEY_KP_SUBTRACT, true))
    zoom(-1);
  if (pressed(GLFW_KEY_HOME))
    ui.wish(FitPart{});
  if (pressed(GLFW_KEY_T))
    ui.wish(LookFrom{rad_from_deg(-90.0), rad_from_deg(89.9)});
  if (pressed(GLFW_KEY_F))
    ui.wish(LookFrom{rad_from_deg(-90.0), 0.0});
  if (pressed(GLFW_KEY_R))
    ui.wish(LookFrom{0.0, 0.0});
}

void larger(const Ui &ui, double factor) {
  const SpaceState &space = ui.state.space;
  const double drawn = ui.pictures.space[static_cast<std::size_t>(space.front)].drawn.exaggeration;
  ui.wish(SetExaggeration{std::max(1.0, factor * (space.exaggeration > 0 ? space.exaggeration : drawn))});
}

void shown_keys(const Ui &ui) {
  const SpaceState &space = ui.state.space;
  for (int i = 0; i < kColours; ++i)
    if (pressed(GLFW_KEY_1 + i))
      ui.wish(SetColour{static_cast<Colour>(i)});
  if (pressed(GLFW_KEY_E, true))
    larger(ui, ImGui::GetIO().KeyShift ? 0.5 : 2.0);
  if (pressed(GLFW_KEY_M)) {
    SetThings wish{space.things, space.path_kind};
    wish.things.path = !wish.things.path;
    ui.wish(wish);
  }
  const auto lower = [&](int key, Lower wanted) {
    if (pressed(key))
      ui.wish(ShowLower{lower_shown(ui) == wanted ? Lower::none : wanted, !is_roomy(ui)});
  };
  lower(GLFW_KEY_U, Lower::flat);
  lower(GLFW_KEY_X, Lower::section);
  if (pressed(GLFW_KEY_SPACE))
    ui.wish(SetPlaying{!space.is_playing});
  if (pressed(GLFW_KEY_TAB))
    ui.wish(SetFront{1 - space.front});
  if (pressed(GLFW_KEY_W))
    ui.wish(SetArrangement{static_cast<Arrangement>((static_cast<int>(space.arrangement) + 1) % 3)});
  if (pressed(GLFW_KEY_I))
    ui.wish(ShowWhatIf{!ui.state.look.what_if_in_front});
}

void escape(const Ui &ui) {
  if (ui.state.look.sheet != Sheet::none)
    return ui.wish(ShowSheet{ui.state.look.sheet});
  for (int seat = 0; seat < 2; ++seat)
    if (ui.state.seat(seat).run.is_running)
      return ui.wish(StopRun{seat});
  if (ui.state.trace.is_asked)
    return ui.wish(ClearTrace{});
  ui.wish(Picked{ui.state.space.front, {}});
}

} // namespace

void read_keys(const Ui &ui) {
  const ImGuiIO &io = ImGui::GetIO();
  if (pressed(GLFW_KEY_F1))
    ui.wish(ShowSheet{Sheet::help});
  if (pressed(GLFW_KEY_F5))
    ui.wish(Predict{ui.state.space.front});
  if (pressed(GLFW_KEY_ESCAPE) && !io.WantTextInput)
    escape(ui);
  if (io.WantTextInput)
    return;
  if (io.KeyCtrl)
    return control_keys(ui);
  if (pressed(GLFW_KEY_N))
    ui.wish(StepFinding{1});
  if (pressed(GLFW_KEY_P))
    ui.wish(StepFinding{-1});
  eye_keys(ui);
  shown_keys(ui);
}

} // namespace asperity
