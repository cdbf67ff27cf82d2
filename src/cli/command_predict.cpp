// `asperity predict`: read, predict, print, write.
#include "command_predict.h"

#include "asperity/report/summary_text.h"
#include "interrupt.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"

#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

/// Summary and names of the written files; false if standard output does not take them.
bool print_summary(const Outcome &outcome, const Written &written) {
  std::string text = summary_text(outcome, style_of_output());
  if (!written.files.empty()) {
    text += "\nWritten\n";
    for (const std::filesystem::path &file : written.files)
      text += "  " + file.string() + '\n';
  }
  return print(text);
}

} // namespace

ExitStatus command_predict(const PredictRequest &request) {
  Progress progress;
  const Interrupt interrupt(progress);

  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(request.job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = prepare(request.files); !fault.empty())
    return fail(fault);

  Outcome outcome;
  Written written;
  {
    ProgressLine line(!request.quiet, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    if (!progress.cancelled())
      outcome = predict(inputs->job, inputs->program, {.threads = request.threads}, progress);
    if (outcome.status == Status::done && !progress.cancelled())
      written = write_results(outcome, request.files, progress);
  }
  if (progress.cancelled() || outcome.status == Status::cancelled)
    return stopped();
  if (outcome.status != Status::done)
    return fail(outcome.why);
  if (!request.quiet && !print_summary(outcome, written))
    return fail("the summary could not be written to standard output.");
  if (!written.has_lettering)
    warn_of_no_font();
  if (!written.fault.empty())
    return fail(written.fault);
  return is_all_well(outcome) ? ExitStatus::all_well : ExitStatus::missed;
}

} // namespace asperity
