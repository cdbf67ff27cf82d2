// The steps that the whole prediction and that of one feature share.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/chart/chart.h"
#include "asperity/cut/walk.h"
#include "asperity/job/job.h"
#include "asperity/motion/timed_path.h"

#include <cstddef>
#include <optional>
#include <span>
#include <string>

namespace asperity {

/// Upper bound of what cutting and the charts of these features take [bytes].
double memory_bound_bytes(const Job &job, const TimedPath &path, std::span<const Feature> features);

/// Empty if that much can be had, else what is wrong and what to do. limit_bytes 0 = what the machine has
/// free.
std::string memory_fault(double bound_bytes, std::size_t limit_bytes);

/// The feature's chart, swept by the bent cutter; nothing if cancelled.
std::optional<Chart> swept_chart(const Job &job, const Feature &feature, const SweptPath &swept, int threads,
                                 const Progress &progress);

/// Sweeps a chart in place; false if cancelled.
bool sweep_chart(Chart &chart, const SweptPath &swept, int threads, const Progress &progress);

} // namespace asperity
