// Files without a name, mapped into memory.
#include "asperity/base/large_array.h"

#include <cstdlib>
#include <new>
#include <string>

#include <fcntl.h>
#include <linux/magic.h>
#include <sys/mman.h>
#include <sys/statfs.h>
#include <unistd.h>

namespace asperity {

namespace {

/// /tmp is often kept in memory, /var/tmp seldom.
std::string folder() {
  const char *name = std::getenv("TMPDIR");
  return name != nullptr && *name != '\0' ? name : "/var/tmp";
}

/// A file that is gone once it is closed, or -1.
int unnamed_file() {
  std::string name = folder() + "/asperity-XXXXXX";
  const int file = ::mkostemp(name.data(), O_CLOEXEC);
  if (file >= 0)
    ::unlink(name.c_str());
  return file;
}

bool is_in_memory(const struct statfs &system) {
  return system.f_type == TMPFS_MAGIC || system.f_type == RAMFS_MAGIC;
}

void *mapped_file(std::size_t bytes) {
  const int file = unnamed_file();
  if (file < 0)
    return MAP_FAILED;
  struct statfs system {};
  // Room is taken now: a write into a mapping that finds the disk full ends the program.
  const bool has_room = ::fstatfs(file, &system) == 0 && !is_in_memory(system) &&
                        ::posix_fallocate(file, 0, static_cast<off_t>(bytes)) == 0;
  void *place = has_room ? ::mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_SHARED, file, 0) : MAP_FAILED;
  ::close(file);
  return place;
}

void *mapped(std::size_t bytes) {
  void *place = mapped_file(bytes);
  if (place == MAP_FAILED)
    place = ::mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
  if (place == MAP_FAILED)
    throw std::bad_alloc();
  return place;
}

} // namespace

double disk_room_bytes() {
  struct statfs system {};
  const std::string name = folder();
  if (::statfs(name.c_str(), &system) != 0 || is_in_memory(system) || ::access(name.c_str(), W_OK) != 0)
    return 0.0;
  return static_cast<double>(system.f_bavail) * static_cast<double>(system.f_bsize);
}

void *take_bytes(std::size_t bytes) {
  return bytes > kOnDiskFrom_bytes ? mapped(bytes) : ::operator new(bytes);
}

void give_bytes_back(void *place, std::size_t bytes) noexcept {
  if (bytes > kOnDiskFrom_bytes)
    ::munmap(place, bytes);
  else
    ::operator delete(place);
}

} // namespace asperity
