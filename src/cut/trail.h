// The last bit of the cutter's way, which the stock does not know of yet.
#pragma once

#include "asperity/cut/stock.h"
#include "asperity/sweep/swept_path.h"

#include <deque>

namespace asperity {

/// How far the cutter must have moved on before the coarse stock shows all that its front half cuts [mm].
/// After a step s the cutter's side, where it makes the wall, lies s^2 / 2R deep in uncut stock (derived: the
/// circle's sagitta); at this step four times the skin that counts as no contact.
double least_step_mm(double cutter_radius_mm);

/// Takes strokes out of the stock once the cutter has moved on, so that what it meets does not depend on how
/// finely its way is divided. Cutters must outlive it.
class Trail {
public:
  explicit Trail(Stock &stock) : stock_(stock) {}

  /// `place_mm`: where the cutter would stand at the end if it did not bend.
  void add(const Stock::Stroke &from, const Stock::Stroke &to, const SweptCutter &cutter, Vec2 place_mm) {
    strokes_.push_back({from, to, &cutter, place_mm});
  }
  /// Takes out what ended at least a step behind this place, where the cutter would stand unbent.
  void carve_behind(Vec2 place_mm, double step_mm);
  void carve_all();

private:
  struct Kept {
    Stock::Stroke from, to;
    const SweptCutter *cutter;
    Vec2 place_mm{0.0};
  };
  void carve_first();

  Stock &stock_;
  std::deque<Kept> strokes_;
};

} // namespace asperity
