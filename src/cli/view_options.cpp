// The options of `asperity view`.
#include "view_options.h"

namespace asperity {

namespace {

constexpr int kMostThreads = 1024;

/// Pictures of the window for documentation and tests; no group: not in the help.
void add_hidden(CLI::App &view, ViewCommand &command) {
  view.add_option("--window-picture", command.picture)->group("");
  view.add_option("--window-keys", command.keys)->group("");
  view.add_option("--window-report", command.report)->group("");
}

} // namespace

void add_view(CLI::App &app, ViewCommand &command) {
  CLI::App *view = app.add_subcommand(
      "view", "Look at one or two predictions in a window: part, findings, program, traces, what if");
  view->add_option("jobs", command.jobs, "Job file, or two to compare; none: one is opened in the window")
      ->expected(0, 2)
      ->type_name("JOB.toml [OTHER.toml]");
  view->add_option("--threads", command.threads,
                   "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  view->add_option("--width", command.width_px, "Width of the window. Left out: as at the last time")
      ->type_name("PX")
      ->check(CLI::Range(640, 16384));
  view->add_option("--height", command.height_px, "Its height; with --width")
      ->type_name("PX")
      ->check(CLI::Range(480, 16384));
  view->add_option("--scale", command.scale, "Size of lettering and controls: 1, 1.5 or 2")
      ->type_name("N")
      ->check(CLI::IsMember({"1", "1.5", "2"}));
  CLI::Option *dark = view->add_flag("--dark", command.dark, "Dark ground");
  view->add_flag("--light", command.light, "Light ground")->excludes(dark);
  add_hidden(*view, command);
  view->footer("Exit status: 0 the window was closed; 2 there is no display, or it has no OpenGL 3.3.");
}

} // namespace asperity
