// What is kept between runs.
#include "kept_state.h"

#include "asperity/base/text_file.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <system_error>

namespace asperity {

namespace {

constexpr std::size_t kMost_bytes = 1 << 16;

template <class T> void take(const nlohmann::json &from, const char *key, T &value) {
  if (const auto at = from.find(key); at != from.end() && !at->is_null())
    value = at->get<T>();
}

} // namespace

std::filesystem::path kept_state_file() {
  const char *state_home = std::getenv("XDG_STATE_HOME"), *home = std::getenv("HOME");
  if (state_home && *state_home == '/')
    return std::filesystem::path(state_home) / "asperity" / "viewer.json";
  if (home && *home == '/')
    return std::filesystem::path(home) / ".local" / "state" / "asperity" / "viewer.json";
  return {};
}

void load_kept_state(const std::filesystem::path &file, AppState &state, WindowSize &size) {
  Problems ignored;
  std::error_code fault;
  if (file.empty() || !std::filesystem::exists(file, fault))
    return;
  const auto text = read_file(file, kMost_bytes, ignored);
  if (!text)
    return;
  try {
    const nlohmann::json kept = nlohmann::json::parse(*text);
    take(kept, "width", size.width);
    take(kept, "height", size.height);
    take(kept, "dark", state.look.is_dark);
    take(kept, "scale", state.look.scale);
    int lower = static_cast<int>(state.look.lower);
    take(kept, "lower", lower);
    state.look.lower = static_cast<Lower>(std::clamp(lower, 0, 2));
    take(kept, "path", state.space.things.path);
    take(kept, "blank", state.space.things.blank);
    take(kept, "spoilboard", state.space.things.spoilboard);
    take(kept, "path_kinds", state.space.path_kind);
    take(kept, "play_rate", state.space.play_rate);
    int colour = static_cast<int>(state.space.colour);
    take(kept, "colour", colour);
    // A difference needs two jobs, which are not kept.
    state.space.colour = static_cast<Colour>(std::clamp(colour, 0, kColours - 2));
  } catch (const nlohmann::json::exception &) {
    // What was read before the damage counts, brought into its range below.
  }
  size.width = std::clamp(size.width, 640, 16384);
  size.height = std::clamp(size.height, 480, 16384);
  state.space.play_rate = std::clamp(state.space.play_rate, 0.1, 100.0);
  state.look.scale = state.look.scale < 1.25 ? 1.0 : (state.look.scale < 1.75 ? 1.5 : 2.0);
}

std::string save_kept_state(const std::filesystem::path &file, const AppState &state, WindowSize size) {
  if (file.empty())
    return {};
  std::error_code fault;
  std::filesystem::create_directories(file.parent_path(), fault);
  if (fault)
    return fault.message();
  const nlohmann::json kept{{"width", size.width},
                            {"height", size.height},
                            {"dark", state.look.is_dark},
                            {"scale", state.look.scale},
                            {"lower", static_cast<int>(state.look.lower)},
                            {"path", state.space.things.path},
                            {"blank", state.space.things.blank},
                            {"spoilboard", state.space.things.spoilboard},
                            {"path_kinds", state.space.path_kind},
                            {"play_rate", state.space.play_rate},
                            {"colour", static_cast<int>(state.space.colour)}};
  return write_file(file, kept.dump(2) + '\n');
}

} // namespace asperity
