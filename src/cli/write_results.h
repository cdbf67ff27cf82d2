// Pictures and JSON of an outcome as files.
#pragma once

#include "asperity/predict/outcome.h"

#include <filesystem>
#include <string>
#include <vector>

namespace asperity {

struct ResultFiles {
  std::filesystem::path folder; ///< empty = no pictures and no prediction.json
  std::filesystem::path json;   ///< empty = no further JSON file
};

/// Makes the folder if need be and looks whether the files can be written at all, before a long run.
/// Returns an empty string, or what is wrong and what to do.
std::string prepare(const ResultFiles &files);

/// Names of the features' pictures: the feature's name without what file names cannot hold, ".png"; never two
/// alike.
std::vector<std::string> picture_names(const std::vector<Feature> &features);
/// Name of the map of local roughness beside that picture: "rim-ra.png" beside "rim.png".
std::string ra_picture_name(const std::string &picture_name);

struct Written {
  std::vector<std::filesystem::path> files; ///< complete
  std::string fault;                        ///< what went wrong; empty if nothing
  bool has_lettering = true;
};

/// Each file is written whole or not at all; stops between files once `progress` is cancelled.
Written write_results(const Outcome &outcome, const ResultFiles &files, const Progress &progress);

} // namespace asperity
