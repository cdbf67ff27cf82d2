// Predicts many combinations of a job at once, within the machine's memory.
#pragma once

#include "asperity/base/progress.h"
#include "asperity/study/trial.h"

#include <functional>
#include <string>
#include <vector>

namespace asperity {

struct StudyRun {
  const StudyHead &head;
  std::vector<std::size_t> combinations; ///< still to do
  int threads = 0;                       ///< 0 = all cores
  double memory_bytes = 0;               ///< for all predictions together; 0 = most of what is free
};

/// `keep` is called from the calling thread, once a trial, in the order they end; a fault it returns ends the
/// run and is returned. When `progress` is cancelled, what is done is kept and the rest is left for another
/// time. Trials do not depend on the number of threads.
std::string run_trials(const StudyRun &run, const std::function<std::string(const Trial &)> &keep,
                       const Progress &progress);

/// False, with the problems of the first combination, when none can be read (job and program). Where there
/// are more than a few hundred, only so many are looked at, and the rest have the benefit of the doubt.
bool can_any_be_read(const StudyHead &head, Problems &problems);

} // namespace asperity
