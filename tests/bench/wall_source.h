// The bore's laps as the texture room takes them: timed path, bent path, job.
#pragma once

#include "asperity/texture/wall_texture.h"

namespace asperity::bench {

struct WallSource {
  Job job;
  TimedPath path;
  SweptPath swept;
  TextureSource source() const { return {job, path, swept}; }
};

WallSource wall_source();
/// `columns` of the bore's 16,000, all 300 rows, nothing swept.
WallChart wall_strip(std::size_t columns);

} // namespace asperity::bench
