// `asperity check`: read job and program, say what is wrong with them.
#include "command_check.h"

#include "read_inputs.h"

#include "asperity/predict/outcome.h"

#include <fmt/format.h>

#include <cstdio>

namespace asperity {

ExitStatus command_check(const std::filesystem::path &job_file) {
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  const std::size_t warnings = problems.all().size() + problems.left_out();
  fmt::print("{}: job and program can be read; {} lines, {} moves, {} warning{}.\n", job_file.string(),
             inputs->program.line_count, inputs->program.moves.size(), warnings, warnings == 1 ? "" : "s");
  const MemoryBound bound = memory_bound(inputs->job, inputs->program);
  fmt::print("Predicting it takes at most {:.2f} GB of memory{}.\n",
             1e-9 * static_cast<double>(bound.in_memory_bytes),
             bound.on_disk_bytes > 0 ? fmt::format(" and {:.2f} GB on the disk (in TMPDIR, else /var/tmp)",
                                                   1e-9 * static_cast<double>(bound.on_disk_bytes))
                                     : "");
  return ExitStatus::all_well;
}

} // namespace asperity
