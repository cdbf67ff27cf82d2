// Passes that need not be swept at all, as they stay off what others leave of a wall.
#pragma once

#include "pass.h"

#include "asperity/shape/outline.h"

namespace asperity {

/// Is it sure that, wherever the pass cuts on a ray of the wall, it leaves more than height_mm [mm off the
/// wall; what lies below 0 counts as 0]? The signed distance s from the wall changes by no more than the way
/// gone, so that a disc of radius r about c, which covers a ray from e to its far side beyond the wall, has e
/// >= s(c) - r. Asked of stretches of the path, halved while that does not decide; gives up after some
/// hundred looks.
bool stays_above(const Pass &pass, const std::vector<SweptCutter> &cutters, const Outline &wall, bool inside,
                 double height_mm);

} // namespace asperity
