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
    take(kept, "flat_sheet", state.strip.is_shown);
    take(kept, "path", state.space.things.path);
    take(kept, "blank", state.space.things.blank);
    take(kept, "spoilboard", state.space.things.spoilboard);
  } catch (const nlohmann::json::exception &) {
    return;
  }
  size.width = std::clamp(size.width, 640, 16384);
  size.height = std::clamp(size.height, 480, 16384);
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
                            {"flat_sheet", state.strip.is_shown},
                            {"path", state.space.things.path},
                            {"blank", state.space.things.blank},
                            {"spoilboard", state.space.things.spoilboard}};
  return write_file(file, kept.dump(2) + '\n');
}

} // namespace asperity
