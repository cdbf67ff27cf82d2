// A few neighbouring rows of a wall chart under every stroke of the path.
#pragma once

#include "sweep_wall_curved.h"
#include "sweep_wall_hidden.h"
#include "sweep_wall_row.h"

#include <span>

namespace asperity {

/// Follows the path once for walls on its left and once for walls on its right. Strokes that all rows see
/// alike are cut for all of them together; the rest row by row. Those that go first are cut ahead of the
/// path, which hides many others. A row's result does not depend on its neighbours.
class WallBand {
public:
  /// Rows begin..end of the chart, kLanes at most.
  WallBand(const WallPlan &plan, const ColumnFinder &columns, WallChart &chart, std::size_t begin,
           std::size_t end);
  void cut();

private:
  void load();
  void store() const;
  void cut_first();
  void pass(std::size_t stroke, WallSide side);
  bool is_alike(std::size_t stroke, Passing passing, double z_low_mm, double z_high_mm) const;
  /// All rows go on together, or each as it must; says in most_mm_ which lanes a stroke cuts together.
  void join();
  void part(std::size_t stroke, Passing passing);
  /// The path ends with the stroke, as rows see it, unless it goes on smoothly.
  void leave(std::size_t stroke);
  void cut_spans(std::size_t stroke, WallSide side);
  void cut_straight(std::size_t stroke, WallSide side, std::span<const ColumnSpan> spans);
  void cut_curved(std::size_t stroke, WallSide side, std::span<const ColumnSpan> spans);
  StrokeOwners owners_of(std::size_t stroke) const;
  Lanes heights_above(double z_mm) const;
  void close_all();

  const WallPlan &plan_;
  WallChart &chart_;
  std::size_t begin_;
  Lanes z_mm_;
  LaneCells cells_;
  SectionList sections_;
  std::vector<WallRow> rows_;
  WallTops tops_; ///< once the first are cut
  std::vector<ColumnSpan> seen_;
  Lanes most_mm_;
  bool any_open_ = false; ///< some row remembers where its path ended
};

} // namespace asperity
