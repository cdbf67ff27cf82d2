// Lists on the disk: same values, gone when let go, and not the process's own memory.
#include "asperity/base/free_memory.h"
#include "asperity/base/large_array.h"

#include "support/own_memory.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <numeric>
#include <string>

namespace asperity::test {
namespace {

constexpr std::size_t kLong = kOnDiskFrom_bytes / sizeof(float) + 1;

/// TMPDIR set for as long as this lives.
class TemporaryFolder {
public:
  explicit TemporaryFolder(const std::string &name) {
    if (const char *before = std::getenv("TMPDIR"))
      before_ = before;
    ::setenv("TMPDIR", name.c_str(), 1);
  }
  ~TemporaryFolder() {
    if (before_.empty())
      ::unsetenv("TMPDIR");
    else
      ::setenv("TMPDIR", before_.c_str(), 1);
  }

private:
  std::string before_;
};

TEST(LargeArray, KeepsItsValuesWhenItGrowsFromMemoryOntoTheDisk) {
  LargeArray<std::uint32_t> list(kLong - 2);
  std::iota(list.begin(), list.end(), 0u);
  for (int i = 0; i < 4; ++i)
    list.push_back(7);
  for (std::size_t i = 0; i < kLong - 2; i += 99'991)
    ASSERT_EQ(list[i], i);
  EXPECT_EQ(list.back(), 7u);
  const LargeArray<std::uint32_t> copy = list;
  EXPECT_EQ(copy, list);
}

TEST(LargeArray, OnADiskIsNotTheProcessesOwnMemory) {
  if (disk_room_bytes() < 4.0 * static_cast<double>(kOnDiskFrom_bytes))
    GTEST_SKIP() << "no disk to put it on";
  const double before = own_bytes("RssAnon:");
  const LargeArray<float> list(kLong, 1.0f);
  EXPECT_LT(own_bytes("RssAnon:") - before, 0.1 * static_cast<double>(kOnDiskFrom_bytes));
  EXPECT_GT(own_bytes("RssFile:"), 0.9 * static_cast<double>(kOnDiskFrom_bytes));
}

TEST(LargeArray, LeavesNoFileBehind) {
  const std::filesystem::path folder = std::filesystem::path(::testing::TempDir()) / "asperity-lists";
  std::filesystem::create_directories(folder);
  const TemporaryFolder set(folder.string());
  {
    const LargeArray<float> list(kLong, 1.0f);
    EXPECT_TRUE(std::filesystem::is_empty(folder)) << "it has no name even while it is used";
  }
  EXPECT_TRUE(std::filesystem::is_empty(folder));
  std::filesystem::remove_all(folder);
}

TEST(LargeArray, LiesInMemoryWhereThereIsNoFolder) {
  const TemporaryFolder set("/no such folder");
  EXPECT_EQ(disk_room_bytes(), 0.0);
  const LargeArray<float> list(kLong, 2.0f);
  EXPECT_EQ(list.back(), 2.0f);
}

TEST(LargeArray, DoesNotTakeMemoryForADisk) {
  if (!std::filesystem::is_directory("/dev/shm"))
    GTEST_SKIP() << "no folder that is known to lie in memory";
  const TemporaryFolder set("/dev/shm");
  EXPECT_EQ(disk_room_bytes(), 0.0);
}

TEST(FreeMemory, IsSome) { EXPECT_GT(free_memory_bytes(), 0.0); }

} // namespace
} // namespace asperity::test
