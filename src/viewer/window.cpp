// The real window: GLFW, drawn only when there is something to draw.
#include "asperity/viewer/view.h"

#include "app.h"
#include "input_queue.h"
#include "kept_state.h"
#include "state_report.h"

#include <epoxy/gl.h>

#include <GLFW/glfw3.h>
#include <backends/imgui_impl_glfw.h>
#include <backends/imgui_impl_opengl3.h>

#include <fmt/format.h>

#include <atomic>

namespace asperity {

namespace {

constexpr const char *kInstead = " Without one, use: asperity predict JOB.toml --out DIR (pictures of every "
                                 "surface) or asperity picture.";
constexpr double kRestlessWait_s = 1.0 / 60.0;

struct GlfwEnd {
  ~GlfwEnd() { glfwTerminate(); }
};

struct WindowEnd {
  GLFWwindow *window = nullptr;
  ~WindowEnd() {
    if (window)
      glfwDestroyWindow(window);
  }
};

struct ImGuiLife {
  explicit ImGuiLife(GLFWwindow *window) {
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui_ImplGlfw_InitForOpenGL(window, false);
    ImGui_ImplOpenGL3_Init("#version 330");
  }
  ~ImGuiLife() {
    ImGui_ImplOpenGL3_Shutdown();
    ImGui_ImplGlfw_Shutdown();
    ImGui::DestroyContext();
  }
};

/// What the window's callbacks reach.
struct Desk {
  App &app;
  InputQueue input;
};

Desk &desk_of(GLFWwindow *window) { return *static_cast<Desk *>(glfwGetWindowUserPointer(window)); }

/// GLFW names keys by their place on a US keyboard; letters are meant as printed.
int as_printed(int key, int scancode) {
  const char *name = key >= GLFW_KEY_A && key <= GLFW_KEY_Z ? glfwGetKeyName(key, scancode) : nullptr;
  if (name && name[0] >= 'a' && name[0] <= 'z' && name[1] == 0)
    return GLFW_KEY_A + name[0] - 'a';
  return key;
}

void listen(GLFWwindow *window) {
  glfwSetDropCallback(window, [](GLFWwindow *w, int count, const char **names) {
    desk_of(w).app.drop(std::vector<std::filesystem::path>(names, names + count));
  });
  glfwSetCursorPosCallback(window, [](GLFWwindow *w, double x, double y) { desk_of(w).input.move(x, y); });
  glfwSetMouseButtonCallback(window, [](GLFWwindow *w, int which, int action, int) {
    desk_of(w).input.button(which, action != GLFW_RELEASE);
  });
  glfwSetScrollCallback(window, [](GLFWwindow *w, double x, double y) { desk_of(w).input.wheel(x, y); });
  glfwSetKeyCallback(window, [](GLFWwindow *w, int key, int scancode, int action, int) {
    const auto is_held = [w](int left, int right) {
      return glfwGetKey(w, left) == GLFW_PRESS || glfwGetKey(w, right) == GLFW_PRESS;
    };
    if (action != GLFW_REPEAT) // ImGui repeats by itself
      desk_of(w).input.key(as_printed(key, scancode), action == GLFW_PRESS,
                           is_held(GLFW_KEY_LEFT_SHIFT, GLFW_KEY_RIGHT_SHIFT),
                           is_held(GLFW_KEY_LEFT_CONTROL, GLFW_KEY_RIGHT_CONTROL),
                           is_held(GLFW_KEY_LEFT_ALT, GLFW_KEY_RIGHT_ALT));
  });
  glfwSetCharCallback(window, [](GLFWwindow *w, unsigned code) { desk_of(w).input.character(code); });
  glfwSetWindowFocusCallback(window, [](GLFWwindow *w, int has_focus) {
    if (!has_focus)
      desk_of(w).input.let_go();
  });
}

void one_frame(Desk &desk, GLFWwindow *window, double seconds) {
  App &app = desk.app;
  if (app.wants_fonts()) {
    app.load_fonts();
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
  }
  app.prepare(seconds);
  ImGui_ImplOpenGL3_NewFrame();
  ImGui_ImplGlfw_NewFrame();
  desk.input.hand_over(ImGui::GetIO());
  ImGui::NewFrame();
  app.show();
  ImGui::Render();
  int width = 0, height = 0;
  glfwGetFramebufferSize(window, &width, &height);
  glBindFramebuffer(GL_FRAMEBUFFER, 0);
  glViewport(0, 0, width, height);
  glClear(GL_COLOR_BUFFER_BIT);
  ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
  glfwSwapBuffers(window);
}

void run(Desk &desk, GLFWwindow *window, StateReport &report) {
  const App &app = desk.app;
  double before = glfwGetTime();
  int still_frames = 0;
  std::string title;
  while (!glfwWindowShouldClose(window) && !app.state().is_closing) {
    // A few frames after the last event let hovering and released buttons settle.
    if (!desk.input.is_empty())
      glfwPollEvents();
    else if (app.is_restless())
      glfwWaitEventsTimeout(kRestlessWait_s);
    else if (still_frames < 3)
      glfwWaitEventsTimeout(0.05);
    else {
      glfwWaitEvents();
      still_frames = 0;
    }
    if (!desk.input.is_empty())
      still_frames = 0;
    const double now = glfwGetTime();
    const std::uint64_t revision = app.state().revision;
    one_frame(desk, window, now - before);
    // However long a frame takes: a slow machine comes to rest too.
    still_frames = revision == app.state().revision ? still_frames + 1 : 0;
    before = now;
    report.tell(app);
    // Only when it changes: the display answers every new title with an event, which would wake the loop
    // again.
    if (std::string news = report.title(app.state()); news != title) {
      title = std::move(news);
      glfwSetWindowTitle(window, title.c_str());
    }
  }
}

void override_kept(AppState &state, WindowSize &size, const ViewRequest &request) {
  state.look.is_dark = request.dark.value_or(state.look.is_dark);
  state.look.scale = request.scale.value_or(state.look.scale);
  size.width = request.width_px.value_or(size.width);
  size.height = request.height_px.value_or(size.height);
}

} // namespace

std::string view(const ViewRequest &request) {
  if (!glfwInit())
    return std::string("no display was found, so no window can be shown.") + kInstead;
  const GlfwEnd glfw_end;
  AppState state;
  WindowSize size;
  const std::filesystem::path kept = kept_state_file();
  load_kept_state(kept, state, size);
  override_kept(state, size, request);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
  glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
  glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
  WindowEnd window{glfwCreateWindow(size.width, size.height, "asperity", nullptr, nullptr)};
  if (!window.window)
    return std::string("this display has no OpenGL 3.3, which the window needs.") + kInstead;
  glfwMakeContextCurrent(window.window);
  glfwSwapInterval(1);
  glfwSetWindowSizeLimits(window.window, 640, 480, GLFW_DONT_CARE, GLFW_DONT_CARE);
  const ImGuiLife imgui(window.window);
  state.folder = std::filesystem::current_path();
  App app(std::move(state), {.threads = request.threads, .wake = glfwPostEmptyEvent});
  if (!app.fault().empty())
    return app.fault() + '.' + kInstead;
  for (std::size_t i = 0; i < std::min<std::size_t>(request.jobs.size(), 2); ++i)
    app.take(OpenFile{static_cast<int>(i), std::filesystem::absolute(request.jobs[i])});
  Desk desk{app, {}};
  glfwSetWindowUserPointer(window.window, &desk);
  listen(window.window);
  StateReport report(request.report);
  run(desk, window.window, report);
  glfwGetWindowSize(window.window, &size.width, &size.height);
  // A state that cannot be kept is no reason to fail.
  save_kept_state(kept, app.state(), size);
  return {};
}

} // namespace asperity
