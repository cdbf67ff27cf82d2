// Tooth marks on a piece of wall: the swept surface with the mark of every tooth on it.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/wall_chart.h"
#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"
#include "asperity/sweep/swept_path.h"

namespace asperity {

/// Everything the marks depend on: the bent path, when the cutter was where, and the cutters' teeth.
struct TextureSource {
  const Job &job;
  const TimedPath &path;
  const SweptPath &swept;
};

/// Fills strip.envelope_mm and owner with the surface including tooth marks: over every pass along the wall,
/// the smooth sweep of that pass plus the marks of its teeth at the local feed, spindle phase, helix and
/// runout; the lowest of all passes stays. Columns must be fine enough for the marks (mark_pitch_mm / 8 or
/// finer). blank_mm is untouched. Returns false if cancelled.
bool sweep_wall_with_marks(WallChart &strip, const TextureSource &source, int threads,
                           const Progress &progress);

/// Shortest distance between marks anywhere on the wall's passes at programmed feed [mm]: feed per
/// revolution, or per tooth where runout is off or too small to hide a tooth. 0 when no pass comes by.
double mark_pitch_mm(const WallChart &chart, const TextureSource &source);

} // namespace asperity
