// The cut record as lengths of path in contact.
#include "contact.h"

namespace asperity {

std::vector<ContactStep> contact_steps(const Evidence &evidence) {
  std::vector<ContactStep> steps;
  const LargeArray<CutSample> &samples = evidence.cut.samples;
  for (std::size_t k = 0; k < samples.size(); ++k) {
    const PathPiece *piece = piece_of(evidence, samples[k]);
    if (!samples[k].in_contact || !piece || piece->kind != MoveKind::feed)
      continue;
    const bool has_next = k + 1 < samples.size();
    steps.push_back(
        {&samples[k], has_next ? glm::length(samples[k + 1].position_mm - samples[k].position_mm) : 0.0});
  }
  return steps;
}

double total_length_mm(const std::vector<ContactStep> &steps) {
  double length = 0.0;
  for (const ContactStep &step : steps)
    length += step.length_mm;
  return length;
}

const PathPiece *piece_of(const Evidence &evidence, const CutSample &sample) {
  return sample.piece < evidence.path.pieces.size() ? &evidence.path.pieces[sample.piece] : nullptr;
}

const Cutter *cutter_of(const Evidence &evidence, const CutSample &sample) {
  const PathPiece *piece = piece_of(evidence, sample);
  return piece ? evidence.job.cutter(piece->tool) : nullptr;
}

} // namespace asperity
