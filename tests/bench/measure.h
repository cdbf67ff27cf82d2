// Runs the speed cases against their baselines, all in one go.
#pragma once

#include <string>
#include <vector>

namespace asperity::bench {

struct Measured {
  std::string name;    ///< in words
  std::string meaning; ///< what the ratio is
  double ratio = 0;
  double goal = 0;          ///< 0: none
  double guard = 0;         ///< the regression check's limit, far from what was measured; 0: not checked
  bool is_at_most = false;  ///< goal and guard are upper bounds
  double error_nm = -1;     ///< largest, against double precision; negative: not looked at
  double most_error_nm = 0; ///< goal for it; checked too

  bool meets(double bound) const { return is_at_most ? ratio <= bound : ratio >= bound; }
  bool is_exact() const { return error_nm <= most_error_nm; }
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
/// The strip of a feature, as the texture room sweeps it.
std::vector<Measured> measure_strip(const Effort &effort);
/// Innermost loops against scalar double precision: seen to fall by itself where vectors are lost.
std::vector<Measured> measure_kernels(const Effort &effort);
std::vector<Measured> measure_jobs(const Effort &effort);
std::vector<Measured> measure_reading(const Effort &effort);

} // namespace asperity::bench
