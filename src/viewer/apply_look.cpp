// Wishes about the window itself; and the door through which every wish goes.
#include "apply.h"
#include "apply_parts.h"

#include <algorithm>

namespace asperity {

void take(AppState &state, const SetDark &wish) { state.look.is_dark = wish.is_dark; }

void take(AppState &state, const SetScale &wish) {
  state.look.scale = std::clamp(wish.scale, 1.0, 2.0);
  state.strip.is_fitted = state.section.is_fitted = false;
}

void take(AppState &state, const ShowLower &wish) {
  (wish.is_alone ? state.look.lower_alone : state.look.lower) = wish.lower;
}

void take(AppState &state, const ShowSheet &wish) {
  const bool is_same = state.look.sheet == wish.sheet;
  state.look.sheet = is_same ? Sheet::none : wish.sheet;
  state.look.open_into = wish.open_into;
  state.look.save_would_replace = false;
  const Seat &seat = state.seat(state.space.front);
  if (state.look.sheet == Sheet::save && state.look.save_name.empty() && seat.is_taken())
    state.look.save_name = seat.file.stem().string() + "_tried.toml";
}

void take(AppState &state, const ShowWhatIf &wish) {
  state.look.what_if_in_front = wish.in_front;
  if (!wish.by_hand)
    ++state.look.tab_call;
}

void take(AppState &state, const SetFolder &wish) { state.folder = wish.folder; }

void take(AppState &state, const Say &wish) { state.look.message = wish.message; }

void apply(AppState &state, const Wish &wish) {
  std::visit([&state](const auto &each) { take(state, each); }, wish);
  ++state.revision;
}

} // namespace asperity
