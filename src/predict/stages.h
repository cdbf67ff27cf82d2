// The steps that the whole prediction and that of one feature share.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/chart.h"
#include "asperity/cut/walk.h"
#include "asperity/job/job.h"

#include <optional>

namespace asperity {

/// The feature's chart, swept by the bent cutter; nothing if cancelled.
std::optional<Chart> swept_chart(const Job &job, const Feature &feature, const SweptPath &swept, int threads,
                                 const Progress &progress);

/// Sweeps a chart in place; false if cancelled.
bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress);

} // namespace asperity
