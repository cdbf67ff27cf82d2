// Wishes about values tried in place of the job's own.
#include "apply_parts.h"
#include "what_if.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr std::size_t kMostUndo = 200;

void remember(Seat &seat) {
  seat.past.push_back(seat.changes);
  if (seat.past.size() > kMostUndo)
    seat.past.erase(seat.past.begin());
  seat.future.clear();
}

/// Moves one step from one pile to the other.
void step(Seat &seat, std::vector<Changes> &from, std::vector<Changes> &to) {
  if (from.empty())
    return;
  to.push_back(seat.changes);
  seat.changes = from.back();
  from.pop_back();
}

} // namespace

void take(AppState &state, const ChangeValue &wish) {
  Seat &seat = state.seat(wish.seat);
  if (!seat.result || !seat.result->job)
    return;
  const std::vector<WhatIfKey> keys = what_if_keys(*seat.result->job, seat.changes);
  const auto key =
      std::find_if(keys.begin(), keys.end(), [&](const WhatIfKey &each) { return each.id == wish.id; });
  if (key == keys.end())
    return;
  const std::string value = allowed(*key, wish.value);
  if (value.empty())
    return;
  Changes changes = seat.changes;
  if (value == key->own)
    changes.erase(wish.id);
  else
    changes[wish.id] = value;
  if (changes == seat.changes)
    return;
  remember(seat);
  seat.changes = std::move(changes);
}

void take(AppState &state, const ResetValue &wish) {
  Seat &seat = state.seat(wish.seat);
  if (seat.changes.count(wish.id) == 0)
    return;
  remember(seat);
  seat.changes.erase(wish.id);
}

void take(AppState &state, const Undo &wish) {
  Seat &seat = state.seat(wish.seat);
  step(seat, seat.past, seat.future);
}

void take(AppState &state, const Redo &wish) {
  Seat &seat = state.seat(wish.seat);
  step(seat, seat.future, seat.past);
}

void take(AppState &state, const SaveEnded &wish) {
  state.look.message = wish.message;
  state.look.save_would_replace = wish.would_replace;
  if (wish.is_saved)
    state.look.sheet = Sheet::none;
}

void take(AppState &state, const SetSaveName &wish) {
  state.look.save_name = wish.name;
  state.look.save_would_replace = false;
}

} // namespace asperity
