// Wishes about files and predictions.
#include "apply_parts.h"

#include <algorithm>

namespace asperity {

namespace {

/// What is chosen points into an outcome, so it goes with it.
void forget_choice(AppState &state, int seat) {
  if (state.choice.seat == seat)
    state.choice = {.seat = seat, .scroll = state.choice.scroll, .cell = std::nullopt};
}

/// A new outcome may have fewer features, and the trace is laid afresh on it.
void settle_feature(AppState &state, int seat) {
  const Outcome *outcome = state.outcome(seat);
  const int count = outcome ? static_cast<int>(outcome->charts.size()) : 0;
  if (state.space.front == seat && state.strip.feature >= count) {
    state.strip.feature = 0;
    state.strip.is_fitted = false;
    state.trace = {};
  }
  const auto at = static_cast<std::size_t>(seat);
  state.trace.laid[at].reset();
  state.trace.line_mm[at].clear();
  state.trace.is_wanted[at] = state.trace.is_asked && outcome != nullptr;
}

std::string fault_of(const RunResult &result) {
  if (!result.outcome)
    return "The files could not be read as they are.";
  return result.outcome->why;
}

} // namespace

void take(AppState &state, const OpenFile &wish) {
  Seat &seat = state.seat(wish.seat);
  const bool was_running = seat.run.is_running;
  seat = {};
  seat.file = wish.file;
  seat.run = {.is_wanted = true, .is_running = was_running, .is_stopping = was_running, .stage = {}};
  state.folder = wish.file.parent_path();
  state.look.sheet = Sheet::none;
  state.look.save_name.clear();
  forget_choice(state, wish.seat);
  settle_feature(state, wish.seat);
  state.space.is_fitted = state.seats[0].outcome || state.seats[1].outcome;
}

void take(AppState &state, const LeaveSeat &wish) {
  Seat &seat = state.seat(wish.seat);
  const bool was_running = seat.run.is_running;
  seat = {};
  seat.run.is_running = seat.run.is_stopping = was_running;
  forget_choice(state, wish.seat);
  state.space.front = state.choice.seat = 1 - wish.seat;
  state.space.arrangement = Arrangement::front;
  if (state.space.colour == Colour::difference)
    state.space.colour = Colour::residual;
}

void take(AppState &state, const Predict &wish) {
  Seat &seat = state.seat(wish.seat);
  if (!seat.is_taken())
    return;
  seat.run.is_wanted = true;
  seat.run.is_stopping = seat.run.is_running;
}

void take(AppState &state, const StopRun &wish) {
  RunState &run = state.seat(wish.seat).run;
  run.is_wanted = false;
  run.is_stopping = run.is_running;
}

void take(AppState &state, const RunStarted &wish) {
  state.seat(wish.seat).run = {.is_running = true, .stage = "reading"};
}

void take(AppState &state, const RunReports &wish) {
  RunState &run = state.seat(wish.seat).run;
  run.stage = wish.stage;
  run.fraction = std::clamp(wish.fraction, 0.0, 1.0);
}

void take(AppState &state, const RunEnded &wish) {
  Seat &seat = state.seat(wish.seat);
  const bool was_stopped = seat.run.is_stopping;
  seat.run.is_running = seat.run.is_stopping = false;
  if (was_stopped || !seat.is_taken())
    return;
  seat.newest = wish.result;
  if (!wish.result->outcome || wish.result->outcome->status != Status::done) {
    seat.fault = fault_of(*wish.result);
    state.look.sheet = Sheet::problems;
    return;
  }
  seat.fault.clear();
  const bool had_both = state.has_both();
  seat.result = wish.result;
  seat.outcome = wish.result->outcome;
  seat.outcome_changes = wish.result->changes;
  if (state.look.sheet == Sheet::problems)
    state.look.sheet = Sheet::none;
  forget_choice(state, wish.seat);
  settle_feature(state, wish.seat);
  if (!state.outcome(state.space.front))
    state.space.front = state.choice.seat = wish.seat;
  if (!had_both && state.has_both()) {
    state.space.arrangement = Arrangement::beside;
    if (state.choice.finding < 0 && !state.choice.cell)
      state.space.front = state.choice.seat = 0; // whichever came first
  }
}

void take(AppState &state, const CloseWindow &) { state.is_closing = true; }

} // namespace asperity
