// The laps over one block of columns, made ready for its rows.
#pragma once

#include "asperity/sweep/tooth_passes.h"

#include "tooth_rays.h"

namespace asperity {

class ToothBlock {
public:
  static constexpr std::size_t kColumns = 1024;

  ToothBlock(const WallChart &chart, std::span<const ToothLap> laps, std::size_t first_column);
  /// Lowers the block's part of a row. `square` is working memory of kColumns.
  void lower(WallChart &chart, std::size_t row, std::span<float> square) const;

private:
  /// A tooth of a lap; those of steady laps with the same turns and shape stand together.
  struct Tooth {
    double base_mm = 0; ///< lag included
    std::size_t lap = 0;
    double turns = 0; ///< at the block's first column, less the tooth's own share of a turn
  };
  struct Group {
    double turns_per_mm = 0; ///< where feed is steady
    bool is_steady() const { return turns_per_mm != 0.0; }
    std::vector<float> turns, length_mm, half_change_mm;
    double longest_mm = 0;    ///< turn
    std::vector<Tooth> teeth; ///< lowest first
  };

  void add(const WallChart &chart, std::size_t lap);
  /// Turns per mm over the block where feed is steady, else 0.
  double steady_turns_per_mm(const WallChart &chart, const ToothLap &lap) const;
  Group *group_like(const ToothLap &lap, double turns_per_mm);
  Group group_of(const WallChart &chart, const ToothLap &lap, double turns_per_mm) const;
  void lower_group(const Group &group, double z_mm, float &ceiling, std::span<float> square,
                   std::span<float> e_mm) const;

  std::span<const ToothLap> laps_;
  std::size_t first_, count_;
  std::vector<Group> groups_;
};

} // namespace asperity
