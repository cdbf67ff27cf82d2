// Short pieces that run on: looked at once a step, like a long one.
#include "walker.h"

#include "settling.h"
#include "station_plan.h"

#include <utility>

namespace asperity {

namespace {

/// The state where one of the pieces ends, a share of the way from `from` to `to`.
Station ended_at(const Station &from, const Station &to, double share, const PathPiece &piece,
                 std::uint32_t index) {
  Station at = to;
  at.u = at.sample.u = 1.0;
  at.offset = between(from.offset, to.offset, share);
  at.sample.piece = index;
  at.sample.position_mm = piece.curve.end;
  at.sample.time_s = piece.start_s + piece.duration_s;
  return at;
}

} // namespace

std::uint32_t Walker::walk_together(std::uint32_t first, std::uint32_t last, const Station &from,
                                    double least_step_mm) {
  const auto length_to = [&](std::uint32_t end) {
    double length_mm = 0.0;
    for (std::uint32_t i = first; i <= end; ++i)
      length_mm += path_.pieces[i].length_mm;
    return length_mm;
  };
  // Fewer where the bending changes quickly.
  Station to = station(last, 1.0);
  while (last > first && length_to(last) > 2.0 * least_step_mm &&
         largest_change_mm(from.offset, to.offset) > kBendStep_mm) {
    last = first + (last - first) / 2;
    to = station(last, 1.0);
  }

  const double length_mm = length_to(last);
  const bool in_one_stroke = run_straight(path_, first, last, kSkin_mm);
  double done_mm = 0.0;
  Station before = from;
  for (std::uint32_t i = first; i <= last; ++i) {
    const PathPiece &piece = path_.pieces[i];
    done_mm += piece.length_mm;
    Station at = i == last ? to : ended_at(from, to, done_mm / length_mm, piece, i);
    record_.swept.add(
        {piece.curve, before.offset, at.offset, i, models_.at(piece.tool).first, /*joins_previous*/ true});
    if (i == last || !in_one_stroke)
      accept(in_one_stroke ? from : before, at);
    else
      record_.samples.push_back(at.sample);
    before = std::move(at);
  }
  end_piece(last, to);
  return last + 1;
}

} // namespace asperity
