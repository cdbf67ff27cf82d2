// A pool of threads predicts; the calling thread keeps what they find.
#include "asperity/study/run_study.h"

#include "asperity/passes/job_program.h"
#include "asperity/predict/repredictor.h"
#include "memory_share.h"

#include "asperity/base/free_memory.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <chrono>
#include <deque>
#include <new>
#include <set>
#include <thread>

namespace asperity {

namespace {

using namespace std::chrono_literals;
constexpr double kShareOfFree = 0.7; // the rest is for what the bound does not count, and for others
constexpr auto kLook = 50ms;         // how soon a wish to stop is passed on

/// The first problems in words, without the file's place, so that all machines say the same.
std::string words_of(const Problems &problems) {
  constexpr std::size_t kMost = 3;
  std::string text;
  std::size_t count = 0;
  for (const Problem &problem : problems.all()) {
    if (problem.severity != Severity::error || ++count > kMost)
      continue;
    text += text.empty() ? "" : " | ";
    if (problem.file.starts_with("change "))
      text += problem.file + ": ";
    text += problem.message;
  }
  return count > kMost ? fmt::format("{} | and {} more", text, count - kMost) : text;
}

struct ReadInputs {
  Job job;
  Program program;
};

std::optional<ReadInputs> read_inputs_of(const StudyHead &head, std::size_t combination, Problems &problems) {
  auto job = read_job(head.job_file, head.grid.changes(combination), problems);
  if (!job)
    return std::nullopt;
  auto program = job_program(*job, problems);
  if (!program || problems.has_errors())
    return std::nullopt;
  return ReadInputs{std::move(*job), std::move(program->program)};
}

bool wants_ra(const Job &job) {
  return std::any_of(job.features.begin(), job.features.end(),
                     [](const Feature &feature) { return finish_of(feature).ra_um.has_value(); });
}

/// One thread's predictions, each taking over from the one before what the change leaves alone.
class Predictor {
public:
  explicit Predictor(MemoryShare &share) : share_(share) {}
  ~Predictor() { share_.give_back(taken_bytes_); }
  Predictor(const Predictor &) = delete;
  Predictor &operator=(const Predictor &) = delete;

  /// Waits for memory; nothing when cancelled.
  std::shared_ptr<const Outcome> predict(const ReadInputs &inputs, double bytes,
                                         const PredictOptions &options, const Progress &progress) {
    if (!share_.take_now(bytes)) { // then without the one before
      forget();
      if (!share_.take(bytes, progress))
        return nullptr;
    }
    const double before_bytes = taken_bytes_;
    taken_bytes_ += bytes;
    auto outcome = again_->predict(inputs.job, inputs.program, options, progress);
    const double left_bytes = outcome->status == Status::done ? before_bytes : bytes;
    share_.give_back(left_bytes);
    taken_bytes_ -= left_bytes;
    return outcome;
  }
  /// After this nothing is held on to.
  void forget() {
    again_.emplace();
    share_.give_back(taken_bytes_);
    taken_bytes_ = 0;
  }

private:
  MemoryShare &share_;
  double taken_bytes_ = 0;
  std::optional<Repredictor> again_{std::in_place};
};

Trial wrong_trial(std::size_t combination, TrialStatus status, std::string why) {
  Trial trial;
  trial.combination = combination;
  trial.status = status;
  trial.why = std::move(why);
  return trial;
}

/// All threads of a run, and what passes between them.
class Pool {
public:
  explicit Pool(const StudyRun &run)
      : run_(run), share_(run.memory_bytes > 0.0 ? run.memory_bytes : kShareOfFree * free_memory_bytes()) {
    const int cores = static_cast<int>(std::max(1u, std::thread::hardware_concurrency()));
    threads_ = run.threads > 0 ? run.threads : cores;
    const auto workers = std::min(static_cast<std::size_t>(threads_), run.combinations.size());
    for (std::size_t i = 0; i < workers; ++i)
      workers_.emplace_back([this] { work(); });
  }
  ~Pool() { stop(); }
  Pool(const Pool &) = delete;
  Pool &operator=(const Pool &) = delete;

  /// Ends what is running; what is already done can still be fetched.
  void stop() {
    progress_.cancel();
    for (std::thread &worker : workers_)
      worker.join();
    workers_.clear();
  }
  /// Waits a little for the next trial.
  std::optional<Trial> next(std::chrono::milliseconds wait) {
    std::unique_lock lock(mutex_);
    arrived_.wait_for(lock, wait, [this] { return !done_.empty(); });
    if (done_.empty())
      return std::nullopt;
    Trial trial = std::move(done_.front());
    done_.pop_front();
    return trial;
  }

private:
  void work() {
    Predictor predictor(share_);
    for (std::size_t i = next_++; i < run_.combinations.size() && !progress_.cancelled(); i = next_++) {
      std::optional<Trial> trial = guarded(run_.combinations[i], predictor);
      if (!trial)
        continue;
      const std::lock_guard lock(mutex_);
      done_.push_back(std::move(*trial));
      arrived_.notify_one();
    }
  }

  /// A room that runs out of memory takes its own trial with it, not the study.
  std::optional<Trial> guarded(std::size_t combination, Predictor &predictor) {
    try {
      return one(combination, predictor);
    } catch (const std::bad_alloc &) {
      predictor.forget();
      return wrong_trial(combination, TrialStatus::too_large, "out of memory");
    } catch (const std::exception &fault) {
      predictor.forget();
      return wrong_trial(combination, TrialStatus::wrong, fault.what());
    }
  }

  std::optional<Trial> one(std::size_t combination, Predictor &predictor) {
    Problems problems;
    const std::optional<ReadInputs> inputs = read_inputs_of(run_.head, combination, problems);
    if (!inputs)
      return wrong_trial(combination, TrialStatus::wrong, words_of(problems));
    const auto bytes = static_cast<double>(memory_bound(inputs->job, inputs->program).in_memory_bytes);
    PredictOptions options{.threads = threads_for(bytes),
                           .memory_limit_bytes = static_cast<std::size_t>(share_.total_bytes()),
                           .roughness = run_.head.identity.roughness || wants_ra(inputs->job)};
    if (bytes > share_.total_bytes()) // says so in its own words
      return trial_of(predict(inputs->job, inputs->program, options, progress_), combination);
    const auto outcome = predictor.predict(*inputs, bytes, options, progress_);
    return !outcome || outcome->status == Status::cancelled ? std::nullopt
                                                            : std::optional(trial_of(*outcome, combination));
  }

  /// One, unless fewer predictions run at once than there are threads.
  int threads_for(double bytes) const {
    const double beside = std::max(1.0, std::floor(share_.total_bytes() / std::max(bytes, 1.0)));
    const double at_once = std::min(beside, static_cast<double>(workers_planned()));
    return std::max(1, static_cast<int>(threads_ / at_once));
  }
  std::size_t workers_planned() const {
    return std::min(static_cast<std::size_t>(threads_), run_.combinations.size());
  }

  const StudyRun &run_;
  MemoryShare share_;
  int threads_ = 1;
  Progress progress_; // without a report: several threads use it
  std::atomic<std::size_t> next_{0};
  std::mutex mutex_;
  std::condition_variable arrived_;
  std::deque<Trial> done_;
  std::vector<std::thread> workers_;
};

} // namespace

std::string run_trials(const StudyRun &run, const std::function<std::string(const Trial &)> &keep,
                       const Progress &progress) {
  const std::size_t count = run.combinations.size();
  Pool pool(run);
  for (std::size_t done = 0; done < count && !progress.cancelled();) {
    progress.at(fmt::format("{} of {} combinations", done, count),
                static_cast<double>(done) / static_cast<double>(count));
    const std::optional<Trial> trial = pool.next(kLook);
    if (!trial)
      continue;
    if (std::string fault = keep(*trial); !fault.empty())
      return fault;
    ++done;
  }
  pool.stop();
  while (const std::optional<Trial> trial = pool.next(0ms))
    if (std::string fault = keep(*trial); !fault.empty())
      return fault;
  return {};
}

bool can_any_be_read(const StudyHead &head, Problems &problems) {
  constexpr std::size_t kMostLooks = 400;
  const std::size_t count = head.grid.size();
  const std::size_t looks = std::min(count, kMostLooks);
  // Spread so that every value of every factor has its turn early.
  std::size_t stride = 1;
  for (const Factor &factor : head.grid.factors)
    stride = stride * factor.values.size() + 1;
  std::set<std::size_t> seen;
  for (std::size_t i = 0, at = 0; i < looks; ++i, at = (at + stride) % count) {
    while (!seen.insert(at).second)
      at = (at + 1) % count;
    Problems found;
    if (read_inputs_of(head, at, found))
      return true;
    if (i == 0)
      problems = std::move(found);
  }
  return count > kMostLooks;
}

} // namespace asperity
