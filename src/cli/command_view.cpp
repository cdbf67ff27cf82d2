// `asperity view`: one or two jobs in a window.
#include "command_view.h"

#ifdef ASPERITY_HAS_VIEWER
#include "asperity/viewer/view.h"
#endif

#include <fmt/format.h>

#include <cstdio>

namespace asperity {

#ifdef ASPERITY_HAS_VIEWER

ExitStatus command_view(const ViewCommand &command) {
  ViewRequest request{.jobs = command.jobs, .threads = command.threads, .report = command.report};
  if (command.dark || command.light)
    request.dark = command.dark;
  if (command.scale > 0)
    request.scale = command.scale;
  if (command.width_px > 0 && command.height_px > 0) {
    request.width_px = command.width_px;
    request.height_px = command.height_px;
  }
  const std::string fault =
      command.picture.empty()
          ? view(request)
          : view_picture(request, {request.width_px.value_or(1280), request.height_px.value_or(800),
                                   command.picture, command.keys});
  if (fault.empty())
    return ExitStatus::all_well;
  fmt::print(stderr, "asperity: error: {}\n", fault);
  return ExitStatus::wrong_input;
}

#else

ExitStatus command_view(const ViewCommand &) {
  fmt::print(stderr, "asperity: error: this program was built without the viewer (ASPERITY_VIEWER=OFF); "
                     "use asperity predict JOB.toml --out DIR instead.\n");
  return ExitStatus::wrong_input;
}

#endif

} // namespace asperity
