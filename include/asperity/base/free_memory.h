// How much memory there is to be had.
#pragma once

namespace asperity {

/// Memory that can be had without swapping and within the process group's own limit [bytes]; a large number
/// where the system does not tell.
double free_memory_bytes();

} // namespace asperity
