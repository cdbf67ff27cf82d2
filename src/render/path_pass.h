// The path on the graphics card, one batch a kind.
#pragma once

#include "asperity/motion/timed_path.h"
#include "line_pass.h"

#include <array>

namespace asperity {

class PathPass {
public:
  bool has(std::size_t kind) const { return kinds_[kind].count > 0; }
  void show(const TimedPath &path);
  void draw(const LinePass &pass, const Eye &eye, const DrawRequest &request) const;
  void draw_pick(const LinePass &pass, const Eye &eye, const DrawRequest &request) const;

private:
  std::array<LinesOnCard, 4> kinds_; ///< by PathKind
};

} // namespace asperity
