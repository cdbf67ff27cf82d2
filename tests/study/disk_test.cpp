// A disk that is full or may not be written, and a damaged file: clear words, nothing lost.
#include "study/study_workshop.h"

#include <csignal>
#include <fcntl.h>
#include <filesystem>
#include <fstream>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace asperity::test_support {

namespace {

namespace fs = std::filesystem;
using StudyDisk = StudyWorkshop;

/// Runs the test's own next program under a limit that stands for a full disk: no file may grow beyond it.
class FileLimit {
public:
  explicit FileLimit(rlim_t most_bytes) {
    ::getrlimit(RLIMIT_FSIZE, &before_);
    handler_ = std::signal(SIGXFSZ, SIG_IGN); // a write then fails with EFBIG instead
    rlimit now = before_;
    now.rlim_cur = most_bytes;
    ::setrlimit(RLIMIT_FSIZE, &now);
  }
  ~FileLimit() {
    ::setrlimit(RLIMIT_FSIZE, &before_);
    std::signal(SIGXFSZ, handler_);
  }
  FileLimit(const FileLimit &) = delete;
  FileLimit &operator=(const FileLimit &) = delete;

private:
  rlimit before_{};
  void (*handler_)(int) = nullptr;
};

} // namespace

TEST_F(StudyDisk, AFullDiskIsSaidAndWhatWasKeptGoesOn) {
  ASSERT_LE(run(study({"--results", "whole.db", "--csv", "whole.csv"})).status, 1);
  const auto size = fs::file_size(folder() / "whole.db");
  Ran ran;
  {
    const FileLimit limit(static_cast<rlim_t>(size) - 8192); // room for the tables and some trials
    ran = run(study());
  }
  EXPECT_EQ(ran.status, 2) << ran.out;
  EXPECT_TRUE(holds(ran.err, "the disk is full")) << ran.err;
  EXPECT_TRUE(holds(ran.err, "start the same command again")) << ran.err;
  const Ran after = run(study({"--csv", "after.csv"}));
  EXPECT_LE(after.status, 1) << after.err;
  EXPECT_EQ(read("after.csv"), read("whole.csv"));
}

TEST_F(StudyDisk, AFileThatMayNotBeWrittenIsSaid) {
  ASSERT_LE(run(study()).status, 1);
  fs::permissions(folder(), fs::perms::all);
  fs::permissions(folder() / "s.db", fs::perms::owner_read | fs::perms::group_read | fs::perms::others_read);
  // Root may write anything, so it becomes nobody for this.
  const pid_t child = ::fork();
  if (child == 0) {
    constexpr uid_t kNobody = 65534;
    if (::geteuid() == 0 && (::setgid(kNobody) != 0 || ::setuid(kNobody) != 0))
      ::_exit(99);
    const int out = ::open((folder() / "said.txt").c_str(), O_CREAT | O_WRONLY | O_TRUNC, 0666);
    if (out < 0 || ::dup2(out, 2) < 0 || ::chdir(folder().c_str()) != 0)
      ::_exit(98);
    ::execl(ASPERITY_PROGRAM, "asperity", "study", "bush.toml", "--vary", "program=bush.ngc,slow.ngc",
            "--results", "s.db", static_cast<char *>(nullptr));
    ::_exit(97);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  if (WEXITSTATUS(status) >= 97)
    GTEST_SKIP() << "the program cannot be run as another user here";
  EXPECT_EQ(WEXITSTATUS(status), 2);
  EXPECT_TRUE(holds(read("said.txt"), "s.db may not be written")) << read("said.txt");
}

TEST_F(StudyDisk, ADamagedFileIsSaidAndNotTouched) {
  ASSERT_LE(run(study()).status, 1);
  const std::string sound = read("s.db");
  write("s.db", sound.substr(0, sound.size() / 2));
  const std::string before = read("s.db");
  const Ran ran = run(study());
  EXPECT_EQ(ran.status, 2);
  EXPECT_TRUE(holds(ran.err, "damaged")) << ran.err;
  EXPECT_EQ(read("s.db"), before);
}

} // namespace asperity::test_support
