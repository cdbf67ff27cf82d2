// A feature cut through: stock, lip, spoilboard, blank and wanted surface as flat shapes.
#pragma once

#include "asperity/predict/outcome.h"
#include "asperity/render/scene.h"
#include "line_pass.h"
#include "solid_shape.h"

#include <vector>

namespace asperity {

struct SectionAsk {
  std::size_t feature = 0;
  double at_mm = 0;       ///< arc length of the wall, y of the floor
  double times = 1.0;     ///< the residual of what is cut is drawn so many times larger
  double farthest_mm = 1; ///< and never farther than this
};

struct SectionShape {
  SolidShape stock, uncut, spoilboard;
  std::vector<LineStretch> surface, blank, wanted;
};

/// Sheet coordinates as in section_box.
SectionShape section_of(const Outcome &outcome, const SectionAsk &ask);

/// One cell of the cut, nearest to a place of the sheet.
struct SectionCell {
  std::size_t column = 0, row = 0;
};
SectionCell section_cell(const Chart &chart, double at_mm, Vec2 place_mm);

} // namespace asperity
