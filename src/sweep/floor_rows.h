// Which strokes may reach which tile of one row of tiles.
#pragma once

#include "floor_path.h"

#include "asperity/chart/floor_chart.h"

#include <span>
#include <vector>

namespace asperity {

/// How far every stroke reaches over the chart.
class FloorRows {
public:
  FloorRows(const FloorChart &chart, const FloorPath &path, std::size_t tile_side, int threads);
  std::size_t rows() const { return rows_; }

private:
  friend class FloorRowLists;
  const FloorChart &chart_;
  const FloorPath &path_;
  std::size_t tile_side_, rows_, columns_;
  /// Of every stroke, in tiles from the chart's first column and row.
  struct Extent {
    float low, high;
    bool meets(float from, float to) const { return low < to && high > from; }
  };
  std::vector<Extent> along_x_, along_y_;
  std::vector<std::uint8_t> slants_;
  std::vector<Extent> group_y_; ///< along y, of so many strokes together
  static constexpr std::size_t kGroup = 64;
};

/// Working memory of one thread.
class FloorRowLists {
public:
  explicit FloorRowLists(const FloorRows &rows) : rows_(rows) {}
  void find(std::size_t row);
  std::size_t tiles() const { return rows_.columns_; }
  std::span<const std::int32_t> strokes(std::size_t tile) const {
    return {list_.data() + first_[tile], first_[tile + 1] - first_[tile]};
  }

private:
  struct Entry {
    std::int32_t stroke;
    std::uint32_t begin, end; ///< tiles
  };
  void enter(std::size_t stroke, double y_low_mm, double y_high_mm);

  const FloorRows &rows_;
  std::vector<Entry> entries_;
  std::vector<std::int32_t> list_;
  std::vector<std::size_t> first_;
};

} // namespace asperity
