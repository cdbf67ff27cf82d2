// The front: trials that no other beats in both of two numbers.
#pragma once

#include "asperity/study/trial.h"

#include <string>
#include <string_view>
#include <vector>

namespace asperity {

/// Two merits, greater = better.
struct MeritPair {
  double a = 0, b = 0;
};

/// True for each point that no other beats: none is at least as good in both and better in one [V. Pareto's
/// criterion; equal points stay or fall together]. Sorted once, so n log n.
std::vector<bool> best_possible(const std::vector<MeritPair> &points);

/// A trial seen by two of its numbers.
struct FrontPoint {
  std::size_t trial = 0; ///< index into StudyResults::trials
  double x = 0, y = 0;
  bool is_on_front = false;
};

struct Front {
  KeyNumber x, y;                 ///< their meaning
  std::vector<FrontPoint> points; ///< trials that have both numbers
  std::size_t left_out = 0;       ///< trials without
  bool has_direction = true;      ///< false: for one of the numbers neither less nor more is better
};

/// `fault` is set when a number is not in the results.
Front front_of(const StudyResults &results, std::string_view x_id, std::string_view y_id, std::string &fault);

/// Ids for the axes where none are asked for: time, and the first wanted finish that differs between trials
/// (witness depth, Ra, lip, sizes), else the first other number that differs and where less or more is
/// better.
std::string default_x(const StudyResults &results);
std::string default_y(const StudyResults &results);

} // namespace asperity
