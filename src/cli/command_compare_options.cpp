// The options of `asperity compare`, and those it shares with `asperity sheet`.
#include "command_compare.h"

namespace asperity {

namespace {
constexpr int kMostDraws = 100000, kMostThreads = 1024;
/// A comparison says of every difference whether it is larger than what is uncertain; so many tell large from
/// small.
constexpr int kDrawsOfCompare = 20;
} // namespace

void add_plan_options(CLI::App &command, PlansRequest &plans) {
  command
      .add_option(
          "--draws", plans.draws,
          "Draw the jobs' stated uncertainties so many times, the same for both plans of a difference, and "
          "say which differences are larger; each draw costs two predictions a pair, somewhat coarser and "
          "without roughness. 0 = not asked, and the table says so; 20 tell large from small, 200 make a "
          "steady band")
      ->type_name("N")
      ->check(CLI::Range(0, kMostDraws))
      ->capture_default_str();
  command
      .add_option("--threads", plans.threads,
                  "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  command.add_flag("--quiet", plans.quiet, "No summary and no progress; problems are still shown");
}

void add_compare(CLI::App &app, CompareCommand &request) {
  request.plans.draws = kDrawsOfCompare;
  CLI::App *command = app.add_subcommand(
      "compare",
      "Set plans for one part side by side: numbers, findings, surfaces cell by cell, and which to take");
  command
      ->add_option("jobs", request.plans.jobs,
                   "Job files (TOML), two or more; the first is what the others are held against")
      ->required()
      ->type_name("JOB.toml ...")
      ->expected(2, 26);
  command
      ->add_option("--out", request.folder,
                   "Write comparison.json, comparison.csv and a picture of every surface's difference into "
                   "this folder; "
                   "it is made if need be, files of the same name are replaced")
      ->type_name("DIR");
  command->add_option("--json", request.json, "Write the comparison as JSON to this file")->type_name("FILE");
  command->add_option("--csv", request.csv, "Write the numbers as a table to this file")->type_name("FILE");
  add_plan_options(*command, request.plans);
  command->footer(
      "Exit status: 0 every plan meets everything wanted without danger; 1 some plan does not; 2 the input "
      "is wrong; 130 stopped by Ctrl-C.");
}

} // namespace asperity
