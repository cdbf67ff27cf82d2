// Runs the speed cases against their baselines, all in one go.
#pragma once

#include <string>
#include <vector>

namespace asperity::bench {

struct Measured {
  std::string name;        ///< in words
  double ratio = 0;        ///< see `is_at_most`
  double error_nm = -1;    ///< largest, against double precision; negative: not looked at
  double goal = 0;         ///< 0: none
  bool is_at_most = false; ///< the goal is an upper bound
  std::string meaning;     ///< what the ratio is
};

struct Effort {
  int tries = 12; ///< of every quick case, in turn with the others
  int baseline_tries = 4;
  int stamp_stride = 20; ///< every how many passes the stamping baseline does
  int wall_passes = 50;  ///< tooth passes the plain wall baseline does, of 2,500 of one lap
  int checked_cells = 2000;
  std::size_t program_lines = 1000000;
  std::size_t texture_columns = 512;
};

std::vector<Measured> measure_floor(const Effort &effort);
std::vector<Measured> measure_growth(const Effort &effort);
std::vector<Measured> measure_wall(const Effort &effort);
std::vector<Measured> measure_strip(const Effort &effort);
std::vector<Measured> measure_kernels(const Effort &effort);
std::vector<Measured> measure_jobs(const Effort &effort);

} // namespace asperity::bench
