#include "turn.h"

#include "asperity/base/units.h"

namespace asperity {

const std::array<Turn, 2 *kMostMarks + 1> kMarks = [] {
  std::array<Turn, 2 * kMostMarks + 1> marks;
  for (int i = -kMostMarks; i <= kMostMarks; ++i) {
    const double rad = kPi * i / kMarksPerPi;
    marks[static_cast<std::size_t>(i + kMostMarks)] = {rad, std::sin(rad), std::cos(rad)};
  }
  return marks;
}();

Turn turn_at(double rad) {
  const double marks = rad * (kMarksPerPi / kPi);
  if (!(std::abs(marks) < kMostMarks))
    return {rad, std::sin(rad), std::cos(rad)};
  const Turn &nearest = mark(static_cast<int>(marks + std::copysign(0.5, marks)));
  Turn turn = sum_of(nearest, small_turn(rad - nearest.rad));
  turn.rad = rad;
  return turn;
}

} // namespace asperity
