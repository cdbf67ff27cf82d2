// `asperity export`: read, predict, write glTF, STL and profiles.
#include "command_export.h"

#include "asperity/base/text_file.h"
#include "asperity/predict/outcome.h"
#include "asperity/report/cautions.h"
#include "interrupt.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"
#include "result_place.h"

#include <fmt/format.h>

#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

constexpr std::size_t kFewestCells = 256, kMostCells = 4000000;
constexpr int kMostThreads = 1024;

std::string prepare(const ExportCommand &command) {
  if (command.gltf.empty() && command.stl.empty() && command.csv.empty())
    return "nothing to write: give --gltf, --stl or --csv a file name.";
  for (const auto &[file, option] :
       {std::pair{command.gltf, "--gltf"}, std::pair{command.stl, "--stl"}, std::pair{command.csv, "--csv"}})
    if (!file.empty())
      if (std::string fault = fault_of_file(file, option); !fault.empty())
        return fault;
  return {};
}

struct Exported {
  std::string text, fault;

  void put(const std::filesystem::path &file, const std::string &bytes, const std::string &contents) {
    if (!fault.empty())
      return;
    fault = write_file(file, bytes);
    text += fmt::format("{}\n  {}\n", file.string(), contents);
  }
};

Exported write_exports(const ExportCommand &command, const Outcome &outcome, const Progress &progress) {
  Exported exported;
  if (!command.gltf.empty() && !progress.cancelled())
    exported.put(
        command.gltf, gltf_bytes(outcome, command.cells),
        fmt::format("glTF 2.0, metres, y up: every surface of the job as predicted, true to size, at most {} "
                    "cells each, coloured by how far it is off.",
                    command.cells));
  if (!command.stl.empty() && !progress.cancelled()) {
    const StlPart part = stl_part(outcome, command.cells);
    exported.put(command.stl, part.bytes,
                 fmt::format("STL, mm, {} triangles. {}", part.triangles, part.contents));
  }
  if (!command.csv.empty() && !progress.cancelled())
    exported.put(command.csv, profile_csv_text(outcome),
                 "Mean distance from the wanted surface along every feature, both ways.");
  exported.text += fmt::format("{}\n", cautions().front());
  return exported;
}

} // namespace

void add_export(CLI::App &app, ExportCommand &request) {
  CLI::App *command = app.add_subcommand("export", "Write the predicted surface for other programs");
  command
      ->add_option("job", request.job_file,
                   "Job file (TOML): part, blank, cutters, machine, hold-down, what is wanted")
      ->required()
      ->type_name("JOB.toml");
  command->add_option("--gltf", request.gltf, "Surfaces with colours as binary glTF 2.0, in metres")
      ->type_name("FILE.glb");
  command
      ->add_option(
          "--stl", request.stl,
          "The predicted part as binary STL in mm: closed where the job's features allow, else open surfaces")
      ->type_name("FILE.stl");
  command->add_option("--csv", request.csv, "Profiles of all features as a table")->type_name("FILE.csv");
  command->add_option("--cells", request.cells, "Thin surfaces out to so many cells each")
      ->type_name("N")
      ->check(CLI::Range(kFewestCells, kMostCells))
      ->capture_default_str();
  command
      ->add_option("--threads", request.threads,
                   "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  command->add_flag("--quiet", request.quiet, "No words and no progress; problems are still shown");
  command->footer("Exit status: 0 the files are written, 2 something is wrong, 130 stopped by Ctrl-C.");
}

ExitStatus command_export(const ExportCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  Problems problems;
  const std::optional<Inputs> inputs = read_inputs(command.job_file, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!inputs)
    return ExitStatus::wrong_input;
  if (const std::string fault = prepare(command); !fault.empty())
    return fail(fault);
  Outcome outcome;
  {
    ProgressLine line(!command.quiet, ::isatty(STDERR_FILENO));
    progress.report = [&line](std::string_view stage, double fraction) { line.show(stage, fraction); };
    outcome =
        predict(inputs->job, inputs->program, {.threads = command.threads, .roughness = false}, progress);
    progress.report = {};
  }
  if (progress.cancelled() || outcome.status == Status::cancelled)
    return stopped();
  if (outcome.status != Status::done)
    return fail(outcome.why);
  const Exported exported = write_exports(command, outcome, progress);
  if (progress.cancelled())
    return stopped();
  if (!exported.fault.empty())
    return fail(exported.fault);
  if (!command.quiet && !print(exported.text))
    return fail("the words could not be written to standard output.");
  return ExitStatus::all_well;
}

} // namespace asperity
