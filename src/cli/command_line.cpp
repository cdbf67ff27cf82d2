// The program's commands and options, each described once: the text here is also the help.
#include "command_line.h"

#include "command_calibrate.h"
#include "command_check.h"
#include "command_compare.h"
#include "command_export.h"
#include "command_passes.h"
#include "command_predict.h"
#include "command_sheet.h"
#include "command_study_options.h"
#include "command_tolerance.h"
#include "command_trace.h"
#include "number_check.h"
#include "picture_options.h"
#include "view_options.h"

#include <CLI/CLI.hpp>

#include <cstdio>
#include <exception>
#include <functional>
#include <map>

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

void add_threads(CLI::App &command, int &threads) {
  command
      .add_option("--threads", threads, "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
}

void add_predict(CLI::App &app, PredictRequest &request) {
  CLI::App *command = app.add_subcommand("predict", "Predict the surface and print what was found");
  add_job_file(*command, request.job_file);
  command
      ->add_option("--out", request.files.folder,
                   "Write two pictures a feature (<feature>.png, <feature>-ra.png) and prediction.json into "
                   "this folder; it is made if "
                   "need be, files of the same name are replaced")
      ->type_name("DIR");
  command->add_option("--json", request.files.json, "Write the whole prediction as JSON to this file")
      ->type_name("FILE");
  add_threads(*command, request.threads);
  command->add_flag("--quiet", request.quiet, "No summary and no progress; problems are still shown");
  command->footer(kExitStatus);
}

/// A step below and above the cutoffs of ISO 3274:1996, 0.08 to 8 mm [common practice, no published source].
constexpr double kShortestCutoff_mm = 0.025, kLongestCutoff_mm = 25.0;
constexpr double kFarthest_mm = 1e5, kShortestTrace_mm = 0.05;

void add_trace_place(CLI::App &command, TraceWish &wish) {
  command.add_option("--feature", wish.feature, "Name of the wall, floor or dome, as in the job file")
      ->required()
      ->type_name("NAME");
  command
      .add_option("--along", wish.along,
                  "Direction: s (round a wall) or z (up it); x or y on floors and domes")
      ->required()
      ->type_name("s|z|x|y")
      ->check(CLI::IsMember({"s", "z", "x", "y"}));
  command
      .add_option(
          "--at", wish.at_mm,
          "Where, on the other axis: height z of a trace round a wall, arc length s of one up it, y of "
          "one along x. Left out: the middle of the feature")
      ->type_name("MM")
      ->check(number_between(-kFarthest_mm, kFarthest_mm));
  CLI::Option *length =
      command
          .add_option("--length", wish.length_mm,
                      "Length of the trace. Left out: all round a wall, or all of the feature")
          ->type_name("MM")
          ->check(number_between(kShortestTrace_mm, kFarthest_mm));
  command
      .add_option("--from", wish.from_mm,
                  "Where along the direction it begins, with --length. Left out: so that the middle of the "
                  "feature is the trace's middle (round a wall: s = 0)")
      ->type_name("MM")
      ->check(number_between(-kFarthest_mm, kFarthest_mm))
      ->needs(length);
}

void add_reading(CLI::App &command, TraceWish &wish) {
  command
      .add_option("--cutoff", wish.cutoff_mm,
                  "Cutoff lc of the filter. Left out: chosen by the tables of ISO 4288:1996")
      ->type_name("MM")
      ->check(number_between(kShortestCutoff_mm, kLongestCutoff_mm));
  const std::map<std::string, Averaging> averagings{{"iso21920", Averaging::iso_21920},
                                                    {"iso4287", Averaging::iso_4287}};
  command
      .add_option("--averaging", wish.averaging,
                  "iso21920 (Ra over the evaluation length) or iso4287 (section by section, then their mean)")
      ->type_name("NAME")
      ->transform(CLI::CheckedTransformer(averagings))
      ->default_str("iso21920");
}

void add_trace(CLI::App &app, TraceCommand &request) {
  CLI::App *command = app.add_subcommand(
      "trace", "Run a stylus over one predicted surface: profile, roughness and the lines that made it");
  add_job_file(*command, request.job_file);
  add_trace_place(*command, request.wish);
  add_reading(*command, request.wish);
  command
      ->add_option(
          "--out", request.folder,
          "Write table and picture (<feature>-along-<direction>.csv and .png) into this folder; it is "
          "made if need be")
      ->type_name("DIR");
  command->add_option("--csv", request.csv, "Write the profile as a table to this file")->type_name("FILE");
  command->add_option("--picture", request.picture, "Draw the profile into this PNG file")->type_name("FILE");
  add_threads(*command, request.threads);
  command->footer(
      "Exit status: 0 done; 1 done, but the Ra that the job wants is exceeded by the upper end of "
      "the band; 2 the input is wrong or the trace misses the feature; 130 stopped by Ctrl-C.");
}

void add_check(CLI::App &app, std::filesystem::path &job_file) {
  CLI::App *command =
      app.add_subcommand("check", "Read job and program and say what is wrong with them, no more");
  add_job_file(*command, job_file);
  command->footer("Exit status: 0 both can be read (there may be warnings), 2 something is wrong.");
}

void add_passes(CLI::App &app, PassesRequest &request) {
  CLI::App *command = app.add_subcommand(
      "passes", "Plan the job's [[pass]] sections and write them as a program for the controller");
  add_job_file(*command, request.job_file);
  command
      ->add_option("-o,--output", request.program,
                   "Write the program (RS-274) to this file; left out: only sum up")
      ->type_name("FILE");
  command->footer(
      "Exit status: 0 planned; 2 the job is wrong, a pass cannot be planned or the file cannot be "
      "written.");
}

int run(int argc, const char *const *argv) {
  CLI::App app(kPurpose, "asperity");
  app.set_version_flag("--version", "asperity " ASPERITY_VERSION);
  app.require_subcommand(1);
  app.footer(kExitStatus);
  PredictRequest request;
  TraceCommand trace;
  ViewCommand shown;
  add_view(app, shown);
  std::filesystem::path checked_job;
  add_predict(app, request);
  add_trace(app, trace);
  ToleranceCommand tolerance;
  add_tolerance(app, tolerance);
  CalibrateCommand calibrated;
  add_calibrate(app, calibrated);
  PictureRequest picture;
  add_picture(app, picture);
  add_check(app, checked_job);
  StudyCommand study;
  add_study(app, study);
  CompareCommand compared;
  add_compare(app, compared);
  SheetCommand sheet;
  add_sheet(app, sheet);
  ExportCommand exported;
  add_export(app, exported);
  PassesRequest passes;
  add_passes(app, passes);
  try {
    app.parse(argc, argv);
  } catch (const CLI::ParseError &error) {
    return app.exit(error) == 0 ? 0 : static_cast<int>(ExitStatus::wrong_input);
  }
  if (app.got_subcommand("check"))
    return static_cast<int>(command_check(checked_job));
  if (app.got_subcommand("passes"))
    return static_cast<int>(command_passes(passes));
  if (app.got_subcommand("compare"))
    return static_cast<int>(command_compare(compared));
  if (app.got_subcommand("sheet"))
    return static_cast<int>(command_sheet(sheet));
  if (app.got_subcommand("export"))
    return static_cast<int>(command_export(exported));
  if (app.got_subcommand("view"))
    return static_cast<int>(command_view(shown));
  if (app.got_subcommand("study"))
    return static_cast<int>(command_study(study));
  if (app.got_subcommand("tolerance"))
    return static_cast<int>(command_tolerance(tolerance));
  if (app.got_subcommand("calibrate"))
    return static_cast<int>(command_calibrate(calibrated));
  if (app.got_subcommand("picture"))
    return static_cast<int>(command_picture(picture));
  return static_cast<int>(app.got_subcommand("trace") ? command_trace(trace) : command_predict(request));
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
