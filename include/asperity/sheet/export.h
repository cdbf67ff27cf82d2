// The predicted surface for other programs: glTF 2.0, STL, and profiles as a table.
#pragma once

#include "asperity/predict/outcome.h"

#include <cstddef>
#include <string>

namespace asperity {

inline constexpr std::size_t kExportCells = 250000; ///< of each feature, unless asked for otherwise

/// A binary glTF 2.0 file (ISO/IEC 12113:2022): one mesh a feature, true to size, in metres with y up (glTF's
/// own frame: x of the part stays x, z of the part is y). Normals; vertex colours in false colour of the
/// residual. Only surfaces named in the job.
std::string gltf_bytes(const Outcome &outcome, std::size_t cells_each);

struct StlPart {
  std::string bytes;      ///< binary STL, mm, part frame
  bool is_closed = false; ///< every edge belongs to two triangles
  std::string contents;   ///< what it holds and what it does not, in words
  std::size_t triangles = 0;
};

/// Closed where the job has one outside wall, with inside walls right through it, and floors at its top
/// alone: the walls as predicted between a flat lower face and a flat upper face at the floors' mean
/// predicted height. Else every feature as an open surface.
StlPart stl_part(const Outcome &outcome, std::size_t cells_each);

/// The mean residual along every feature, both ways:
/// feature,direction,position_mm,mean_residual_um,cut_share; empty where nothing is cut.
std::string profile_csv_text(const Outcome &outcome);

} // namespace asperity
