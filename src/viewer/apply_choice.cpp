// Wishes about what is pointed at: a finding, a program line, a place on the surface.
#include "apply_parts.h"
#include "place.h"

#include <algorithm>

namespace asperity {

namespace {

void light_line(AppState &state, std::uint32_t line) {
  if (line == 0)
    return;
  state.choice.line = line;
  ++state.choice.scroll;
}

/// The piece whose line it is, the first that cuts if there is one.
int piece_of(const TimedPath &path, std::uint32_t line) {
  int found = -1;
  for (std::size_t i = 0; i < path.pieces.size(); ++i) {
    if (path.pieces[i].line != line)
      continue;
    if (path.pieces[i].kind == MoveKind::feed)
      return static_cast<int>(i);
    if (found < 0)
      found = static_cast<int>(i);
  }
  return found;
}

/// The section goes through what is pointed at.
void cut_through(AppState &state, const Outcome &outcome, int feature, Vec3 point_mm) {
  state.section.at_mm = cut_place_mm(outcome, static_cast<std::size_t>(feature), point_mm);
  state.section.is_placed = true;
}

void go_to_piece(AppState &state, const Outcome &outcome, int piece) {
  state.choice.piece = piece;
  if (piece >= 0 && static_cast<std::size_t>(piece) < outcome.path.pieces.size())
    state.space.moment_s = outcome.path.pieces[static_cast<std::size_t>(piece)].start_s;
}

} // namespace

void take(AppState &state, const ChooseFinding &wish) {
  const Outcome *outcome = state.outcome(wish.seat);
  const auto at = static_cast<std::size_t>(wish.finding);
  state.choice = {.seat = wish.seat, .scroll = state.choice.scroll, .cell = std::nullopt};
  if (!outcome || wish.finding < 0 || at >= outcome->findings.size())
    return;
  state.choice.finding = wish.finding;
  state.space.front = wish.seat;
  take(state, ShowWhatIf{.in_front = false});
  const Finding &finding = outcome->findings[at];
  if (!finding.lines.empty()) {
    light_line(state, finding.lines.front());
    go_to_piece(state, *outcome, piece_of(outcome->path, finding.lines.front()));
  }
  if (finding.feature >= 0 && static_cast<std::size_t>(finding.feature) < outcome->charts.size()) {
    take(state, ShowFeature{finding.feature});
    cut_through(state, *outcome, finding.feature, finding.place_mm);
    if (wish.flies)
      take(state, FlyTo{camera_at_finding(*outcome, at, state.space.camera)});
  }
}

void take(AppState &state, const StepFinding &wish) {
  const Outcome *outcome = state.outcome(state.space.front);
  if (!outcome || outcome->findings.empty())
    return;
  const int count = static_cast<int>(outcome->findings.size());
  int next = state.choice.seat == state.space.front ? state.choice.finding : -1;
  next = next < 0 ? (wish.by > 0 ? 0 : count - 1) : (next + wish.by % count + count) % count;
  take(state, ChooseFinding{state.space.front, next});
}

void take(AppState &state, const ChooseLine &wish) {
  const Outcome *outcome = state.outcome(wish.seat);
  state.choice.seat = wish.seat;
  state.choice.line = wish.line;
  state.choice.cell.reset();
  if (!outcome)
    return;
  go_to_piece(state, *outcome, piece_of(outcome->path, wish.line));
  state.space.things.path = state.space.things.path || state.choice.piece >= 0;
}

void take(AppState &state, const Picked &wish) {
  const Outcome *outcome = state.outcome(wish.seat);
  if (!outcome)
    return;
  state.space.front = wish.seat;
  if (wish.pick.what == Pick::What::finding) {
    take(state, ChooseFinding{wish.seat, wish.pick.finding});
    return;
  }
  state.choice = {.seat = wish.seat, .scroll = state.choice.scroll, .cell = std::nullopt};
  if (wish.pick.what == Pick::What::nothing)
    return;
  go_to_piece(state, *outcome, wish.pick.piece);
  if (wish.pick.piece >= 0)
    light_line(state, outcome->path.pieces[static_cast<std::size_t>(wish.pick.piece)].line);
  if (wish.pick.what != Pick::What::surface)
    return;
  state.choice.cell = wish.pick;
  if (wish.pick.feature != state.strip.feature)
    take(state, ShowFeature{wish.pick.feature});
  cut_through(state, *outcome, wish.pick.feature, wish.pick.point_mm);
}

} // namespace asperity
