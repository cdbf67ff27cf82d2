// `asperity study`: runs, goes on, shows, merges, takes the best.
#include "command_study.h"

#include "asperity/base/text_file.h"
#include "asperity/report/study_text.h"
#include "asperity/study/merge.h"
#include "asperity/study/run_study.h"
#include "command_study_output.h"
#include "interrupt.h"
#include "output.h"
#include "progress_line.h"
#include "read_inputs.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <unistd.h>

namespace asperity {

namespace {

namespace fs = std::filesystem;

bool is_roughness_number(const std::string &id) {
  return id.find("/ra_") != std::string::npos || id.find("/rz_") != std::string::npos;
}

/// Roughness is the slowest stage, so it is read only where somebody looks at it.
bool asks_for_roughness(const StudyCommand &command) {
  std::vector<std::string> ids{command.ask.x, command.ask.y};
  ids.insert(ids.end(), command.ask.at_most.begin(), command.ask.at_most.end());
  ids.insert(ids.end(), command.ask.at_least.begin(), command.ask.at_least.end());
  return command.roughness || std::any_of(ids.begin(), ids.end(), is_roughness_number);
}

/// In the folder where the command runs: sheave-study.db, sheave-study-2-of-4.db.
fs::path results_file(const StudyCommand &command, const StudyPart &part) {
  if (!command.results.empty())
    return command.results;
  const std::string ending = part.count > 1 ? fmt::format("-{}-of-{}", part.index + 1, part.count) : "";
  return fmt::format("{}-study{}.db", command.job_file.stem().string(), ending);
}

std::vector<std::size_t> left_to_do(const StudyHead &head, const StudyPart &part,
                                    const std::set<std::size_t> &finished) {
  std::vector<std::size_t> combinations;
  for (std::size_t i = 0; i < head.grid.size(); ++i)
    if (part.holds(i) && !finished.contains(i))
      combinations.push_back(i);
  return combinations;
}

/// Says how far the run has come and about how long it will still take.
class Clock {
public:
  std::string left(double fraction) const {
    constexpr double kSoonest = 0.02;
    if (fraction < kSoonest)
      return {};
    const double past_s = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin_).count();
    const double left_s = past_s / fraction * (1.0 - fraction);
    return left_s < 90.0 ? fmt::format(", about {:.0f} s left", left_s)
                         : fmt::format(", about {:.0f} min left", left_s / 60.0);
  }

private:
  std::chrono::steady_clock::time_point begin_ = std::chrono::steady_clock::now();
};

/// Predicts and keeps; empty, or what went wrong.
std::string run_and_keep(const StudyCommand &command, const StudyHead &head, InputWatch &watch,
                         std::vector<std::size_t> combinations, StudyFile &file, Progress &progress) {
  const auto keep = [&](const Trial &trial) {
    return watch.is_changed()
               ? std::string("the job or a file it names was changed while the study ran. What was predicted "
                             "before is kept; undo the change and start again, or begin a new file.")
               : file.add(trial);
  };
  ProgressLine line(!command.quiet, ::isatty(STDERR_FILENO));
  const Clock clock;
  progress.report = [&](std::string_view stage, double fraction) {
    line.show(fmt::format("{}{}", stage, clock.left(fraction)), fraction);
  };
  std::string fault = run_trials({head, std::move(combinations), command.threads}, keep, progress);
  progress.report = nullptr;
  return fault;
}

ExitStatus stopped_study(const StudyFile &file, const StudyHead &head, const fs::path &path) {
  std::string ignored;
  fmt::print(stderr, "asperity: stopped. {} of {} combinations are kept in {}; the same command goes on.\n",
             file.finished(ignored).size(), head.grid.size(), path.string());
  return ExitStatus::interrupted;
}

struct Prepared {
  StudyHead head;
  StudyPart part;
};

/// Everything that can be wrong is looked for before the long part.
std::optional<Prepared> prepare_study(const StudyCommand &command, Problems &problems) {
  if (command.job_file.empty()) {
    problems.error("asperity study", 0, 0, "no job file is given",
                   "Write asperity study JOB.toml --vary KEY=LIST, or study show, best or merge.");
    return std::nullopt;
  }
  const auto grid = read_grid(command.vary, problems);
  const auto part = command.part.empty() ? std::optional(StudyPart{}) : read_part(command.part, problems);
  if (!grid || !part)
    return std::nullopt;
  auto head = read_head(command.job_file, *grid, asks_for_roughness(command), ASPERITY_VERSION, problems);
  if (!head)
    return std::nullopt;
  if (!can_any_be_read(*head, problems)) {
    problems.error(
        "asperity study", 0, 0,
        fmt::format("none of the {} combinations can be predicted; the problems above are those of "
                    "the first",
                    head->grid.size()),
        "Correct the job, or the keys and values that are varied.");
    return std::nullopt;
  }
  return Prepared{std::move(*head), *part};
}

ExitStatus run(const StudyCommand &command) {
  Progress progress;
  const Interrupt interrupt(progress);
  Problems problems;
  const std::optional<Prepared> ready = prepare_study(command, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!ready)
    return ExitStatus::wrong_input;
  if (const std::string fault = fault_of_outputs(command.outputs); !fault.empty())
    return fail(fault);

  const fs::path path = results_file(command, ready->part);
  std::string fault;
  InputWatch watch(ready->head);
  const auto file = StudyFile::open(path, StudyFile::Purpose::to_write, fault);
  if (!file)
    return fail(fault);
  if (fault = file->begin(ready->head); !fault.empty())
    return fail(fault);
  const std::set<std::size_t> finished = file->finished(fault);
  if (fault.empty())
    fault = run_and_keep(command, ready->head, watch, left_to_do(ready->head, ready->part, finished), *file,
                         progress);
  if (progress.cancelled() && fault.empty())
    return stopped_study(*file, ready->head, path);
  if (!fault.empty())
    return fail(fault);
  StudyResults results = file->read(fault);
  if (!fault.empty())
    return fail(fault);
  const std::optional<StudyView> view = asked_view(std::move(results), command.ask);
  if (!view)
    return fail(fmt::format("all results are kept in {}: asperity study show {} shows them.", path.string(),
                            path.string()));
  const ExitStatus status = show_study(*view, command.outputs, command.quiet);
  if (!command.quiet)
    print(fmt::format("\nKept in {}\n", path.string()));
  // A part cannot know the best plan of the whole.
  return ready->part.count > 1 && status == ExitStatus::missed ? ExitStatus::all_well : status;
}

std::optional<StudyResults> read_results(const fs::path &path) {
  std::string fault;
  const auto file = StudyFile::open(path, StudyFile::Purpose::to_read, fault);
  std::optional<StudyResults> results;
  if (file)
    results = file->read(fault);
  if (fault.empty())
    return results;
  fail(fault);
  return std::nullopt;
}

ExitStatus show(const StudyCommand &command) {
  if (const std::string fault = fault_of_outputs(command.outputs); !fault.empty())
    return fail(fault);
  std::optional<StudyResults> results = read_results(command.results);
  const auto view = results ? asked_view(std::move(*results), command.ask) : std::nullopt;
  return view ? show_study(*view, command.outputs, false) : ExitStatus::wrong_input;
}

/// A study's job may have been changed since; then the new job is the one that was predicted all the same.
void warn_of_changes(const StudyHead &head) {
  Problems ignored;
  const auto now =
      read_head(head.job_file, head.grid, head.identity.roughness, head.identity.version, ignored);
  const auto changed =
      now ? differences(head.identity, now->identity) : std::vector<std::string>{"the job file"};
  if (!changed.empty())
    fmt::print(stderr,
               "asperity: warning: changed or gone since the study: {}. The new job has the values that were "
               "predicted, but may no longer give the same.\n",
               fmt::join(changed, ", "));
}

ExitStatus write_job(const StudyView &view, std::size_t trial, const fs::path &path) {
  const StudyHead &head = view.results.head;
  std::error_code ignored;
  if (fs::exists(path, ignored))
    return fail(fmt::format("{} is there already: give --write-job a new name.", path.string()));
  Problems problems;
  const auto text = job_text_of(head, view.results.trials[trial].combination, path, problems);
  std::fputs(text_of(problems).c_str(), stderr);
  if (!text)
    return ExitStatus::wrong_input;
  warn_of_changes(head);
  if (const std::string fault = write_file(path, *text); !fault.empty())
    return fail(fault + ".");
  return print(fmt::format("\nWritten\n  {}\n", path.string()))
             ? ExitStatus::all_well
             : fail("the name of the job could not be written to standard output.");
}

ExitStatus best(const StudyCommand &command) {
  std::optional<StudyResults> results = read_results(command.results);
  const auto view = results ? asked_view(std::move(*results), command.ask) : std::nullopt;
  if (!view)
    return ExitStatus::wrong_input;
  if (!print(best_text(*view, style_of_output())))
    return fail("the best plan could not be written to standard output.");
  const auto taken = command.takes_nearest ? shown_plan(view->best) : view->best.best;
  if (!command.new_job.empty() && taken)
    if (const ExitStatus status = write_job(*view, *taken, command.new_job); status != ExitStatus::all_well)
      return status;
  if (!command.new_job.empty() && !taken)
    fmt::print(
        stderr,
        "asperity: no job was written, because none meets everything; --nearest writes the nearest.\n");
  return view->best.best ? ExitStatus::all_well : ExitStatus::missed;
}

ExitStatus merge(const StudyCommand &command) {
  Merged merged;
  if (const std::string fault = merge_parts(command.merged, command.parts, merged); !fault.empty())
    return fail(fault);
  const std::string repeated =
      merged.repeated > 0 ? fmt::format("; {} stood in several parts with the same result", merged.repeated)
                          : "";
  const std::string missing = merged.missing > 0 ? fmt::format("; {} are in no part", merged.missing) : "";
  return print(fmt::format("{}: {} combinations{}{}.\n", command.merged.string(), merged.combinations,
                           repeated, missing))
             ? ExitStatus::all_well
             : fail("the count could not be written to standard output.");
}

} // namespace

ExitStatus command_study(const StudyCommand &command) {
  switch (command.action) {
  case StudyAction::show:
    return show(command);
  case StudyAction::best:
    return best(command);
  case StudyAction::merge:
    return merge(command);
  case StudyAction::run:
    break;
  }
  return run(command);
}

} // namespace asperity
