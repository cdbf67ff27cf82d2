// What the planning of one pass works with.
#pragma once

#include "asperity/base/problem.h"
#include "asperity/job/job.h"
#include "asperity/passes/route.h"

#include <string>
#include <vector>

namespace asperity {

struct Heights {
  double safe_mm = 0; ///< above everything: rapids across
  double near_mm = 0; ///< just above the blank: rapids down to here
};

/// One pass being planned: what it is, what it may use, where it writes.
struct Planning {
  const Job &job;
  const PlannedPass &pass;
  const Cutter &cutter;
  Heights heights;
  Route &route;
  Problems &problems;
  std::size_t levels = 0; ///< counted while planning

  double radius_mm() const { return 0.5 * cutter.diameter_mm; }
  /// Reports a problem at the pass's place in the job file; false, to be returned.
  bool refuse(const std::string &message, const std::string &remedy) const;
  void warn(const std::string &message, const std::string &remedy) const;

  /// Refuses what would make a program without end; `what` in the plural.
  bool is_few(double count, const std::string &what) const;

  /// By rapids over p and down to near height, from wherever the cutter is.
  void come_down(Vec2 p) const;
  void go_up() const { route.rapid_to_height(heights.safe_mm); }
  void plunge_to(double z_mm) const;
};

/// Heights of the levels from the first down to the bottom. stepdown 0 = the bottom alone. No level is deeper
/// below the one before than the stepdown.
std::vector<double> level_heights(double top_mm, double bottom_mm, double stepdown_mm, LastLevel rule);

// Each writes its pass into the route; false if it cannot be planned, with the problem reported.
bool plan_wall(Planning &planning);
bool plan_floor(Planning &planning);
bool plan_dome(Planning &planning);

/// Looks for feed moves and descents into keep-outs, from stroke `first` on.
bool keeps_out(const Planning &planning, std::size_t first);

} // namespace asperity
