// The viewer without a display.
#include "headless.h"

#include <epoxy/gl.h>

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_opengl3.h>

#include <chrono>
#include <thread>

namespace asperity {

namespace {

void map_keys(ImGuiIO &io) {
  constexpr std::pair<int, int> kMap[] = {{ImGuiKey_Tab, GLFW_KEY_TAB},
                                          {ImGuiKey_LeftArrow, GLFW_KEY_LEFT},
                                          {ImGuiKey_RightArrow, GLFW_KEY_RIGHT},
                                          {ImGuiKey_UpArrow, GLFW_KEY_UP},
                                          {ImGuiKey_DownArrow, GLFW_KEY_DOWN},
                                          {ImGuiKey_Home, GLFW_KEY_HOME},
                                          {ImGuiKey_End, GLFW_KEY_END},
                                          {ImGuiKey_Delete, GLFW_KEY_DELETE},
                                          {ImGuiKey_Backspace, GLFW_KEY_BACKSPACE},
                                          {ImGuiKey_Space, GLFW_KEY_SPACE},
                                          {ImGuiKey_Enter, GLFW_KEY_ENTER},
                                          {ImGuiKey_Escape, GLFW_KEY_ESCAPE},
                                          {ImGuiKey_A, GLFW_KEY_A},
                                          {ImGuiKey_C, GLFW_KEY_C},
                                          {ImGuiKey_V, GLFW_KEY_V},
                                          {ImGuiKey_X, GLFW_KEY_X},
                                          {ImGuiKey_Y, GLFW_KEY_Y},
                                          {ImGuiKey_Z, GLFW_KEY_Z}};
  for (const auto &[imgui, glfw] : kMap)
    io.KeyMap[imgui] = glfw;
}

} // namespace

std::unique_ptr<HeadlessWindow> HeadlessWindow::make(AppState state, PictureSize size, int threads,
                                                     std::string &fault) {
  std::unique_ptr<HeadlessWindow> window(new HeadlessWindow);
  window->context_ = OffscreenContext::make(fault);
  if (!window->context_)
    return nullptr;
  window->size_ = size;
  ImGui::CreateContext();
  ImGuiIO &io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.DisplaySize = {static_cast<float>(size.width_px), static_cast<float>(size.height_px)};
  map_keys(io);
  ImGui_ImplOpenGL3_Init("#version 330");
  window->app_ = std::make_unique<App>(std::move(state), AppOptions{.threads = threads, .wake = {}});
  fault = window->app_->fault();
  if (!fault.empty())
    return nullptr;
  return window;
}

HeadlessWindow::~HeadlessWindow() {
  app_.reset();
  if (ImGui::GetCurrentContext()) {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui::DestroyContext();
  }
}

void HeadlessWindow::frames(int count, double seconds) {
  for (int i = 0; i < count; ++i) {
    if (app_->wants_fonts()) {
      app_->load_fonts();
      ImGui_ImplOpenGL3_DestroyFontsTexture();
      ImGui_ImplOpenGL3_CreateFontsTexture();
    }
    ImGui::GetIO().DeltaTime = static_cast<float>(seconds);
    app_->prepare(seconds);
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    app_->show();
    ImGui::Render();
    ImGui::GetIO().MouseWheel = 0.0f;
    target_.bind(size_);
    glViewport(0, 0, size_.width_px, size_.height_px);
    glClear(GL_COLOR_BUFFER_BIT);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  }
}

bool HeadlessWindow::settle(int most) {
  frames(2);
  for (int i = 0; i < most && app_->is_busy(); ++i) {
    std::this_thread::sleep_for(std::chrono::milliseconds(20));
    app_->prepare(0.02);
  }
  const bool is_still = !app_->is_busy();
  for (int i = 0; i < 40 && (i < 3 || app_->is_restless()); ++i)
    frames(1, 0.25);
  return is_still;
}

Image HeadlessWindow::image() {
  Image image(size_.width_px, size_.height_px, {});
  std::vector<Rgb> rows(image.pixels.size());
  target_.bind(size_);
  glPixelStorei(GL_PACK_ALIGNMENT, 1);
  glReadPixels(0, 0, size_.width_px, size_.height_px, GL_RGB, GL_UNSIGNED_BYTE, rows.data());
  for (int y = 0; y < size_.height_px; ++y)
    for (int x = 0; x < size_.width_px; ++x)
      image.at(x, y) =
          rows[static_cast<std::size_t>(size_.height_px - 1 - y) * static_cast<std::size_t>(size_.width_px) +
               static_cast<std::size_t>(x)];
  return image;
}

void HeadlessWindow::move(double x, double y) {
  ImGui::GetIO().MousePos = {static_cast<float>(x), static_cast<float>(y)};
  frames(1);
}

void HeadlessWindow::button(int which, bool is_down) {
  ImGui::GetIO().MouseDown[which] = is_down;
  frames(1);
}

void HeadlessWindow::wheel(double clicks) {
  ImGui::GetIO().MouseWheel = static_cast<float>(clicks);
  frames(1);
}

void HeadlessWindow::key(int key, bool is_down) {
  ImGuiIO &io = ImGui::GetIO();
  io.KeysDown[key] = is_down;
  io.KeyCtrl = io.KeysDown[GLFW_KEY_LEFT_CONTROL];
  io.KeyShift = io.KeysDown[GLFW_KEY_LEFT_SHIFT];
  frames(1);
}

void HeadlessWindow::type(const std::string &text) {
  for (const char c : text) {
    ImGui::GetIO().AddInputCharacter(static_cast<unsigned>(c));
    frames(1);
  }
}

void HeadlessWindow::click(double x, double y) {
  move(x, y);
  frames(1);
  button(0, true);
  button(0, false);
  frames(1);
}

void HeadlessWindow::drag(double x0, double y0, double x1, double y1, int which) {
  move(x0, y0);
  frames(1);
  button(which, true);
  constexpr int kSteps = 8;
  for (int i = 1; i <= kSteps; ++i)
    move(x0 + (x1 - x0) * i / kSteps, y0 + (y1 - y0) * i / kSteps);
  button(which, false);
  frames(1);
}

void HeadlessWindow::press(int which) {
  key(which, true);
  key(which, false);
}

} // namespace asperity
