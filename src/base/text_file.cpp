// Whole files in and out; a write shows under its final name only when it is complete.
#include "asperity/base/text_file.h"

#include <fmt/format.h>

#include <array>
#include <atomic>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/stat.h>
#include <system_error>
#include <thread>
#include <unistd.h>
#include <utility>

namespace asperity {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kSlots = 16;
constexpr std::size_t kLongestPath = 4096; // PATH_MAX on Linux, with the closing zero

/// Name of one temporary being written. A plain array: a signal handler may read it at any moment.
struct UnfinishedFile {
  enum State : int { kFree, kClaimed, kLive };
  std::atomic<int> state{kFree};
  std::array<char, kLongestPath> path{};
};
static_assert(std::atomic<int>::is_always_lock_free, "a signal handler reads it");

// The one piece of state with program lifetime: signal handlers can be handed nothing.
constinit std::array<UnfinishedFile, kSlots> unfinished_files{};

/// Keeps a temporary's name in a slot while it lives.
class Registration {
public:
  explicit Registration(const std::string &path) : slot_(free_slot()) {
    std::memcpy(slot_.path.data(), path.c_str(), path.size() + 1);
    slot_.state.store(UnfinishedFile::kLive, std::memory_order_release);
  }
  ~Registration() { slot_.state.store(UnfinishedFile::kFree, std::memory_order_release); }
  Registration(const Registration &) = delete;
  Registration &operator=(const Registration &) = delete;

private:
  static UnfinishedFile &free_slot() {
    for (;;) {
      for (UnfinishedFile &slot : unfinished_files) {
        int expected = UnfinishedFile::kFree;
        if (slot.state.compare_exchange_strong(expected, UnfinishedFile::kClaimed))
          return slot;
      }
      std::this_thread::yield();
    }
  }
  UnfinishedFile &slot_;
};

/// Closes a file descriptor at the end of its block.
class Descriptor {
public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ >= 0)
      ::close(number_);
  }
  Descriptor(const Descriptor &) = delete;
  Descriptor &operator=(const Descriptor &) = delete;
  int number() const { return number_; }
  bool is_open() const { return number_ >= 0; }
  /// Closes now, so that a late write error is seen.
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

private:
  int number_;
};

std::string system_text(int error) { return std::error_code(error, std::generic_category()).message(); }

/// Writes all bytes and closes; returns 0 or errno.
int write_all(Descriptor &file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(file.number(), bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR)
      continue;
    if (written < 0)
      return errno;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return file.close() ? 0 : errno;
}

/// A device or pipe cannot be replaced by renaming: written straight.
std::string write_straight(const std::string &path, std::string_view bytes) {
  Descriptor file(::open(path.c_str(), O_WRONLY | O_CLOEXEC));
  const int error = file.is_open() ? write_all(file, bytes) : errno;
  return error == 0 ? std::string() : fmt::format("cannot write {}: {}", path, system_text(error));
}

/// Unique among the writes of all running programs; short, so that any legal target name leaves room for it.
std::string temporary_name() {
  static std::atomic<unsigned> count{0};
  return fmt::format(".asperity-{}-{}.part", ::getpid(), count.fetch_add(1));
}

} // namespace

std::optional<std::string> read_file(const fs::path &path, std::size_t most_bytes, Problems &problems) {
  const std::string name = path.string();
  const Descriptor file(::open(name.c_str(), O_RDONLY | O_CLOEXEC));
  if (!file.is_open()) {
    problems.error(name, 0, 0, "cannot open the file: " + system_text(errno),
                   "Check the name and the right to read it.");
    return std::nullopt;
  }
  struct stat status {};
  if (::fstat(file.number(), &status) == 0 && S_ISDIR(status.st_mode)) {
    problems.error(name, 0, 0, "this is a folder, not a file", "Name a file inside it.");
    return std::nullopt;
  }
  std::string bytes;
  std::array<char, 65536> chunk;
  for (;;) {
    const ssize_t got = ::read(file.number(), chunk.data(), chunk.size());
    if (got < 0 && errno == EINTR)
      continue;
    if (got < 0) {
      problems.error(name, 0, 0, "reading failed: " + system_text(errno),
                     "Check the disk or copy the file anew.");
      return std::nullopt;
    }
    if (got == 0)
      return bytes;
    if (bytes.size() + static_cast<std::size_t>(got) > most_bytes) {
      problems.error(name, 0, 0, fmt::format("the file is larger than {} bytes", most_bytes),
                     "Check that this is the right file, or split it.");
      return std::nullopt;
    }
    bytes.append(chunk.data(), static_cast<std::size_t>(got));
  }
}

std::string write_file(const fs::path &path, std::string_view bytes) {
  std::error_code ignored;
  // A link is followed, so that the file it names is replaced and not the link.
  const fs::path resolved = fs::is_symlink(path, ignored) ? fs::weakly_canonical(path, ignored) : path;
  const fs::path target = resolved.empty() ? path : resolved;
  const fs::file_status status = fs::status(target, ignored);
  if (fs::is_directory(status))
    return fmt::format("cannot write {}: it is a folder", target.string());
  if (fs::exists(status) && !fs::is_regular_file(status))
    return write_straight(target.string(), bytes);

  const std::string temporary = (target.parent_path() / temporary_name()).string();
  if (temporary.size() + 1 > kLongestPath)
    return fmt::format("cannot write {}: the name is too long", target.string());
  const Registration registration(temporary);
  Descriptor file(::open(temporary.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666));
  if (!file.is_open())
    return fmt::format("cannot write {}: {}", target.string(), system_text(errno));
  int error = write_all(file, bytes);
  if (error == 0 && ::rename(temporary.c_str(), target.c_str()) != 0)
    error = errno;
  if (error == 0)
    return {};
  ::unlink(temporary.c_str());
  return fmt::format("cannot write {}: {}", target.string(), system_text(error));
}

void remove_unfinished_files() noexcept {
  for (const UnfinishedFile &file : unfinished_files)
    if (file.state.load(std::memory_order_acquire) == UnfinishedFile::kLive)
      ::unlink(file.path.data());
}

} // namespace asperity
