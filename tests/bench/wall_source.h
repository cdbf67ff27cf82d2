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

} // namespace asperity::bench
