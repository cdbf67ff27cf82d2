// `asperity predict`: the whole prediction, printed and written.
#pragma once

#include "exit_status.h"
#include "write_results.h"

#include <filesystem>

namespace asperity {

struct PredictRequest {
  std::filesystem::path job_file;
  ResultFiles files;
  int threads = 0; ///< 0 = all cores
  bool quiet = false;
};

ExitStatus command_predict(const PredictRequest &request);

} // namespace asperity
