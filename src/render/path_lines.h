// The path as straight stretches, by kind.
#pragma once

#include "asperity/render/scene.h"
#include "line_pass.h"

#include <vector>

namespace asperity {

/// Arcs are broken so finely that no corner is seen; piece indices and times are kept.
std::vector<LineStretch> path_stretches(const TimedPath &path, PathKind kind);

/// Whole for feed, dashed for the others, each in its own measure.
Vec2 dash_of(PathKind kind);

} // namespace asperity
