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
  state.closeup[at].reset();
  if (state.space.front == seat)
    state.section.is_fitted = state.section.is_placed = false;
  state.trace.laid[at].reset();
  state.trace.line_mm[at].clear();
  state.trace.is_wanted[at] = state.trace.is_asked && outcome != nullptr;
}

/// Brings what the run made before the eyes.
void seat_outcome(AppState &state, int at, const std::shared_ptr<const RunResult> &result) {
  Seat &seat = state.seat(at);
  const bool had_both = state.has_both();
  seat.result = result;
  seat.outcome = result->outcome;
  seat.outcome_changes = result->changes;
  forget_choice(state, at);
  settle_feature(state, at);
  if (!state.outcome(state.space.front))
    state.space.front = state.choice.seat = at;
  if (!state.space.is_own_eye)
    state.space.is_fitted = false; // what is worst may have become known
  if (!had_both && state.has_both()) {
    state.space.arrangement = Arrangement::beside;
    // Whichever came first; the first finding may have been chosen by itself.
    if (state.choice.finding <= 0 && !state.choice.cell) {
      state.choice = {.seat = 0, .scroll = state.choice.scroll, .cell = std::nullopt};
      state.space.front = 0;
    }
  }
}

/// What matters most is chosen from the start, so that its cause and cure are read at first sight.
void choose_worst(AppState &state) {
  const Outcome *outcome = state.outcome(state.space.front);
  if (outcome && !outcome->findings.empty() && state.choice.finding < 0 && !state.choice.cell &&
      !state.trace.is_asked && !state.look.what_if_in_front)
    take(state, ChooseFinding{.seat = state.space.front, .finding = 0, .flies = false});
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

void take(AppState &state, const RunShows &wish) {
  const Seat &seat = state.seat(wish.seat);
  if (!seat.is_taken() || seat.run.is_stopping || seat.has(Grain::fine))
    return;
  seat_outcome(state, wish.seat, wish.result);
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
  if (state.look.sheet == Sheet::problems)
    state.look.sheet = Sheet::none;
  seat_outcome(state, wish.seat, wish.result);
  choose_worst(state);
}

void take(AppState &state, const CloseWindow &) { state.is_closing = true; }

} // namespace asperity
