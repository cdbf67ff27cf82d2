// Numbered marks where the findings are, and the list that explains them.
#pragma once

#include "layout.h"
#include "page.h"

#include "asperity/finding/finding.h"

#include <string>
#include <vector>

namespace asperity {

struct Mark {
  std::size_t number = 0; ///< as in the summary
  Weight weight = Weight::note;
  double x_mm = 0, y_mm = 0; ///< offsets in the plane
  std::string words;
};

/// Findings of this feature, the weightiest first; places beyond the chart are brought to its edge.
std::vector<Mark> marks_on(const Chart &chart, const Plane &plane, std::size_t feature,
                           const std::vector<Finding> &findings);

/// A ring round each place with its number on a tag beside it.
void draw_marks(Page &page, const Box &panel, const Plane &plane, const std::vector<Mark> &marks);

/// The list below the panels; returns the y below it. With an empty page image nothing is drawn, only
/// measured.
int draw_list(Page &page, const std::vector<Mark> &marks, std::size_t dangers_elsewhere, int y, int width_px);

} // namespace asperity
