// One piece of work on a thread of its own, which may be told to stop.
#pragma once

#include "asperity/base/progress.h"

#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace asperity {

/// Ending it in the middle is clean: the work is told to stop and waited for.
template <class Result> class BackgroundTask {
public:
  /// `wake` is called from the working thread when the result is there.
  explicit BackgroundTask(std::function<void()> wake) : wake_(std::move(wake)) {}
  ~BackgroundTask() { stop(); }

  /// Only while it is not busy. `work` must not throw.
  void start(std::function<Result(const Progress &)> work) {
    progress_ = std::make_shared<Progress>();
    thread_ = std::jthread([this, progress = progress_, work = std::move(work)] {
      Result result = work(*progress);
      {
        const std::lock_guard lock(mutex_);
        result_ = std::move(result);
      }
      wake_();
    });
  }
  void stop() {
    if (progress_)
      progress_->cancel();
  }
  bool is_busy() const { return thread_.joinable(); }

  /// The result, once; after that it may be started again.
  std::optional<Result> fetch() {
    std::optional<Result> result;
    {
      const std::lock_guard lock(mutex_);
      result.swap(result_);
    }
    if (result)
      thread_.join();
    return result;
  }

private:
  std::function<void()> wake_;
  std::shared_ptr<Progress> progress_;
  std::mutex mutex_;
  std::optional<Result> result_;
  std::jthread thread_;
};

} // namespace asperity
