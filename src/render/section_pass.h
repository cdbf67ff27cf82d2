// A section on the graphics card.
#pragma once

#include "line_pass.h"
#include "section_shape.h"
#include "solid_pass.h"

namespace asperity {

/// Drawn in order, one over the other, without depth.
void draw_section(const SectionShape &shape, const DrawRequest &request, const Eye &eye,
                  const SolidPass &solids, const LinePass &lines);

} // namespace asperity
