// A planned route as RS-274 text.
#pragma once

#include "asperity/job/job.h"
#include "asperity/passes/route.h"

#include <string>

namespace asperity {

/// Absolute, mm, XY plane, feed per minute, arcs by I and J; program frame of the job's set-up. Begins with
/// what the reader of the program must know and heed, ends with M30.
std::string program_text(const Job &job, const Route &route);

} // namespace asperity
