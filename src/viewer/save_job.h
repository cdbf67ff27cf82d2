// Writing the values being tried as a new job beside the old one.
#pragma once

#include "wish.h"

namespace asperity {

SaveEnded save_job(const Seat &seat, const SaveJob &wish);

} // namespace asperity
