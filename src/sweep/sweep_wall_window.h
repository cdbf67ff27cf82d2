// Which columns of a wall chart a contact path or a disc can touch.
#pragma once

#include "asperity/base/units.h"
#include "asperity/chart/wall_chart.h"

#include <algorithm>
#include <cstddef>
#include <vector>

namespace asperity {

/// One line or arc of the outline with the rays that stand on it. Positions along it are arc lengths from its
/// middle.
struct WallElement {
  bool is_arc = false;
  Vec2 middle{0.0};     ///< line: its middle point; arc: its centre
  Vec2 direction{1, 0}; ///< line: unit tangent; arc: from the centre to the middle of the arc
  Vec2 normal{0, 1};    ///< line: its rays
  double radius_mm = 0;
  double turn = 1;   ///< arc: +1 counter-clockwise
  double facing = 1; ///< arc: +1 when rays leave the centre, -1 when they run to it
  double half_length_mm = 0;
  double s_middle_mm = 0;
  std::size_t column_begin = 0, column_end = 0;
  Vec2 low{0.0}, high{0.0}; ///< box
  OutlineElement shape;

  /// Position of the ray through q (line: projection; arc: angle times radius, in -half turn..half turn).
  double position_mm(Vec2 q) const;
  /// Signed distance of q along its ray: e of a contact at q.
  double height_mm(Vec2 q) const;
  Vec2 normal_at(double position_mm) const;
  double whole_turn_mm() const { return 2.0 * kPi * radius_mm; }
};

struct Window {
  double low_mm = 0, high_mm = 0; ///< positions; empty when high < low
  bool is_empty() const { return high_mm < low_mm; }
};

std::vector<WallElement> wall_elements_of(const WallChart &chart);

double distance_to_segment_mm(Vec2 p, Vec2 a, Vec2 b);
/// Positions whose rays enter the disc no higher than e_most.
Window window_of_disc(const WallElement &element, Vec2 centre, double radius_mm, double e_most_mm);
/// Positions whose rays meet a disc moving from a to b.
Window window_of_discs(const WallElement &element, Vec2 a, Vec2 b, double radius_mm);
Window whole_window(const WallElement &element);

/// Finds columns by position; quick when they are evenly spaced.
class ColumnFinder {
public:
  explicit ColumnFinder(const WallChart &chart);
  /// Calls visit(column, its position on the element) for all columns of an element in a window.
  template <class Visit> void for_columns(const WallElement &element, Window window, Visit visit) const;

private:
  /// First column of the chart at arc length >= s.
  std::size_t first_from(double s_mm) const;

  const std::vector<double> *s_mm_;
  double per_mm_ = 0.0; ///< 0 when uneven
};

template <class Visit>
void ColumnFinder::for_columns(const WallElement &element, Window window, Visit visit) const {
  constexpr double kEdge_mm = 1e-6; // a column on the edge of two windows belongs to both
  const std::vector<double> &s_mm = *s_mm_;
  const double half = element.half_length_mm + kEdge_mm;
  const double turn = element.is_arc ? element.whole_turn_mm() : 0.0;
  if (element.is_arc && window.high_mm - window.low_mm >= turn)
    window = whole_window(element);
  const int most = element.is_arc ? 1 : 0;
  for (int k = -most; k <= most; ++k) {
    const double shift = k * turn;
    const double low = std::max(window.low_mm + shift - kEdge_mm, -half);
    const double high = std::min(window.high_mm + shift + kEdge_mm, half);
    if (low > high)
      continue;
    std::size_t i = std::max(first_from(element.s_middle_mm + low), element.column_begin);
    for (; i < element.column_end && s_mm[i] <= element.s_middle_mm + high; ++i)
      visit(i, s_mm[i] - element.s_middle_mm - shift);
  }
}

} // namespace asperity
