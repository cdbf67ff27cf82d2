// A small part of a feature with every tooth mark on it, as one flat chart: what a loupe would show.
#pragma once

#include "asperity/chart/floor_chart.h"
#include "asperity/texture/wall_texture.h"

#include <optional>

namespace asperity {

/// Box in the feature's own coordinates: s and z on walls, x and y on floors and domes, part frame.
struct PatchAsk {
  Vec2 low_mm{0.0}, high_mm{0.0};
  double spacing_mm = 0.01;
};

/// Cells stand at s and z (or x and y) of the box; on walls s counts on past the outline's end and below its
/// beginning. Nothing where the box misses the feature, or when cancelled.
std::optional<FloorChart> mark_patch(const Feature &feature, const TextureSource &source, const PatchAsk &ask,
                                     int threads, const Progress &progress);

} // namespace asperity
