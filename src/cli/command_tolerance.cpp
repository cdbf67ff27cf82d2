// `asperity tolerance`: options, run, output.
#include "command_tolerance.h"

#include "asperity/base/text_file.h"
#include "command_tolerance_text.h"
#include "interrupt.h"
#include "number_check.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"
#include "result_place.h"

#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

constexpr int kFewestDraws = 10, kMostDraws = 100000, kMostThreads = 1024;

std::string fault_of_files(const ToleranceCommand &command) {
  std::string fault = command.json.empty() ? std::string() : fault_of_file(command.json, "--json");
  if (fault.empty() && !command.csv.empty())
    fault = fault_of_file(command.csv, "--csv");
  return fault;
}

/// Writes what was asked for; empty, or what went wrong.
std::string write_files(const ToleranceCommand &command, const ToleranceShown &shown) {
  std::string fault = command.json.empty() ? std::string() : write_file(command.json, tolerance_json(shown));
  if (fault.empty() && !command.csv.empty())
    fault = write_file(command.csv, tolerance_csv(shown));
  return fault;
}

} // namespace

void add_tolerance(CLI::App &app, ToleranceCommand &command) {
  CLI::App *tolerance = app.add_subcommand(
      "tolerance",
      "How sure the numbers are: bands from what is uncertain in the shop, and what to measure first");
  tolerance
      ->add_option("job", command.job_file,
                   "Job file (TOML); its [uncertainty] says how far values may be off")
      ->required()
      ->type_name("JOB.toml");
  tolerance
      ->add_option("--draws", command.options.draws, "Predictions, each with all uncertain values drawn anew")
      ->type_name("N")
      ->check(CLI::Range(kFewestDraws, kMostDraws))
      ->capture_default_str();
  tolerance
      ->add_option("--seed", command.options.seed, "Number the draws follow from; the same gives the same")
      ->type_name("S")
      ->capture_default_str();
  tolerance
      ->add_option("--coarser", command.options.coarser,
                   "Chart spacing against that of one prediction; 1 = as fine, and slower")
      ->type_name("TIMES")
      ->check(number_between(0.5, 20.0))
      ->capture_default_str();
  tolerance->add_flag("--roughness", command.options.roughness,
                      "Read roughness in every draw too; much slower");
  tolerance->add_option("--json", command.json, "Write everything as JSON to this file")->type_name("FILE");
  tolerance->add_option("--csv", command.csv, "Write the numbers as a table to this file")->type_name("FILE");
  tolerance
      ->add_option("--threads", command.options.threads,
                   "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  tolerance->footer(
      "Exit status: 0 done; 2 the input is wrong or a file could not be written; 130 stopped by "
      "Ctrl-C. Whether wanted values are met is told in the text, not by the status.");
}

ExitStatus command_tolerance(const ToleranceCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(command.job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = fault_of_files(command); !fault.empty())
    return fail(fault);
  if (uncertain_inputs(inputs->job).empty())
    return fail("nothing is uncertain: every value in [uncertainty] is 0 or its effect is switched off.");

  Tolerance tolerance;
  {
    ProgressLine line(true, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    tolerance = tolerance_of({inputs->job, inputs->program}, command.options, progress);
    progress.report = nullptr;
  }
  if (progress.cancelled() || tolerance.status == Status::cancelled)
    return stopped();
  if (tolerance.status != Status::done)
    return fail(tolerance.why);
  const ToleranceShown shown{inputs->job, command.options, tolerance};
  if (const std::string fault = write_files(command, shown); !fault.empty())
    return fail(fault);
  return print(tolerance_text(shown)) ? ExitStatus::all_well
                                      : fail("the bands could not be written to standard output.");
}

} // namespace asperity
