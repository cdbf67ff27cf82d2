// After which piece of the path a feature is left alone: from there on its chart can change no more.
#pragma once

#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"
#include "asperity/sweep/swept_path.h"

namespace asperity {

/// Paths of more pieces are swept whole for every feature: what is swept early is a copy.
inline constexpr double kMostEarlyPieces = 65536;

/// One past the last of path.pieces whose cutter, bent by what is usual, may come to a cell of the feature's
/// chart; all of them where that is too much to ask.
std::size_t end_of_visits(const Job &job, const TimedPath &path, const Feature &feature);

/// Is it sure that the bent path, from the piece with that owner on, comes to no cell of the feature's chart?
/// What goes by above the blank and the feature leaves nothing there that counts.
bool keeps_away(const Job &job, const SweptPath &swept, std::size_t first_owner, const Feature &feature);

} // namespace asperity
