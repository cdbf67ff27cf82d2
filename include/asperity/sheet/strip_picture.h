// A feature laid flat as a bare strip of colours, and a difference of two plans as a captioned picture.
#pragma once

#include "asperity/compare/difference_chart.h"
#include "asperity/picture/image.h"
#include "asperity/predict/outcome.h"

#include <span>
#include <string>
#include <vector>

namespace asperity {

/// e [um] of every cell a pass has cut, NaN elsewhere.
std::vector<float> cut_residual_um(const Chart &chart);

/// Arc length at which to cut a wall open: farthest from the findings of all plans, so that none is split. 0
/// on floors.
double common_seam_mm(const Chart &chart, const std::string &feature,
                      std::span<const Outcome *const> outcomes);

/// Half range of colours [um] that holds 98 % of every list of values about 0, rounded up to a plain number.
double common_range_um(std::span<const std::vector<float>> values_um);

struct Strip {
  Image image;
  double width_mm = 0, height_mm = 0;
  double stretch = 1; ///< drawn so many times taller than wide
};

/// One value a cell of `grid`, blue below 0, brown above, the ends at +-range_um; hatched where NaN; paper
/// outside the feature. Walls run from the seam to the right, z up; floors are seen from above. At most
/// width_px wide.
Strip strip_picture(const Chart &grid, const std::vector<float> &values_um, double range_um, double seam_mm,
                    int width_px);

/// The colours from -range to +range as one row.
Image colour_bar(int width_px);

struct CaptionedStrip {
  Image image;
  bool has_lettering = true; ///< false when no font was found
};

struct DifferenceWords {
  std::string title, subtitle;
};
/// The strip with headline, axes and colour scale.
CaptionedStrip difference_picture(const DifferenceChart &difference, const DifferenceWords &words,
                                  double seam_mm);

} // namespace asperity
