// Tooth marks on a patch of floor or dome.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/texture/wall_texture.h"

namespace asperity {

/// As sweep_wall_with_marks, over a patch seen from above: end-tooth arcs of flat (dish angle) and
/// corner-radius cutters, dents of ball cutters along the feed, and the hollow or steps a spindle leaning by
/// machine.tram_deg (about the y axis, so that +x lies low) leaves.
bool sweep_floor_with_marks(FloorChart &patch, const TextureSource &source, int threads,
                            const Progress &progress);

} // namespace asperity
