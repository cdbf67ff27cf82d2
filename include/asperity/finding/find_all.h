// Runs every finder in order and ranks what they found.
#pragma once

#include "asperity/chart/chart.h"
#include "asperity/cut/record.h"
#include "asperity/finding/finding.h"
#include "asperity/finding/wall_references.h"
#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"

#include <vector>

namespace asperity {

/// Everything a finder may look at. charts[i] belongs to job.features[i].
struct Evidence {
  const Job &job;
  const TimedPath &path;
  const CutRecord &cut;
  const std::vector<Chart> &charts;
  int threads = 0;                            ///< 0 = all cores
  const WallReferences *references = nullptr; ///< find_all makes them where there are none
};

/// Dangers first, then by how far each exceeds what is wanted (or a stated threshold), then by place.
std::vector<Finding> find_all(const Evidence &evidence);

} // namespace asperity
