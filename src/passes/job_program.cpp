// The program of a job: text first, then the one reader for it.
#include "asperity/passes/job_program.h"

#include "asperity/base/text_file.h"
#include "asperity/passes/plan_passes.h"

namespace asperity {

namespace {

constexpr std::size_t kMostText_bytes = std::size_t{1} << 30;

/// The program's text, and the name under which its lines are quoted.
struct Source {
  std::string text;
  std::filesystem::path name;
};

std::optional<Source> source_of(const Job &job, Problems &problems) {
  if (job.passes.empty()) {
    auto text = read_file(job.program, kMostText_bytes, problems);
    return text ? std::optional<Source>({std::move(*text), job.program}) : std::nullopt;
  }
  auto plan = plan_passes(job, problems);
  return plan ? std::optional<Source>({std::move(plan->text), planned_name(job)}) : std::nullopt;
}

} // namespace

std::filesystem::path planned_name(const Job &job) {
  return job.file.parent_path() / ("passes of " + job.file.filename().string());
}

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
  std::optional<Source> source = source_of(job, problems);
  if (!source)
    return std::nullopt;
  Program program = read_program_text(source->text, source->name, read_options(job), problems);
  if (problems.error_count() != errors_before)
    return std::nullopt;
  return JobProgram{std::move(program), std::move(source->text)};
}

} // namespace asperity
