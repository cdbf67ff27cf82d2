// Ctrl-C, handled without doing anything a signal handler may not do.
#include "interrupt.h"

#include "asperity/base/text_file.h"
#include "exit_status.h"

#include <atomic>
#include <csignal>
#include <unistd.h>

namespace asperity {

namespace {

// A signal handler can be handed nothing, so what it stops must be found here.
constinit std::atomic<Progress *> running{nullptr};
static_assert(std::atomic<Progress *>::is_always_lock_free && std::atomic<bool>::is_always_lock_free);

void on_signal(int) {
  Progress *progress = running.load();
  if (progress && !progress->cancelled()) {
    progress->cancel();
    return;
  }
  remove_unfinished_files();
  _exit(static_cast<int>(ExitStatus::interrupted));
}

void handle(void (*handler)(int)) {
  struct sigaction action {};
  action.sa_handler = handler;
  action.sa_flags = SA_RESTART;
  sigemptyset(&action.sa_mask);
  sigaction(SIGINT, &action, nullptr);
  sigaction(SIGTERM, &action, nullptr);
}

} // namespace

Interrupt::Interrupt(Progress &progress) {
  running.store(&progress);
  handle(on_signal);
}

Interrupt::~Interrupt() {
  handle(SIG_DFL);
  running.store(nullptr);
}

} // namespace asperity
