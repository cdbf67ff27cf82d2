// The state as JSON for tests.
#include "state_report.h"

#include "asperity/base/text_file.h"

#include <nlohmann/json.hpp>

namespace asperity {

std::string state_json(const App &app) {
  const AppState &state = app.state();
  nlohmann::json json;
  for (int i = 0; i < 2; ++i) {
    const Seat &seat = state.seat(i);
    json["seats"].push_back({{"file", seat.file.filename().string()},
                             {"has_outcome", seat.outcome != nullptr},
                             {"is_running", seat.run.is_running},
                             {"fault", seat.fault},
                             {"is_whole", seat.has(Grain::fine)},
                             {"changes", seat.changes}});
  }
  const Camera &camera = state.space.camera;
  json["camera"] = {{"azimuth_rad", camera.azimuth_rad},
                    {"elevation_rad", camera.elevation_rad},
                    {"height_mm", camera.height_mm}};
  json["chosen_finding"] = state.choice.finding;
  json["line"] = state.choice.line;
  json["colour"] = static_cast<int>(state.space.colour);
  json["sheet"] = static_cast<int>(state.look.sheet);
  json["has_trace"] = state.trace.laid[0].has_value();
  json["has_closeup"] = state.closeup[0].has_value();
  json["lower"] = static_cast<int>(state.look.lower);
  json["places"] = app.places();
  return json.dump(1) + '\n';
}

void StateReport::tell(const App &app) {
  if (file_.empty())
    return;
  // Where things lie shows a frame after the state changed: what is written is compared, not the revision.
  std::string json = state_json(app);
  if (json == told_)
    return;
  // A report that cannot be written shows itself in the test that waits for it.
  write_file(file_, json);
  told_ = std::move(json);
}

std::string StateReport::title(const AppState &state) {
  std::string title = "asperity";
  for (const Seat &seat : state.seats)
    if (seat.is_taken())
      title += " - " + seat.file.filename().string();
  return title;
}

} // namespace asperity
