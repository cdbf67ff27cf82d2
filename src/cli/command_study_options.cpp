// The options of `asperity study` and what belongs to it.
#include "command_study_options.h"

namespace asperity {

namespace {

constexpr int kMostThreads = 1024;

constexpr const char *kLists =
    "How --vary is written: KEY=LIST\n"
    "  KEY   a key of the job file with its sections: setup.z_zero_error_mm; items of lists are counted from "
    "1:\n"
    "        cutter.1.runout_mm, wall.2.finish.ra_um; program for the program's file\n"
    "  LIST  values with commas between: 0,0.05,0.1 or plunge,zigzag or true,false\n"
    "        FROM:TO:STEP is a range: 0:0.1:0.02 = 0, 0.02, 0.04, 0.06, 0.08, 0.1; it may stand among "
    "others\n"
    "  Several --vary: all combinations, the last one changing fastest.\n\n"
    "The same command goes on where an earlier one was stopped, whatever stopped it. Changed inputs are "
    "refused\n"
    "for an old file of results.\n\n"
    "Exit status: 0 done, and a plan meets everything wanted; 1 done, but none does; 2 something is wrong;\n"
    "130 stopped by Ctrl-C (a second Ctrl-C ends at once; finished combinations are kept either way).";

void add_axes(CLI::App &app, StudyAsk &ask) {
  app.add_option("--along", ask.x, "Number along the picture, by its id. Left out: time_s")->type_name("ID");
  app.add_option("--up", ask.y,
                 "Number up the picture, and the one whose influences are shown. Left out: the "
                 "wanted finish that differs")
      ->type_name("ID");
}

void add_limits(CLI::App &app, StudyAsk &ask) {
  app.add_option("--at-most", ask.at_most,
                 "Beyond what the job wants: this number at most so large "
                 "(rim/witness_depth_um=3); may be given several times")
      ->type_name("ID=VALUE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  app.add_option("--at-least", ask.at_least, "The same: at least so large")
      ->type_name("ID=VALUE")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void add_outputs(CLI::App &app, StudyOutputs &outputs) {
  app.add_option(
         "--out", outputs.folder,
         "Write study.csv, study.json, front.png and influence.png into this folder; it is made if need be")
      ->type_name("DIR");
  app.add_option("--csv", outputs.csv, "Write the table of all combinations to this file")->type_name("FILE");
  app.add_option("--json", outputs.json, "Write everything as JSON to this file")->type_name("FILE");
}

void add_results(CLI::App &app, StudyCommand &command) {
  app.add_option("results", command.results, "File of results")->required()->type_name("FILE.db");
}

void add_run(CLI::App &study, StudyCommand &command) {
  study.add_option("job", command.job_file, "Job file (TOML)")->type_name("JOB.toml");
  study.add_option("--vary", command.vary, "A key of the job and its values; may be given several times")
      ->type_name("KEY=LIST")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  study
      .add_option("--results", command.results,
                  "File of results, made or gone on with. Left out: "
                  "<job>-study.db here")
      ->type_name("FILE.db");
  study.add_option("--part", command.part, "Only part I of N, for N machines; merge puts them together")
      ->type_name("I/N");
  study.add_flag(
      "--roughness", command.roughness,
      "Read roughness too (the slowest stage); by itself only where the job wants a Ra or an axis or "
      "limit is one");
  study
      .add_option("--threads", command.threads,
                  "Work on so many threads; 0 = all cores. Results do not depend on it")
      ->type_name("N")
      ->check(CLI::Range(0, kMostThreads));
  study.add_flag("--quiet", command.quiet, "No table and no progress; problems are still shown");
}

void add_best(CLI::App &study, StudyCommand &command) {
  CLI::App *best = study.add_subcommand("best", "The fastest combination that meets everything wanted");
  add_results(*best, command);
  add_limits(*best, command.ask);
  best->add_option("--write-job", command.new_job, "Write it as a new job file")->type_name("NEW.toml");
  best->add_flag("--nearest", command.takes_nearest,
                 "If none meets everything, write the one that comes nearest");
  best->footer(
      "Exit status: 0 there is one; 1 none meets everything (the nearest is shown); 2 something is wrong.");
  best->callback([&command] { command.action = StudyAction::best; });
}

void add_show(CLI::App &study, StudyCommand &command) {
  CLI::App *show = study.add_subcommand("show", "Show the results that are there: table, influences, files");
  add_results(*show, command);
  add_axes(*show, command.ask);
  add_limits(*show, command.ask);
  add_outputs(*show, command.outputs);
  show->callback([&command] { command.action = StudyAction::show; });
}

void add_merge(CLI::App &study, StudyCommand &command) {
  CLI::App *merge = study.add_subcommand("merge", "Put the parts of one study into a new file");
  merge->add_option("new", command.merged, "File to write; must not be there yet")
      ->required()
      ->type_name("NEW.db");
  merge->add_option("parts", command.parts, "Files of results of the same study")
      ->required()
      ->expected(1, -1)
      ->type_name("PART.db");
  merge->callback([&command] { command.action = StudyAction::merge; });
}

} // namespace

void add_study(CLI::App &app, StudyCommand &command) {
  CLI::App *study = app.add_subcommand(
      "study", "Predict all combinations of varied values: finish against time, influences, the best plan");
  study->require_subcommand(0, 1);
  add_run(*study, command);
  add_axes(*study, command.ask);
  add_limits(*study, command.ask);
  add_outputs(*study, command.outputs);
  add_show(*study, command);
  add_best(*study, command);
  add_merge(*study, command);
  study->footer(kLists);
}

} // namespace asperity
