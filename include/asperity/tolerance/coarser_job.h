// The same job computed less finely, where many predictions are wanted.
#pragma once

#include "asperity/job/job.h"

namespace asperity {

/// Charts `coarser` times as coarse as a single prediction's, the finest wall and the finest floor deciding.
Job coarser_job(const Job &job, double coarser);

} // namespace asperity
