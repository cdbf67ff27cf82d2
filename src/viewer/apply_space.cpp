// Wishes about the part in space: eye, lamp, colours, moment, one job or two.
#include "apply_parts.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kFlight_s = 0.45;

/// The shorter way round.
double between(double from, double to, double t) { return from + std::remainder(to - from, 2.0 * kPi) * t; }

Camera between(const Camera &from, const Camera &to, double done) {
  const double t = done * done * (3.0 - 2.0 * done);
  Camera camera = to;
  camera.target_mm = from.target_mm + (to.target_mm - from.target_mm) * t;
  camera.azimuth_rad = between(from.azimuth_rad, to.azimuth_rad, t);
  camera.elevation_rad = from.elevation_rad + (to.elevation_rad - from.elevation_rad) * t;
  camera.height_mm = std::exp(std::log(from.height_mm) + std::log(to.height_mm / from.height_mm) * t);
  return camera;
}

double duration_s(const AppState &state) {
  double longest = 0.0;
  for (const Seat &seat : state.seats)
    if (seat.outcome)
      longest = std::max(longest, seat.outcome->path.duration_s);
  return longest;
}

} // namespace

void take(AppState &state, const FitEye &wish) {
  state.space.camera = wish.camera;
  state.space.is_fitted = true;
  state.space.is_own_eye = false;
}

void take(AppState &state, const SetCamera &wish) {
  state.space.camera = wish.camera;
  state.space.is_own_eye = true;
  state.space.is_fitted = true;
  state.space.flight.reset();
}

void take(AppState &state, const FlyTo &wish) {
  state.space.flight = Flight{state.space.camera, wish.camera, 0.0};
  state.space.is_own_eye = true;
  state.space.is_fitted = true;
}

void take(AppState &state, const FitPart &) {
  state.space.is_fitted = false;
  state.space.flight.reset();
}

void take(AppState &state, const LookFrom &wish) {
  Camera camera = state.space.camera;
  camera.azimuth_rad = wish.azimuth_rad;
  camera.elevation_rad = std::clamp(wish.elevation_rad, rad_from_deg(-89.9), rad_from_deg(89.9));
  take(state, FlyTo{camera});
}

void take(AppState &state, const SetLamp &wish) { state.space.lamp = wish.lamp; }

void take(AppState &state, const SetColour &wish) {
  if (wish.colour != Colour::difference || state.has_both())
    state.space.colour = wish.colour;
}

void take(AppState &state, const SetExaggeration &wish) {
  state.space.exaggeration = wish.times <= 0.0 ? 0.0 : std::clamp(wish.times, 1.0, kMostExaggeration);
}

void take(AppState &state, const SetThings &wish) {
  state.space.things = wish.things;
  state.space.path_kind = wish.path_kind;
}

void take(AppState &state, const SetMoment &wish) {
  state.space.moment_s = std::clamp(wish.time_s, 0.0, duration_s(state));
  state.space.things.cutter = true;
}

void take(AppState &state, const SetPlaying &wish) {
  state.space.is_playing = wish.is_playing && duration_s(state) > 0.0;
  if (state.space.is_playing)
    state.space.things.cutter = true;
  if (state.space.is_playing && state.space.moment_s >= duration_s(state))
    state.space.moment_s = 0.0;
}

void take(AppState &state, const SetPlayRate &wish) {
  state.space.play_rate = std::clamp(wish.rate, 0.01, 1000.0);
}

void take(AppState &state, const SetArrangement &wish) {
  if (wish.arrangement == Arrangement::front || state.has_both())
    state.space.arrangement = wish.arrangement;
}

void take(AppState &state, const SetFront &wish) {
  if (!state.seat(wish.seat).is_taken())
    return;
  state.space.front = wish.seat;
  if (state.choice.seat != wish.seat)
    state.choice = {.seat = wish.seat, .scroll = state.choice.scroll + 1, .cell = std::nullopt};
  const Outcome *outcome = state.outcome(wish.seat);
  if (outcome && state.strip.feature >= static_cast<int>(outcome->charts.size()))
    take(state, ShowFeature{0});
}

void take(AppState &state, const SetWipe &wish) { state.space.wipe = std::clamp(wish.share, 0.0, 1.0); }

void take(AppState &state, const Tick &wish) {
  SpaceState &space = state.space;
  if (space.flight) {
    space.flight->done = std::min(space.flight->done + wish.seconds / kFlight_s, 1.0);
    space.camera = between(space.flight->from, space.flight->to, space.flight->done);
    if (space.flight->done >= 1.0) {
      space.camera = space.flight->to;
      space.flight.reset();
    }
  }
  if (!space.is_playing)
    return;
  space.moment_s = std::min(space.moment_s + wish.seconds * space.play_rate, duration_s(state));
  if (space.moment_s >= duration_s(state))
    space.is_playing = false;
}

} // namespace asperity
