// Finds moves whose tip runs below the top of the spoilboard.
#include "found.h"
#include "line_tally.h"
#include "piece_shape.h"
#include "wording.h"

#include <algorithm>
#include <fmt/format.h>

namespace asperity {

namespace {

/// Touching the board to within this is not cutting it [mm].
constexpr double kTouch_mm = 1e-4;

Found found_cut(const Evidence &evidence, double depth_mm, Vec3 deepest, const LineTally &lines) {
  const double allowed = evidence.job.holding.spoilboard_cut_allowed_mm;
  Found found;
  Finding &finding = found.finding;
  const bool too_deep = depth_mm > allowed + kTouch_mm;
  found.excess = depth_mm / std::max(allowed, 0.1);
  finding.kind = FindingKind::spoilboard_cut;
  finding.weight = too_deep ? Weight::danger : Weight::note;
  finding.place_mm = deepest;
  finding.where = "deepest at " + words_xyz(deepest);
  finding.size = {{"depth", depth_mm, "mm"}, {"allowed", allowed, "mm"}};
  finding.cause = fmt::format("The tip runs {:.3f} mm below the top of the spoilboard; {:.3f} mm is allowed.",
                              depth_mm, allowed);
  finding.remedy =
      too_deep ? fmt::format("Raise the deepest level by {:.3f} mm, put more board under the blank, or "
                             "check the Z zero: the table or a screw may be hit.",
                             depth_mm - allowed)
               : "Nothing to do: the job allows it. Keep screws out of the way.";
  lines.write_to(finding);
  return found;
}

} // namespace

FoundList find_spoilboard_cuts(const Evidence &evidence) {
  const auto top = evidence.job.holding.spoilboard_top_z_mm;
  if (!top)
    return {};
  double depth = 0.0;
  Vec3 deepest(0.0);
  LineTally lines;
  for (const PathPiece &piece : evidence.path.pieces) {
    const Vec3 lowest = piece.curve.point(lowest_u(piece.curve));
    const double here = *top - lowest.z;
    if (here <= kTouch_mm)
      continue;
    lines.add_line(piece.line, here);
    if (here > depth) {
      depth = here;
      deepest = lowest;
    }
  }
  if (depth <= kTouch_mm)
    return {};
  return {found_cut(evidence, depth, deepest, lines)};
}

} // namespace asperity
