// The program of a job: text first, then the one reader for it.
#include "asperity/passes/job_program.h"

#include "asperity/base/text_file.h"

namespace asperity {

namespace {

constexpr std::size_t kMostText_bytes = std::size_t{1} << 30;

} // namespace

ReadOptions read_options(const Job &job) {
  ReadOptions options;
  options.start_in_inch = job.setup.program_unit_inch;
  options.block_delete = job.setup.block_delete;
  for (const Cutter &cutter : job.cutters) {
    options.tools.push_back(cutter.number);
    options.length_offset_mm[cutter.number] = cutter.length_offset_mm;
  }
  return options;
}

std::optional<JobProgram> job_program(const Job &job, Problems &problems) {
  const std::size_t errors_before = problems.error_count();
  std::optional<std::string> text = read_file(job.program, kMostText_bytes, problems);
  if (!text)
    return std::nullopt;
  Program program = read_program_text(*text, job.program, read_options(job), problems);
  if (problems.error_count() != errors_before)
    return std::nullopt;
  return JobProgram{std::move(program), std::move(*text)};
}

} // namespace asperity
