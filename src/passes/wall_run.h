// One run round a wall at one distance from it: levels, entries, laps.
#pragma once

#include "asperity/passes/outline_offset.h"
#include "planning.h"

namespace asperity {

class WallRun {
public:
  struct Speeds {
    double feed_mm_per_min = 0;
    int spring_laps = 0;
  };
  /// kept_mm: distance of the cutter's axis from the wall.
  WallRun(Planning &planning, Outline path, double kept_mm, std::vector<double> levels, Speeds speeds);

  bool run();

private:
  double level_start_mm(std::size_t level) const;
  int turn_of(std::size_t level) const;
  Vec2 free_side(double s_mm) const;
  /// At least kept_mm from the wall, on its free side.
  bool is_clear(Vec2 p) const;
  bool is_clear(Vec2 from, Vec2 to) const;

  /// Levels and laps are not without end.
  bool is_bounded() const;
  bool find_approach();
  void approach(double z_mm);
  void leave();
  void travel_to(double s_mm);
  void go(double by_mm, double z_mm, double feed_mm_per_min);
  void laps();
  void overlap();

  bool plunge_levels();
  bool ramp_levels();
  void zigzag_down(double z_mm);
  bool lap_levels();
  bool arc_levels();
  bool lead_in(double z_mm, bool is_first);
  bool lead_out();

  Planning &planning_;
  const PlannedPass &pass_;
  Route &route_;
  Outline path_;
  double kept_mm_;
  std::vector<double> levels_;
  Speeds speeds_;
  double approach_mm_ = 0;
  double s_mm_ = 0;
  int turn_ = 1;
};

} // namespace asperity
