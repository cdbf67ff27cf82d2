// Strokes that stay off what others leave standing: a finishing lap hides the roughing laps before it.
#pragma once

#include "sweep_wall_lanes.h"

namespace asperity {

/// A ray of the element that finds the stroke's discs at e finds them no lower than this, or e < 0 [mm]: a
/// disc of radius r about c that covers the ray's foot or comes as near as e to it has e >= |c - element| -
/// r.
double least_entry_mm(const WallElement &element, const Stroke &stroke, double radius_mm);

/// Says which strokes rows should cut first, so that others are seen to be hidden: those that may come near
/// the wanted wall.
void choose_first(WallPlan &plan);

/// The highest cells of rows that are cut together, by blocks of columns.
class WallTops {
public:
  /// Of the first `lanes` lanes. What is lowered later only hides more.
  void find(const LaneCells &cells, std::size_t lanes);
  /// Is every cell of the span lower than anything from least_mm up? No, if nothing was found yet.
  bool hide(const ColumnSpan &span, double least_mm) const;

private:
  std::vector<float> highest_mm_;
};

} // namespace asperity
