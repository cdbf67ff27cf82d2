// The figures of a whole cut that a summary quotes: time for each cutter, and the worst moments.
#pragma once

#include "asperity/predict/outcome.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace asperity {

struct ToolTime {
  std::uint16_t tool = 0;
  double total_s = 0;
  double cutting_s = 0; ///< in feed moves
};

/// In the order the tools first appear.
std::vector<ToolTime> time_per_tool(const TimedPath &path);

/// The largest value of one quantity over the cut, with the moment it happened.
struct Peak {
  double value = 0;
  double time_s = 0;
  Vec3 place_mm{0.0};
  std::uint32_t line = 0;
  std::uint16_t tool = 0;
};

/// Nothing when the cutter never touched the work.
struct CutPeaks {
  std::optional<Peak> force_N;
  std::optional<Peak> power_W;
  std::optional<Peak> chip_temperature_C;
  std::optional<Peak> tip_bend_mm; ///< by size; the value keeps its sign
  double in_contact_s = 0;
};

CutPeaks cut_peaks(const CutRecord &cut, const TimedPath &path);

} // namespace asperity
