// One picture of one feature: the chart in false colour, the same surface under a raking lamp, and its
// findings.
#pragma once

#include "asperity/finding/find_all.h"
#include "asperity/job/job.h"
#include "asperity/picture/image.h"

#include <cstddef>
#include <vector>

namespace asperity {

inline constexpr int kNarrowestPicture_px = 1500;
inline constexpr int kWidestPicture_px = 6000;

struct PictureOptions {
  int width_px = 1600;   ///< of the whole picture, brought into the limits above
  double range_um = 0.0; ///< half range of the colours; 0 = chosen from the chart
};

struct ChartPicture {
  Image image;
  bool has_lettering = true; ///< false when no font was found: the picture is without words
};

/// `feature` indexes job.features and belongs to the chart; findings keep their numbers (index + 1).
ChartPicture chart_picture(const Chart &chart, const Job &job, std::size_t feature,
                           const std::vector<Finding> &findings, const PictureOptions &options = {});

} // namespace asperity
