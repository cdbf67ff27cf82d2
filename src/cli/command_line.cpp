// The program's commands and options, each described once: the text here is also the help.
#include "command_line.h"

#include "command_check.h"
#include "command_predict.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <exception>
#include <functional>

namespace asperity {

namespace {

constexpr const char *kPurpose =
    "Predicts the surface a CNC program will leave on a part, before it is cut: sizes, "
    "witness lines, lips, steps and scallops, with the program line that makes each.";
constexpr const char *kExitStatus =
    "Exit status:\n"
    "  0    done; everything wanted is met and no danger was found\n"
    "  1    done; a wanted value is missed, or a danger was found\n"
    "  2    a file or an option is wrong, or a result could not be written\n"
    "  130  stopped by Ctrl-C (a second Ctrl-C ends at once)\n"
    "A prediction is a model's word, not a measurement: whoever runs the machine decides.";
constexpr int kMostThreads = 1024;

void add_job_file(CLI::App &command, std::filesystem::path &file) {
  command
      .add_option("job", file, "Job file (TOML): part, blank, cutters, machine, hold-down, what is wanted")
      ->required()
      ->type_name("JOB.toml");
}

void add_predict(CLI::App &app, PredictRequest &request) {
  CLI::App *command = app.add_subcommand("predict", "Predict the surface and print what was found");
  add_job_file(*command, request.job_file);
  command
      ->add_option(
          "--out", request.files.folder,
          "Write one picture a feature (<feature>.png) and prediction.json into this folder; it is made if "
          "need be, files of the same name are replaced")
      ->type_name("DIR");
  command->add_option("--json", request.files.json, "Write the whole prediction as JSON to this file")
      ->type_name("FILE");
  command
      ->add_option("--threads", request.threads,
                   "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  command->add_flag("--quiet", request.quiet, "No summary and no progress; problems are still shown");
  command->footer(kExitStatus);
}

void add_check(CLI::App &app, std::filesystem::path &job_file) {
  CLI::App *command =
      app.add_subcommand("check", "Read job and program and say what is wrong with them, no more");
  add_job_file(*command, job_file);
  command->footer("Exit status: 0 both can be read (there may be warnings), 2 something is wrong.");
}

int run(int argc, const char *const *argv) {
  CLI::App app(kPurpose, "asperity");
  app.set_version_flag("--version", "asperity " ASPERITY_VERSION);
  app.require_subcommand(1);
  app.footer(kExitStatus);
  PredictRequest request;
  std::filesystem::path checked_job;
  add_predict(app, request);
  add_check(app, checked_job);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError &error) {
    return app.exit(error) == 0 ? 0 : static_cast<int>(ExitStatus::wrong_input);
  }
  const bool is_check = app.got_subcommand("check");
  return static_cast<int>(is_check ? command_check(checked_job) : command_predict(request));
}

} // namespace

int run_command_line(int argc, const char *const *argv) {
  try {
    return run(argc, argv);
  } catch (const std::bad_alloc &) {
    std::fputs("asperity: error: out of memory; choose a coarser chart spacing.\n", stderr);
  } catch (const std::exception &error) {
    std::fprintf(stderr, "asperity: error: %s\n", error.what());
  }
  return static_cast<int>(ExitStatus::wrong_input);
}

} // namespace asperity
