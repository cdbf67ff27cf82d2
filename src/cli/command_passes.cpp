// `asperity passes`: plan, write, sum up.
#include "command_passes.h"

#include "asperity/base/text_file.h"
#include "asperity/motion/timed_path.h"
#include "asperity/passes/job_program.h"
#include "asperity/passes/plan_passes.h"
#include "output.h"
#include "read_inputs.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>

namespace asperity {

namespace {

std::string duration_text(double seconds) {
  const auto whole = static_cast<long long>(std::llround(seconds));
  return whole < 60 ? fmt::format("{} s", whole) : fmt::format("{} min {} s", whole / 60, whole % 60);
}

std::string summary(const Job &job, const PassPlan &plan, const Program &program) {
  const TimedPath path = plan_motion(program, job.machine, job.setup, job.effects);
  std::string text = fmt::format("{:<28} {:>6} {:>7} {:>12}\n", "pass", "cutter", "levels", "cut, mm");
  double length_mm = 0.0;
  for (const PassSummary &pass : plan.passes) {
    text += fmt::format("{:<28} {:>6} {:>7} {:>12.1f}\n", pass.name, pass.cutter, pass.levels,
                        pass.cut_length_mm);
    length_mm += pass.cut_length_mm;
  }
  text += fmt::format("{} lines, {:.1f} mm of feed moves, {} ({} of it in feed moves), changing cutters not "
                      "counted.\n",
                      program.line_count, length_mm, duration_text(path.duration_s),
                      duration_text(path.cutting_s));
  return text + "The limits of the controller and of the cutter's maker rule. Run the program once above the "
                "work, secure the work, wear eye protection, extract dust and fumes.\n";
}

} // namespace

ExitStatus command_passes(const PassesRequest &request) {
  Problems problems;
  const std::optional<Job> job = read_job(request.job_file, problems);
  if (job && job->passes.empty())
    problems.error(job->file.string(), 0, 0, "the job has no planned passes: it brings its own program",
                   "Replace 'program' by [[pass]] sections.");
  const auto plan = job && !problems.has_errors() ? plan_passes(*job, problems) : std::nullopt;
  // What is written is read back first: the controller gets nothing that the prediction could not read.
  Program program;
  if (plan)
    program = read_program_text(plan->text, planned_name(*job), read_options(*job), problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!plan || problems.has_errors())
    return ExitStatus::wrong_input;
  if (!request.program.empty())
    if (const std::string fault = write_file(request.program, plan->text); !fault.empty())
      return fail(fault);
  std::string text = summary(*job, *plan, program);
  if (!request.program.empty())
    text += fmt::format("\nWritten\n  {}\n", request.program.string());
  return print(text) ? ExitStatus::all_well : fail("the summary could not be written to standard output.");
}

} // namespace asperity
