// Reading and predicting a job beside the window: first looks as they come, the whole at the end.
#pragma once

#include "app_state.h"
#include "background_task.h"

#include "asperity/predict/repredictor.h"

namespace asperity {

/// Called from the working thread with what can be shown already.
using FirstLook = std::function<void(std::shared_ptr<const RunResult>)>;

/// Reads the files anew and predicts with the changes made; what `kept` still holds good is not worked out
/// again. Ends early when `progress` is cancelled. With `first_look` the path is handed out as soon as it is
/// timed, then a coarse prediction, then the same with one fine chart after another.
RunResult read_and_predict(const std::filesystem::path &file, const Changes &changes, int threads,
                           const Progress &progress, Repredictor &kept, const FirstLook &first_look = {});

/// How many times coarser the first look's charts are.
inline constexpr double kCoarser = 4.0;

struct RunAsk {
  std::filesystem::path file;
  Changes changes;
  int threads = 0;
  bool with_first_looks = false;
};

/// Reading and predicting one job. Ending it in the middle is clean: the work is told to stop and waited for.
class BackgroundRun {
public:
  /// `wake` is called from the working thread whenever there is something to fetch.
  explicit BackgroundRun(std::function<void()> wake) : wake_(std::move(wake)) {}
  ~BackgroundRun() { stop(); }

  void start(RunAsk ask);
  void stop();
  bool is_busy() const { return thread_.joinable(); }

  struct News {
    std::string stage;
    double fraction = 0;
    std::shared_ptr<const RunResult> result; ///< a first look, or the whole
    bool is_end = false;
  };
  /// What is new since the last call, if anything.
  std::optional<News> news();

private:
  void tell(std::string_view stage, double fraction);
  void hand_out(std::shared_ptr<const RunResult> result, bool is_end);

  std::function<void()> wake_;
  std::shared_ptr<Progress> progress_;
  std::mutex mutex_;
  std::optional<News> news_;
  Repredictor kept_; ///< touched by the working thread only
  std::jthread thread_;
};

struct LaidTrace {
  std::optional<Trace> trace;
  std::string why; ///< empty and no trace: it was stopped
};
LaidTrace traced(const Outcome &outcome, std::size_t feature, const TraceRequest &request, int threads,
                 const Progress &progress);

} // namespace asperity
