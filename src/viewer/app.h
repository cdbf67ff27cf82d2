// The viewer without its window: state, background work, pictures, panels. One call a frame.
#pragma once

#include "apply.h"
#include "background.h"
#include "closeup.h"
#include "gallery.h"

#include <functional>
#include <memory>

namespace asperity {

struct AppOptions {
  int threads = 0;            ///< 0 = all cores
  std::function<void()> wake; ///< called from other threads when there is news
};

/// Needs a current OpenGL context and a current ImGui context with its renderer ready.
class App {
public:
  App(AppState state, AppOptions options);
  ~App();
  App(const App &) = delete;
  App &operator=(const App &) = delete;

  const AppState &state() const { return state_; }
  /// Where named things lay in the frame before.
  const std::map<std::string, std::array<float, 4>> &places() const { return said_.places; }
  void take(const Wish &wish);

  /// Everything before ImGui::NewFrame: news, time, pictures.
  void prepare(double seconds);
  /// Between ImGui::NewFrame and ImGui::Render.
  void show();

  /// Something moves or has still to be drawn: the next frame should not wait for the user.
  bool is_restless() const;
  /// A background run or trace is at work.
  bool is_busy() const;
  const std::string &fault() const { return gallery_.fault(); }
  /// Files dropped on the window: the first empty place, or both when there are two.
  void drop(const std::vector<std::filesystem::path> &files);
  /// Lettering must be loaded anew into the atlas (scale changed).
  bool wants_fonts() const { return fonts_scale_ != state_.look.scale; }
  void load_fonts();

private:
  void fetch_news();
  void start_work();
  void start_run(int seat);
  void start_trace(int seat);
  void start_closeup(int seat);
  void fit();
  void fit_strip();
  void fit_section();
  void answer(const PanelsSay &says);

  AppState state_;
  AppOptions options_;
  std::array<std::unique_ptr<BackgroundRun>, 2> runs_;
  std::array<std::unique_ptr<BackgroundTask<LaidTrace>>, 2> traces_;
  std::array<std::unique_ptr<BackgroundTask<std::optional<Closeup>>>, 2> closeups_;
  std::array<std::optional<Closeup>, 2> asked_closeup_; ///< laid or being laid; without its sheet
  Gallery gallery_;
  Fonts fonts_;
  double fonts_scale_ = 0;
  bool is_styled_dark_ = false;
  PanelsSay said_; ///< by the panels in the frame before
  std::uint64_t seen_revision_ = 0;
  PictureSize fitted_space_{0, 0}, fitted_strip_{0, 0},
      fitted_section_{0, 0}; ///< sizes the views were fitted for
  double rest_s_ = 0;        ///< since the state last changed
};

} // namespace asperity
