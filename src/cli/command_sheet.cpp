// `asperity sheet`: read, predict, draw, write one HTML file.
#include "command_sheet.h"

#include "asperity/base/digest.h"
#include "asperity/base/text_file.h"
#include "asperity/sheet/answer.h"
#include "asperity/sheet/sheet_html.h"
#include "command_compare.h"
#include "interrupt.h"
#include "output.h"
#include "result_place.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <chrono>
#include <cstdlib>

namespace asperity {

namespace {

constexpr int kPhotoWidth_px = 960, kPhotoHeight_px = 720;

/// Today in UTC; SOURCE_DATE_EPOCH (reproducible-builds.org) sets another day, so that a sheet can be made
/// twice alike.
std::string today() {
  std::time_t now = std::chrono::system_clock::to_time_t(std::chrono::system_clock::now());
  if (const char *fixed = std::getenv("SOURCE_DATE_EPOCH"))
    if (const long long seconds = std::atoll(fixed); seconds > 0)
      now = static_cast<std::time_t>(seconds);
  return fmt::format("{:%Y-%m-%d}", fmt::gmtime(now));
}

std::vector<InputFile> files_of(const Inputs &inputs) {
  std::vector<InputFile> files{input_file(inputs.job.file)};
  for (const std::filesystem::path &included : inputs.job.included)
    files.push_back(input_file(included));
  if (inputs.job.passes.empty())
    files.push_back(input_file(inputs.program.file));
  else
    files.push_back({"program planned from the job's passes", sha256_hex(inputs.program_text)});
  return files;
}

std::string command_words(const SheetCommand &command) {
  std::string text = "asperity sheet";
  for (const std::filesystem::path &job : command.plans.jobs)
    text += ' ' + job.filename().string();
  if (command.plans.draws > 0)
    text += fmt::format(" --draws {}", command.plans.draws);
  return text + " -o " + command.file.filename().string();
}

std::string write_sheet(const SheetCommand &command, const std::vector<Inputs> &inputs,
                        const PredictedPlans &plans) {
  const std::vector<const Outcome *> outcomes = plans.pointers();
  const PartPictures pictures = part_pictures(outcomes, kPhotoWidth_px, kPhotoHeight_px);
  if (!pictures.fault.empty())
    fmt::print(stderr, "asperity: warning: the sheet has no pictures in space: {}\n", pictures.fault);
  SheetInput input{.outcomes = outcomes,
                   .comparison = plans.comparison,
                   .pictures = pictures,
                   .files = {},
                   .title = command.title,
                   .version = ASPERITY_VERSION,
                   .date = today(),
                   .command = command_words(command),
                   .draws = command.plans.draws};
  for (const Inputs &one : inputs)
    input.files.push_back(files_of(one));
  return write_file(command.file, sheet_html(input));
}

} // namespace

void add_sheet(CLI::App &app, SheetCommand &request) {
  CLI::App *command = app.add_subcommand(
      "sheet", "Write one HTML file that shows one plan or several and which to take; it needs no network");
  command
      ->add_option("jobs", request.plans.jobs,
                   "Job files (TOML); the first is what the others are held against")
      ->required()
      ->type_name("JOB.toml ...")
      ->expected(1, 26);
  command->add_option("-o,--output", request.file, "The sheet; a file of that name is replaced")
      ->required()
      ->type_name("FILE.html");
  command->add_option("--title", request.title, "What is decided on; left out: what the jobs' titles share")
      ->type_name("TEXT");
  add_plan_options(*command, request.plans);
  command->footer(
      "Exit status: 0 every plan meets everything wanted without danger; 1 the sheet is written, but some "
      "plan does not; 2 the input is wrong; 130 stopped by Ctrl-C.");
}

ExitStatus command_sheet(const SheetCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  const auto inputs = read_plans(command.plans.jobs);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = fault_of_file(command.file, "--output"); !fault.empty())
    return fail(fault);
  const PredictedPlans plans = predict_plans(*inputs, command.plans, progress);
  if (plans.ended)
    return *plans.ended == ExitStatus::interrupted ? stopped() : *plans.ended;
  if (const std::string fault = write_sheet(command, *inputs, plans); !fault.empty())
    return fail(fault);
  if (progress.cancelled())
    return stopped();
  const Answer answer = answer_of(plans.comparison, plans.pointers());
  if (!command.plans.quiet &&
      !print(fmt::format("{}\nWritten\n  {}\n", answer.headline, command.file.string())))
    return fail("the answer could not be written to standard output.");
  return status_of(plans.outcomes);
}

} // namespace asperity
