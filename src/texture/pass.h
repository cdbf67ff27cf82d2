// Runs of the path past a place: each comes by once, so that its smooth sweep and its marks can be told apart
// from those of other passes.
#pragma once

#include "pass_part.h"

#include <optional>

namespace asperity {

struct Pass {
  std::vector<const PassPart *> parts;
  /// The path runs on beyond that end and another pass takes it up one part earlier: what the outermost point
  /// leaves is that pass's to say.
  bool runs_on_before = false, runs_on_after = false;

  /// Swept by itself, a piece's owner is its place in `parts`.
  SweptPath swept(const std::vector<SweptCutter> &cutters) const;
  /// Is this the outermost point of an end that runs on?
  bool is_left_to_neighbour(std::size_t part, double u) const;
};

/// Passes whose cutters may reach into the region: reach_mm beyond their radius in plan, from the tip to the
/// end of the flutes in height. Parts out of reach are left out; a run that turns by more than two radians is
/// divided.
std::vector<Pass> passes_near(const LargeArray<PassPart> &parts, const std::vector<SweptCutter> &cutters,
                              const Region &region, double reach_mm);

} // namespace asperity
