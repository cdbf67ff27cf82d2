// Readers of planned passes; the kinds of pass differ in most of their keys.
#pragma once

#include "job_sections.h"

namespace asperity {

/// Every [[pass]]; cutters, machine, surfaces and blank of `job` are already read.
std::vector<PlannedPass> read_passes(KeyReader &root, const Job &job);
BetweenPasses read_between_passes(KeyReader &root, const Job &job);

// Each reads the keys of one kind of pass. The surface is null where its name was wrong or missing.
void read_wall_pass(KeyReader &reader, const WallFeature *wall, PlannedPass &pass);
void read_outline_pass(KeyReader &reader, PlannedPass &pass);
void read_floor_pass(KeyReader &reader, const FloorFeature *floor, const Blank &blank, PlannedPass &pass);
void read_dome_pass(KeyReader &reader, const DomeFeature *dome, PlannedPass &pass);

/// last_level, which needs a stepdown.
void read_last_level(KeyReader &reader, PlannedPass &pass);

} // namespace asperity
