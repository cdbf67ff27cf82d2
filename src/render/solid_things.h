// The job's solids on the graphics card, and the order they are drawn in.
#pragma once

#include "asperity/predict/outcome.h"
#include "solid_pass.h"

#include <map>

namespace asperity {

class SolidThings {
public:
  void show(const Outcome &outcome);
  void draw_opaque(const SolidPass &pass, const Eye &eye, const DrawRequest &request) const;
  /// Cutter at the moment, then the blank.
  void draw_translucent(const SolidPass &pass, const Eye &eye, const DrawRequest &request,
                        const TimedPath &path) const;
  void draw_pick(const SolidPass &pass, const Eye &eye, const DrawRequest &request) const;

private:
  SolidOnCard blank_, rest_, holding_, spoilboard_;
  std::map<int, SolidOnCard> cutters_;
};

} // namespace asperity
