// A job's uncertain values fitted to what was measured after a cut.
#pragma once

#include "asperity/calibrate/fit_readings.h"
#include "asperity/job/measured.h"
#include "asperity/tolerance/uncertain_input.h"

#include "asperity/gcode/program.h"
#include "asperity/predict/outcome.h"

#include <string>
#include <vector>

namespace asperity {

struct CalibrationOptions {
  int threads = 0;      ///< 0 = all cores; results do not depend on it
  double coarser = 2.0; ///< chart spacing against that of one prediction
};

/// One value after the fit. A share's value is the factor on what the job states, a length's the change [mm].
struct FittedValue {
  UncertainInput input;
  double value = 0;
  double expanded = 0;        ///< expanded uncertainty, coverage factor 2; a share like any other
  double stated_expanded = 0; ///< what was known before
};

struct FittedReading {
  std::string what;
  double measured = 0, expanded = 0;
  double before = 0, after = 0; ///< by the job as stated, and as fitted
  double off = 0;               ///< after minus measured, in standard uncertainties
};

struct Calibration {
  Status status = Status::done;
  std::string why; ///< empty = fitted; else why not, and what to measure
  std::vector<FittedValue> fitted;
  std::vector<FittedReading> readings;
  double chi_squared = 0, chi_squared_limit = 0;
  int freedom = 0;
  Job job; ///< with the fitted values in it

  /// The readings agree with each other and the model within their uncertainties (chi-squared, 95 %).
  bool fits_together() const { return freedom <= 0 || chi_squared <= chi_squared_limit; }
};

Calibration calibrate(const Job &job, const Program &program, const Measured &measured,
                      const CalibrationOptions &options, const Progress &progress);

/// The fitted values as a file that a job can include: [material], [machine], [[cutter]], [uncertainty]. Zero
/// errors belong to their set-up alone and stand in comments.
std::string included_text(const Calibration &calibration, const Measured &measured);

/// Keys of that file which the job states itself, so that its own values would win.
std::vector<std::string> keys_in_the_way(const Calibration &calibration, const Job &job);

} // namespace asperity
