// The cut record as lengths of path in contact.
#pragma once

#include "found.h"

namespace asperity {

/// A sample with the path length it stands for, up to the next sample [mm].
struct ContactStep {
  const CutSample *sample = nullptr;
  double length_mm = 0;
};

/// Samples in contact on feed moves, in time order.
std::vector<ContactStep> contact_steps(const Evidence &evidence);

double total_length_mm(const std::vector<ContactStep> &steps);
const PathPiece *piece_of(const Evidence &evidence, const CutSample &sample);
const Cutter *cutter_of(const Evidence &evidence, const CutSample &sample);

} // namespace asperity
