// `asperity picture`: one picture of the predicted part, as a lamp or false colour shows it.
#pragma once

#include "exit_status.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace asperity {

struct PictureRequest {
  std::filesystem::path job_file, file;
  std::string view = "part";    ///< part, wall, floor, section
  std::string feature;          ///< empty = the first that suits the view
  std::string colour = "lamp";  ///< lamp, residual, line, piece, level, roughness, bending, chip-load, speed
  std::vector<double> from_deg; ///< azimuth, elevation; empty = chosen
  std::vector<double> lamp_deg; ///< azimuth, elevation; empty = raking
  double exaggeration = 0;      ///< 0 = chosen
  std::string size = "1600x1000";
  std::optional<double> at_mm;    ///< section: arc length of a wall, y of a floor
  std::vector<std::string> with;  ///< path, blank, cutter
  std::optional<double> moment_s; ///< of the cutter and the path
  bool is_dark = false;
  bool is_bare = false; ///< without words
  int threads = 0;      ///< 0 = all cores
};

ExitStatus command_picture(const PictureRequest &request);

} // namespace asperity
