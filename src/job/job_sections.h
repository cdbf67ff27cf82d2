// The readers of the job file's sections, each turning one section into what it describes.
#pragma once

#include "asperity/job/job.h"
#include "key_reader.h"

#include <filesystem>
#include <vector>

namespace asperity {

Material read_material(KeyReader &reader);
Machine read_machine(KeyReader &reader);
Cutter read_cutter(KeyReader &reader);
Setup read_setup(KeyReader &reader);
Effects read_effects(KeyReader &reader);
Resolution read_chart(KeyReader &reader);
HoldDown read_hold_down(KeyReader &reader);
/// `job`: all the rest, which the defaults depend on.
Uncertainty read_uncertainty(KeyReader &reader, const Job &job);
/// `walls`: what grown_from may name.
Blank read_blank(KeyReader &reader, const std::vector<Feature> &walls);
WallFeature read_wall(KeyReader &reader);
FloorFeature read_floor(KeyReader &reader);
DomeFeature read_dome(KeyReader &reader);

/// An outline as the user gave it.
struct OutlineGiven {
  OutlineKind kind = OutlineKind::circle;
  Outline outline;
  Vec2 centre{0.0};
  double diameter_mm = 0;
  Vec2 width_mm{0.0};
  double corner_radius_mm = 0;
};

/// Nothing when it cannot be used; the problem has been reported.
std::optional<OutlineGiven> read_outline(KeyReader &reader);
/// Lines and arcs from start_mm round to start_mm again.
std::optional<Outline> read_free_form(KeyReader &reader);

/// key = { nominal = , plus = , minus = }; nominal may be left out when the drawn size is the one wanted.
std::optional<SizeWanted> read_size_wanted(KeyReader &reader, std::string_view key, double drawn_mm);
FinishWanted read_finish(KeyReader &reader);

/// A mesh file beside the job file, moved by mesh_moved_mm.
std::optional<MeshRays> read_mesh(KeyReader &reader);

/// `name` beside the job file unless it is absolute.
std::filesystem::path beside_job(const ReadLog &log, const std::string &name);

/// Reports top not above bottom; `reader` must have both keys.
void check_heights(KeyReader &reader, double bottom_mm, double top_mm);

} // namespace asperity
