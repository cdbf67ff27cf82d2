// Axes for pictures of studies: any number along, any number up, or words along.
#pragma once

#include "page.h"

#include <string>
#include <vector>

namespace asperity {

inline constexpr Rgb kMetInk{38, 96, 92};       ///< meets everything wanted
inline constexpr Rgb kMissedInk{150, 132, 108}; ///< does not
inline constexpr Rgb kFrontInk{122, 44, 96};
inline constexpr Rgb kWantedInk{176, 92, 24};
inline constexpr Rgb kPlotPaper{255, 255, 255};

/// A stretch of numbers with room at both ends.
struct NumberRange {
  double low = 0, high = 1;
};
/// Holds all finite values, widened where they are all alike.
NumberRange range_of(const std::vector<double> &values);

struct StudyPlot {
  Box box;
  NumberRange x, y;

  double x_px(double value) const { return box.x + (value - x.low) / (x.high - x.low) * box.width; }
  double y_px(double value) const { return box.bottom() - (value - y.low) / (y.high - y.low) * box.height; }
};

/// White ground, frame, and the upright axis with its grid; `is_named`: with numbers.
void draw_upright_axis(Page &page, const StudyPlot &plot, bool has_numbers);
void draw_numbers_along(Page &page, const StudyPlot &plot);
/// Words below even places; places are 0, 1, 2 ... in the plot's x. Long words are cut.
void draw_words_along(Page &page, const StudyPlot &plot, const std::vector<std::string> &words);

void dot(Image &image, double x, double y, double radius_px, Rgb colour);
void dashed_line(Image &image, double x0, double y0, double x1, double y1, Rgb colour);

} // namespace asperity
