// Long work beside the window.
#include "background.h"

#include "asperity/base/text_file.h"
#include "asperity/passes/job_program.h"
#include "what_if.h"

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

void keep(RunResult &result, const Problems &problems) {
  result.problems = problems.all();
  result.problems_left_out = problems.left_out();
}

void fail(RunResult &result, const std::filesystem::path &file, std::string message, std::string remedy) {
  result.outcome.reset();
  result.problems.insert(result.problems.begin(), Problem{Severity::error, file.string(), 0, 0,
                                                          std::move(message), std::move(remedy)});
}

} // namespace

RunResult read_and_predict(const std::filesystem::path &file, const Changes &changes, int threads,
                           const Progress &progress) {
  RunResult result;
  result.changes = changes;
  try {
    Problems problems;
    if (const auto text = read_file(file, kMostText_bytes, problems))
      result.job_text = *text;
    if (!problems.has_errors())
      result.job = read_job(file, problems);
    Program program;
    if (result.job && !progress.cancelled()) {
      if (auto read = job_program(*result.job, problems)) {
        program = std::move(read->program);
        result.program_lines = lines_of(read->text);
      }
    }
    keep(result, problems);
    if (problems.has_errors() || !result.job || progress.cancelled())
      return result;
    result.outcome = std::make_shared<const Outcome>(
        predict(changed(*result.job, changes), program, {.threads = threads}, progress));
  } catch (const std::bad_alloc &) {
    fail(result, file, "there is not enough memory for this job.", "Choose a coarser spacing under [chart].");
  } catch (const std::exception &error) {
    fail(result, file, error.what(), "Check that job and program can be read.");
  }
  return result;
}

BackgroundRun::~BackgroundRun() { stop(); }

void BackgroundRun::start(std::filesystem::path file, Changes changes, int threads) {
  progress_ = std::make_shared<Progress>();
  progress_->report = [this](std::string_view stage, double fraction) {
    {
      const std::lock_guard lock(mutex_);
      news_ = News{std::string(stage), fraction, nullptr};
    }
    wake_();
  };
  thread_ = std::jthread(
      [this, progress = progress_, file = std::move(file), changes = std::move(changes), threads] {
        auto result = std::make_shared<const RunResult>(read_and_predict(file, changes, threads, *progress));
        {
          const std::lock_guard lock(mutex_);
          news_ = News{"done", 1.0, std::move(result)};
        }
        wake_();
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
  if (news && news->result)
    thread_.join();
  return news;
}

void BackgroundTrace::start(std::shared_ptr<const Outcome> outcome, std::size_t feature, TraceRequest request,
                            int threads) {
  thread_ =
      std::jthread([this, outcome = std::move(outcome), feature, request = std::move(request), threads] {
        Laid laid;
        try {
          const TextureSource source{outcome->job, outcome->path, outcome->cut.swept};
          Trace trace = lay_trace(outcome->job.features[feature], outcome->charts[feature], source, request,
                                  threads, laid.why);
          if (!trace.profile_mm.empty())
            laid.trace = std::move(trace);
        } catch (const std::exception &error) {
          laid.why = error.what();
        }
        {
          const std::lock_guard lock(mutex_);
          laid_ = std::move(laid);
        }
        wake_();
      });
}

std::optional<BackgroundTrace::Laid> BackgroundTrace::news() {
  std::optional<Laid> laid;
  {
    const std::lock_guard lock(mutex_);
    laid.swap(laid_);
  }
  if (laid)
    thread_.join();
  return laid;
}

} // namespace asperity
