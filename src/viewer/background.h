// Long work beside the window: reading and predicting a job, laying a trace. One thread each.
#pragma once

#include "app_state.h"

#include <functional>
#include <memory>
#include <mutex>
#include <thread>

namespace asperity {

/// Reads the files anew and predicts with the changes applied. Ends early when `progress` is cancelled.
RunResult read_and_predict(const std::filesystem::path &file, const Changes &changes, int threads,
                           const Progress &progress);

/// Reading and predicting one job. Ending it in the middle is clean: the work is told to stop and waited for.
class BackgroundRun {
public:
  /// `wake` is called from the working thread whenever there is something to fetch.
  explicit BackgroundRun(std::function<void()> wake) : wake_(std::move(wake)) {}
  ~BackgroundRun();

  void start(std::filesystem::path file, Changes changes, int threads);
  void stop();
  bool is_busy() const { return thread_.joinable(); }

  struct News {
    std::string stage;
    double fraction = 0;
    std::shared_ptr<const RunResult> result; ///< set once, at the end
  };
  /// What is new since the last call, if anything.
  std::optional<News> news();

private:
  std::function<void()> wake_;
  std::shared_ptr<Progress> progress_;
  std::mutex mutex_;
  std::optional<News> news_;
  std::jthread thread_;
};

/// Laying one trace; a newer one waits until it has ended.
class BackgroundTrace {
public:
  struct Laid {
    std::optional<Trace> trace;
    std::string why;
  };
  explicit BackgroundTrace(std::function<void()> wake) : wake_(std::move(wake)) {}

  void start(std::shared_ptr<const Outcome> outcome, std::size_t feature, TraceRequest request, int threads);
  bool is_busy() const { return thread_.joinable(); }
  std::optional<Laid> news();

private:
  std::function<void()> wake_;
  std::mutex mutex_;
  std::optional<Laid> laid_;
  std::jthread thread_;
};

} // namespace asperity
