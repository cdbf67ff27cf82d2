// `asperity calibrate`: options, fit, words, the file to include.
#include "command_calibrate.h"

#include "asperity/base/text_file.h"
#include "asperity/report/cautions.h"
#include "interrupt.h"
#include "number_check.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"
#include "result_place.h"

#include <fmt/format.h>

#include <cmath>
#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

constexpr int kMostThreads = 1024;
/// A reading this many standard uncertainties off is named as the odd one.
constexpr double kOdd = 2.0;

std::string spread_text(double expanded, bool is_share) {
  return is_share ? fmt::format("1/{0:.3g} to {0:.3g} times", 1.0 + expanded)
                  : fmt::format("+-{:.2g} mm", expanded);
}

std::string values_text(const Calibration &calibration) {
  std::string text = "\nFitted (expanded uncertainty, coverage factor 2)\n";
  for (const FittedValue &each : calibration.fitted)
    text += fmt::format("  {}: {}, {} (stated: {})\n", each.input.what,
                        each.input.is_share ? fmt::format("{:.4g} times what the job states", each.value)
                                            : fmt::format("{:+.4f} mm from what the job states", each.value),
                        spread_text(each.expanded, each.input.is_share),
                        spread_text(each.stated_expanded, each.input.is_share));
  return text;
}

std::string readings_text(const Calibration &calibration) {
  std::string text = fmt::format("\nReadings\n  {:<40} {:>18} {:>10} {:>10}   off by\n", "", "measured",
                                 "as stated", "as fitted");
  for (const FittedReading &each : calibration.readings)
    text +=
        fmt::format("  {:<40} {:>10.5g} +-{:<6.2g} {:>9.5g} {:>10.5g}   {:+.1f} standard uncertainties{}\n",
                    each.what, each.measured, each.expanded, each.before, each.after, each.off,
                    std::abs(each.off) > kOdd ? "  (look at this one)" : "");
  if (calibration.freedom <= 0)
    return text + "  As many readings as fitted values: whether they agree cannot be judged. Measure more.\n";
  return text +
         fmt::format("  Chi-squared {:.2f} with {} degrees of freedom; up to {:.2f} in 95 % of cases: {}\n",
                     calibration.chi_squared, calibration.freedom, calibration.chi_squared_limit,
                     calibration.fits_together()
                         ? "the readings fit together."
                         : "the readings do NOT fit together within their uncertainties.\n  Doubt the odd "
                           "reading, its uncertainty, or the model before you use the values.");
}

std::string use_text(const CalibrateCommand &command, const Calibration &calibration, const Job &job) {
  const std::string name = command.output.empty() ? "measured.toml" : command.output.filename().string();
  std::string text =
      fmt::format("\nTo use it\n  Write include = \"{}\" at the top of {} (the file beside it).\n", name,
                  command.job_file.filename().string());
  const std::vector<std::string> keys = keys_in_the_way(calibration, job);
  if (!keys.empty())
    text += fmt::format("  Remove from the job, whose own values win: {}.\n", fmt::join(keys, ", "));
  text +=
      "  The values hold for this machine, cutter and material, near the conditions measured.\n\nCautions\n";
  for (const std::string_view caution : cautions())
    text += fmt::format("  {}\n", caution);
  return text;
}

/// Prints, writes, and says how it went.
ExitStatus show(const CalibrateCommand &command, const Calibration &calibration, const Measured &measured,
                const Job &job) {
  const std::string file = included_text(calibration, measured);
  std::string text = fmt::format("{}\nFitted to {}\n", job.title, measured.file.filename().string());
  text += values_text(calibration) + readings_text(calibration);
  if (command.output.empty()) {
    text += "\nThe file to include (-o writes it)\n" + file;
  } else {
    if (const std::string fault = write_file(command.output, file); !fault.empty())
      return fail(fault);
    text += fmt::format("\nWritten\n  {}\n", command.output.string());
  }
  if (!print(text + use_text(command, calibration, job)))
    return fail("the fit could not be written to standard output.");
  return calibration.fits_together() ? ExitStatus::all_well : ExitStatus::missed;
}

} // namespace

void add_calibrate(CLI::App &app, CalibrateCommand &command) {
  CLI::App *calibrate = app.add_subcommand(
      "calibrate",
      "Fit force, stiffness, runout and errors to what was measured, and write a file to include");
  calibrate->add_option("job", command.job_file, "Job file (TOML) of the part that was cut")
      ->required()
      ->type_name("JOB.toml");
  calibrate
      ->add_option("measured", command.measured_file,
                   "What to fit and what was measured (TOML); see the README")
      ->required()
      ->type_name("MEASURED.toml");
  calibrate
      ->add_option("-o,--output", command.output,
                   "Write the fitted values to this file, for a job to include")
      ->type_name("FILE");
  calibrate
      ->add_option("--coarser", command.options.coarser,
                   "Chart spacing against that of one prediction; 1 = as fine, and slower")
      ->type_name("TIMES")
      ->check(number_between(0.5, 20.0))
      ->capture_default_str();
  calibrate
      ->add_option("--threads", command.options.threads,
                   "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  calibrate->footer(
      "Exit status: 0 fitted; 1 fitted, but the readings do not fit together; 2 the input is wrong or "
      "the readings cannot determine what is asked; 130 stopped by Ctrl-C.");
}

ExitStatus command_calibrate(const CalibrateCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(command.job_file, problems);
  const std::optional<Measured> measured =
      inputs ? read_measured(command.measured_file, inputs->job, problems) : std::nullopt;
  std::fputs(text_of(problems).c_str(), stderr);
  if (!measured)
    return ExitStatus::wrong_input;
  if (!command.output.empty())
    if (const std::string fault = fault_of_file(command.output, "--output"); !fault.empty())
      return fail(fault);

  Calibration calibration;
  {
    ProgressLine line(true, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    calibration = calibrate(inputs->job, inputs->program, *measured, command.options, progress);
    progress.report = nullptr;
  }
  if (progress.cancelled() || calibration.status == Status::cancelled)
    return stopped();
  if (!calibration.why.empty())
    return fail(calibration.why);
  return show(command, calibration, *measured, inputs->job);
}

} // namespace asperity
