// A value put in place of the job file's, for whoever asks "what if" without writing a new file.
#pragma once

#include "asperity/job/job.h"

#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace asperity {

/// key: dotted path in the TOML; items of a list are counted from 1, in the order of the file: "title",
/// "machine.stiffness_xy_N_per_um", "cutter.1.runout_mm", "setup.program_zero_mm.3", "wall.2.finish.ra_um".
/// value: one TOML value: "0.02", "\"ramp\"", "[0, 0, 1]", "true".
struct JobChange {
  std::string key;
  std::string value;
};

/// As read_job(file, problems) with the changes made first, in order. A key or section that the file lacks is
/// added; a list item is not. Wrong keys and values give the same problems as in a file; their `file` is
/// 'change "key = value"', without a line.
std::optional<Job> read_job(const std::filesystem::path &file, std::span<const JobChange> changes,
                            Problems &problems);

/// The job's text with the changes made in place: comments and order are kept. Where the text is too unusual
/// for that, all of it is written anew without comments. `file` names the text in problems. Whether the
/// values suit a job is not asked here: read the result for that.
std::optional<std::string> changed_job_text(std::string_view text, const std::string &file,
                                            std::span<const JobChange> changes, Problems &problems);

/// A value as TOML: the shortest decimal that reads back to the same bits, with a point; text in quotes.
std::string toml_text(double value);
std::string toml_text(std::string_view text);

} // namespace asperity
