// Files are read whole or refused, and written whole or not at all.
#include "asperity/base/text_file.h"

#include <gtest/gtest.h>

#include <csignal>

#include <sys/resource.h>
#include <sys/wait.h>
#include <thread>
#include <unistd.h>
#include <vector>

namespace asperity {
namespace {

namespace fs = std::filesystem;

/// A folder of its own for each test, gone afterwards.
class TextFile : public ::testing::Test {
protected:
  void SetUp() override {
    std::string pattern = (fs::temp_directory_path() / "asperity-test-XXXXXX").string();
    ASSERT_NE(::mkdtemp(pattern.data()), nullptr);
    folder_ = pattern;
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::size_t files_in_folder() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }
  fs::path folder_;
};

TEST_F(TextFile, ReadsBackTheBytesWritten) {
  const std::string bytes("line\n\0zero\r\n\xff", 13);
  EXPECT_EQ(write_file(folder_ / "a.txt", bytes), "");
  Problems problems;
  EXPECT_EQ(read_file(folder_ / "a.txt", 100, problems), bytes);
  EXPECT_TRUE(problems.all().empty());
}

TEST_F(TextFile, ReplacesAnOlderFileAndLeavesNothingElseBehind) {
  EXPECT_EQ(write_file(folder_ / "a.txt", "a long older text"), "");
  EXPECT_EQ(write_file(folder_ / "a.txt", "new"), "");
  Problems problems;
  EXPECT_EQ(read_file(folder_ / "a.txt", 100, problems), "new");
  EXPECT_EQ(files_in_folder(), 1u);
}

TEST_F(TextFile, AMissingFileIsOneProblemWithARemedy) {
  Problems problems;
  EXPECT_FALSE(read_file(folder_ / "none.txt", 100, problems));
  ASSERT_EQ(problems.all().size(), 1u);
  EXPECT_NE(problems.all()[0].file.find("none.txt"), std::string::npos);
  EXPECT_FALSE(problems.all()[0].remedy.empty());
}

TEST_F(TextFile, AFolderIsNotAFile) {
  Problems problems;
  EXPECT_FALSE(read_file(folder_, 100, problems));
  ASSERT_EQ(problems.error_count(), 1u);
  EXPECT_NE(problems.all()[0].message.find("folder"), std::string::npos);
  EXPECT_NE(write_file(folder_, "x"), "");
}

TEST_F(TextFile, TheSizeLimitIsInclusive) {
  ASSERT_EQ(write_file(folder_ / "a.txt", "12345"), "");
  Problems problems;
  EXPECT_TRUE(read_file(folder_ / "a.txt", 5, problems));
  EXPECT_FALSE(problems.has_errors());
  EXPECT_FALSE(read_file(folder_ / "a.txt", 4, problems));
  EXPECT_TRUE(problems.has_errors());
}

TEST_F(TextFile, AnEndlessFileIsRefusedAndNotReadForEver) {
  Problems problems;
  EXPECT_FALSE(read_file("/dev/zero", 1000, problems));
  EXPECT_TRUE(problems.has_errors());
}

TEST_F(TextFile, AFailedWriteSaysWhyAndLeavesNothingBehind) {
  const std::string fault = write_file(folder_ / "missing" / "a.txt", "x");
  EXPECT_NE(fault.find("a.txt"), std::string::npos);
  EXPECT_EQ(files_in_folder(), 0u);
}

TEST_F(TextFile, ADeviceIsWrittenToAndNotReplaced) {
  EXPECT_EQ(write_file("/dev/null", "x"), "");
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

TEST_F(TextFile, ALinkKeepsPointingAtTheFileItNames) {
  ASSERT_EQ(write_file(folder_ / "real.txt", "old"), "");
  fs::create_symlink(folder_ / "real.txt", folder_ / "link.txt");
  EXPECT_EQ(write_file(folder_ / "link.txt", "new"), "");
  EXPECT_TRUE(fs::is_symlink(folder_ / "link.txt"));
  Problems problems;
  EXPECT_EQ(read_file(folder_ / "real.txt", 100, problems), "new");
}

TEST_F(TextFile, ANameAsLongAsTheSystemAllowsCanBeWritten) {
  EXPECT_EQ(write_file(folder_ / std::string(255, 'n'), "x"), ""); // NAME_MAX on Linux
}

TEST_F(TextFile, AFileCutOffByASignalIsRemovedByItsHandler) {
  // The child's write is stopped half way by the file size limit's signal; its handler clears up.
  const pid_t child = ::fork();
  ASSERT_GE(child, 0);
  if (child == 0) {
    std::signal(SIGXFSZ, [](int) {
      remove_unfinished_files();
      ::_exit(3);
    });
    const rlimit most{1000, 1000};
    ::setrlimit(RLIMIT_FSIZE, &most);
    (void)write_file(folder_ / "big.txt", std::string(5000, 'x'));
    ::_exit(4);
  }
  int status = 0;
  ASSERT_EQ(::waitpid(child, &status, 0), child);
  ASSERT_TRUE(WIFEXITED(status));
  EXPECT_EQ(WEXITSTATUS(status), 3);
  EXPECT_EQ(files_in_folder(), 0u);
}

TEST_F(TextFile, ManyThreadsMayWriteAtOnce) {
  std::vector<std::thread> writers;
  for (int i = 0; i < 40; ++i)
    writers.emplace_back([this, i] {
      EXPECT_EQ(write_file(folder_ / std::to_string(i), std::string(1000, 'x')), "");
      EXPECT_EQ(write_file(folder_ / "shared", std::string(1000, 'y')), "");
    });
  for (std::thread &writer : writers)
    writer.join();
  EXPECT_EQ(files_in_folder(), 41u);
}

} // namespace
} // namespace asperity
