// Finds rapid moves in which the cutter meets stock.
#include "contact.h"
#include "line_tally.h"
#include "wording.h"

#include <algorithm>

namespace asperity {

FoundList find_rapids_in_stock(const Evidence &evidence) {
  const CutSample *worst = nullptr;
  double depth = 0.0;
  LineTally lines;
  for (const CutSample &sample : evidence.cut.samples) {
    const PathPiece *piece = piece_of(evidence, sample);
    if (!sample.in_contact || !piece || piece->kind != MoveKind::rapid)
      continue;
    const double here = std::max(sample.axial_depth_mm, 0.0f);
    lines.add_line(piece->line, here);
    if (!worst || here > depth) {
      worst = &sample;
      depth = here;
    }
  }
  if (!worst)
    return {};
  Found found;
  Finding &finding = found.finding;
  found.excess = 10.0 + depth;
  finding.kind = FindingKind::rapid_in_stock;
  finding.weight = Weight::danger;
  finding.place_mm = worst->position_mm;
  finding.where = "at " + words_xyz(worst->position_mm);
  finding.size = {{"depth", depth, "mm"}, {"sideways", worst->radial_depth_mm, "mm"}};
  finding.cause = "A rapid move (G0) runs through stock that is still there.";
  finding.remedy = "Lift clear of the work before rapid moves, or make this a feed move; check the Z zero.";
  lines.write_to(finding);
  return {found};
}

} // namespace asperity
