// Where the bending stays when the force it gives rise to bends just as far.
#pragma once

#include "asperity/sweep/swept_path.h"

#include <optional>

namespace asperity {

inline constexpr double kSettled_mm = 1e-6; ///< guess and answer, or both sides of a jump, this close

/// Largest difference of any node, or of the axial part [mm].
double largest_change_mm(const AxisOffset &a, const AxisOffset &b);

/// Solves x = F(x) for a bending x, F asked for from outside: secants along the line of the last two guesses
/// (Anderson's mixing of depth one, J. ACM 12(4), 1965), kept between guesses that answered to opposite
/// sides. Where F jumps across x (a layer that is touched only when the cutter bends less than it then
/// would), x is the place of the jump.
class Settling {
public:
  explicit Settling(const AxisOffset &first_guess) : guess_(first_guess) {}

  const AxisOffset &guess() const { return guess_; }
  /// F(guess) is `answer`. True once settled; guess() is then the bending.
  bool take(const AxisOffset &answer);

private:
  struct Look {
    AxisOffset guess, answer, miss; ///< miss: answer minus guess
  };

  AxisOffset guess_;
  std::optional<Look> last_, opposite_; ///< opposite: the nearest that missed to the other side
};

} // namespace asperity
