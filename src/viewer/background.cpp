// Reading and predicting a job beside the window.
#include "background.h"

#include "asperity/base/text_file.h"
#include "asperity/passes/job_program.h"
#include "asperity/tolerance/coarser_job.h"
#include "what_if.h"

#include <algorithm>
#include <new>
#include <utility>

namespace asperity {

namespace {

constexpr std::size_t kMostText_bytes = std::size_t{256} << 20;

std::vector<std::string> lines_of(std::string_view text) {
  std::vector<std::string> lines;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    std::string line(text.substr(from, end - from));
    // Bytes that would not show, or would end a line early in the text pane, become spaces.
    for (char &c : line)
      c = static_cast<unsigned char>(c) < 0x20u || c == 0x7F ? ' ' : c;
    lines.push_back(std::move(line));
    from = end + 1;
  }
  return lines;
}

void fail(RunResult &result, const std::filesystem::path &file, std::string message, std::string remedy) {
  result.outcome.reset();
  result.problems.insert(result.problems.begin(), Problem{Severity::error, file.string(), 0, 0,
                                                          std::move(message), std::move(remedy)});
}

/// The job to predict: as in its file, or with the changes made. What is wrong is in `problems`.
std::optional<Job> read_changed(const std::filesystem::path &file, const Changes &changes, RunResult &result,
                                Problems &problems) {
  if (const auto text = read_file(file, kMostText_bytes, problems))
    result.job_text = *text;
  if (problems.has_errors())
    return std::nullopt;
  result.job = read_job(file, problems);
  if (changes.empty() || problems.has_errors())
    return result.job;
  Problems of_changed;
  std::optional<Job> job = read_job(file, job_changes(changes), of_changed);
  problems = std::move(of_changed);
  return job;
}

/// What can be shown while the whole is not there yet.
class FirstLooks {
public:
  FirstLooks(const RunResult &result, const FirstLook &take) : result_(result), take_(take) {}

  void give_path(const Job &job, const Program &program) const {
    Outcome bare;
    bare.job = job;
    bare.program = without_moves(program);
    bare.program_moves = program.moves.size();
    bare.path = plan_motion(program, job.machine, job.setup, job.effects);
    give(std::make_shared<const Outcome>(std::move(bare)), Grain::path);
  }
  void give_coarse(std::shared_ptr<const Outcome> coarse) {
    shown_ = std::move(coarse);
    give(shown_, Grain::coarse);
  }
  /// The same path and cut: only this chart is finer.
  void give_chart(std::size_t feature, const Chart &chart) {
    if (!shown_ || cell_count(chart) > kMostCells)
      return;
    auto finer = std::make_shared<Outcome>(*shown_);
    finer->charts[feature] = chart;
    give_coarse(std::move(finer));
  }

private:
  void give(std::shared_ptr<const Outcome> outcome, Grain grain) const {
    auto look = std::make_shared<RunResult>(result_);
    look->outcome = std::move(outcome);
    if (grain != Grain::path)
      look->numbers = key_numbers(*look->outcome);
    look->grain = grain;
    take_(std::move(look));
  }

  static constexpr std::size_t kMostCells = 10'000'000; ///< a copy of more would press on the memory

  const RunResult &result_;
  const FirstLook &take_;
  std::shared_ptr<const Outcome> shown_;
};

/// The path, a coarse prediction, then chart by chart what the whole will hold; the whole is returned. What
/// the coarse one has cut need not be cut again.
std::shared_ptr<const Outcome> predict_step_by_step(const RunResult &result, const Job &job,
                                                    const Program &program, int threads,
                                                    const Progress &progress, Repredictor &kept,
                                                    const FirstLook &first_look) {
  FirstLooks looks(result, first_look);
  looks.give_path(job, program);
  if (!progress.cancelled()) {
    auto coarse =
        kept.predict(coarser_job(job, kCoarser), program, {.threads = threads, .roughness = false}, progress);
    if (coarse->status == Status::done)
      looks.give_coarse(std::move(coarse));
  }
  PredictOptions options{.threads = threads};
  options.chart_swept = [&](std::size_t feature, const Chart &chart) { looks.give_chart(feature, chart); };
  return kept.predict(job, program, options, progress);
}

} // namespace

RunResult read_and_predict(const std::filesystem::path &file, const Changes &changes, int threads,
                           const Progress &progress, Repredictor &kept, const FirstLook &first_look) {
  RunResult result;
  result.changes = changes;
  try {
    Problems problems;
    const std::optional<Job> job = read_changed(file, changes, result, problems);
    std::optional<JobProgram> program;
    if (job && !progress.cancelled())
      program = job_program(*job, problems);
    result.problems = problems.all();
    result.problems_left_out = problems.left_out();
    if (problems.has_errors() || !job || !program || progress.cancelled())
      return result;
    result.program_lines = lines_of(program->text);
    result.outcome =
        first_look ? predict_step_by_step(result, *job, program->program, threads, progress, kept, first_look)
                   : kept.predict(*job, program->program, {.threads = threads}, progress);
    result.numbers = key_numbers(*result.outcome);
  } catch (const std::bad_alloc &) {
    fail(result, file, "there is not enough memory for this job.", "Choose a coarser spacing under [chart].");
  } catch (const std::exception &error) {
    fail(result, file, error.what(), "Check that job and program can be read.");
  }
  return result;
}

void BackgroundRun::tell(std::string_view stage, double fraction) {
  {
    const std::lock_guard lock(mutex_);
    if (!news_)
      news_.emplace();
    news_->stage = stage;
    news_->fraction = fraction;
  }
  wake_();
}

void BackgroundRun::hand_out(std::shared_ptr<const RunResult> result, bool is_end) {
  {
    const std::lock_guard lock(mutex_);
    if (!news_)
      news_.emplace();
    news_->result = std::move(result);
    news_->is_end = is_end;
  }
  wake_();
}

void BackgroundRun::start(RunAsk ask) {
  progress_ = std::make_shared<Progress>();
  progress_->report = [this](std::string_view stage, double fraction) { tell(stage, fraction); };
  thread_ = std::jthread([this, progress = progress_, ask = std::move(ask)] {
    FirstLook first_look;
    if (ask.with_first_looks)
      first_look = [this](std::shared_ptr<const RunResult> look) { hand_out(std::move(look), false); };
    hand_out(std::make_shared<const RunResult>(
                 read_and_predict(ask.file, ask.changes, ask.threads, *progress, kept_, first_look)),
             true);
  });
}

void BackgroundRun::stop() {
  if (progress_)
    progress_->cancel();
}

std::optional<BackgroundRun::News> BackgroundRun::news() {
  std::optional<News> news;
  {
    const std::lock_guard lock(mutex_);
    news.swap(news_);
  }
  if (news && news->is_end)
    thread_.join();
  return news;
}

LaidTrace traced(const Outcome &outcome, std::size_t feature, const TraceRequest &request, int threads,
                 const Progress &progress) {
  LaidTrace laid;
  try {
    const TextureSource source{outcome.job, outcome.path, outcome.cut.swept};
    Trace trace = lay_trace(outcome.job.features[feature], outcome.charts[feature], source, request, threads,
                            laid.why, progress);
    if (!trace.profile_mm.empty() && !progress.cancelled())
      laid.trace = std::move(trace);
  } catch (const std::exception &error) {
    laid.why = error.what();
  }
  return laid;
}

} // namespace asperity
