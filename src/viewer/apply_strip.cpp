// Wishes about the feature laid flat and the trace laid on it.
#include "apply_parts.h"
#include "place.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kTallest = 50.0;
constexpr double kFinest_mm_per_px = 2e-5, kCoarsest_mm_per_px = 10.0;

} // namespace

void take(AppState &state, const ShowFeature &wish) {
  const Outcome *outcome = state.outcome(state.space.front);
  if (!outcome || wish.feature < 0 || static_cast<std::size_t>(wish.feature) >= outcome->charts.size() ||
      wish.feature == state.strip.feature)
    return;
  state.strip.feature = wish.feature;
  state.strip.is_fitted = false;
  state.section.is_fitted = state.section.is_placed = false;
  state.trace = {};
}

void take(AppState &state, const FitSheet &wish) {
  take(state, SetSheetView{wish.sheet});
  state.strip.is_own_view = false;
}

void take(AppState &state, const SetSheetView &wish) {
  state.strip.is_own_view = true;
  state.strip.sheet = wish.sheet;
  state.strip.sheet.mm_per_px = std::clamp(wish.sheet.mm_per_px, kFinest_mm_per_px, kCoarsest_mm_per_px);
  state.strip.sheet.up_stretch = std::clamp(wish.sheet.up_stretch, 1.0 / kTallest, kTallest);
  state.strip.is_fitted = true;
}

void take(AppState &state, const FitStrip &) { state.strip.is_fitted = false; }

void take(AppState &state, const SetStripLamp &wish) { state.strip.lamp = wish.lamp; }

void take(AppState &state, const TraceBetween &wish) {
  const Outcome *outcome = state.outcome(state.space.front);
  if (!outcome || static_cast<std::size_t>(state.strip.feature) >= outcome->charts.size())
    return;
  const auto feature = static_cast<std::size_t>(state.strip.feature);
  take(state,
       LayTrace{state.strip.feature, request_between(*outcome, feature, wish.first_mm, wish.second_mm)});
}

void take(AppState &state, const LayTrace &wish) {
  const auto is_running = state.trace.is_running;
  state.trace = {
      .is_asked = true, .feature = wish.feature, .request = wish.request, .is_running = is_running};
  for (std::size_t seat = 0; seat < 2; ++seat)
    state.trace.is_wanted[seat] = state.seats[seat].outcome != nullptr;
}

void take(AppState &state, const TraceStarted &wish) {
  const auto at = static_cast<std::size_t>(wish.seat);
  state.trace.is_wanted[at] = false;
  state.trace.is_running[at] = true;
}

void take(AppState &state, const TraceLaid &wish) {
  const auto at = static_cast<std::size_t>(wish.seat);
  state.trace.is_running[at] = false;
  const Outcome *outcome = state.outcome(wish.seat);
  // A newer one is asked for, or none any longer: this one was told to stop.
  if (!state.trace.is_asked || state.trace.is_wanted[at] || !outcome)
    return;
  state.trace.laid[at] = wish.trace;
  state.trace.why[at] = wish.why;
  state.trace.line_mm[at].clear();
  if (wish.trace && static_cast<std::size_t>(state.trace.feature) < outcome->charts.size())
    state.trace.line_mm[at] =
        line_of_trace(*outcome, static_cast<std::size_t>(state.trace.feature), *wish.trace);
}

void take(AppState &state, const ClearTrace &) {
  const auto is_running = state.trace.is_running;
  state.trace = {};
  state.trace.is_running = is_running;
}

void take(AppState &state, const CloseupLaid &wish) {
  if (wish.closeup && wish.closeup->of == state.seat(wish.seat).outcome)
    state.closeup[static_cast<std::size_t>(wish.seat)] = wish.closeup;
}

} // namespace asperity
