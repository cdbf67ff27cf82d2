// The plain solids of a job: blank, rest of the part, board, bolts and clamps, cutters.
#pragma once

#include "asperity/job/job.h"
#include "solid_shape.h"

namespace asperity {

SolidShape blank_solid(const Blank &blank);
/// What no chart covers: uncut islands of floors, bores of the blank, the lower face, a top that no floor
/// covers.
SolidShape rest_of_part(const Job &job);
SolidShape holding_solid(const HoldDown &holding, const Blank &blank);
/// A board wider than low..high; nothing without a spoilboard in the job.
SolidShape spoilboard_solid(const HoldDown &holding, Vec2 low_mm, Vec2 high_mm);
/// Tip at the origin.
SolidShape cutter_solid(const Cutter &cutter);

} // namespace asperity
