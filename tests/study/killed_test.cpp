// The program killed at random moments: nothing is lost, nothing done twice, the table comes out the same.
#include "study/study_workshop.h"

#include <sqlite3.h>

#include <chrono>
#include <csignal>
#include <fstream>
#include <random>

namespace asperity::test_support {

namespace {

using KilledStudy = StudyWorkshop;

/// Combinations in the file now; 0 also while it is still empty. Opening it rolls back what was cut off.
std::size_t kept_in(const std::filesystem::path &file) {
  sqlite3 *database = nullptr;
  std::size_t count = 0;
  if (::sqlite3_open_v2(file.c_str(), &database, SQLITE_OPEN_READWRITE, nullptr) == SQLITE_OK) {
    sqlite3_stmt *query = nullptr;
    if (::sqlite3_prepare_v2(database, "SELECT count(*) FROM trial", -1, &query, nullptr) == SQLITE_OK &&
        ::sqlite3_step(query) == SQLITE_ROW)
      count = static_cast<std::size_t>(::sqlite3_column_int64(query, 0));
    ::sqlite3_finalize(query);
  }
  ::sqlite3_close(database);
  return count;
}

} // namespace

TEST_F(KilledStudy, FiftyTimesAtRandomMomentsGivesTheSameTable) {
  const Ran whole = run(study({"--results", "whole.db", "--csv", "whole.csv"}));
  ASSERT_LE(whole.status, 1) << whole.err;
  const auto whole_s = [&] {
    const auto begin = std::chrono::steady_clock::now();
    run(study({"--results", "timed.db"}));
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
  }();

  std::mt19937 random(1755);
  std::uniform_real_distribution<double> moment(0.0, 0.5 * whole_s);
  std::size_t killed = 0, kept = 0, studies = 0;
  // A study that ends before it is killed is done again in a new file until fifty have been killed.
  while (killed < 50) {
    const int status = run_and_kill(study(), moment(random));
    const std::size_t now = kept_in(folder() / "s.db");
    ASSERT_GE(now, kept) << "nothing kept may be lost";
    kept = now;
    if (status == -SIGKILL) {
      ++killed;
      continue;
    }
    ASSERT_LE(status, 1) << "after " << killed << " kills";
    const Ran shown = run({"study", "show", "s.db", "--csv", "killed.csv"});
    ASSERT_LE(shown.status, 1) << shown.err;
    ASSERT_EQ(read("killed.csv"), read("whole.csv"));
    std::filesystem::remove(folder() / "s.db");
    kept = 0;
    ASSERT_LT(++studies, 100u);
  }
  const Ran last = run(study({"--csv", "killed.csv"}));
  ASSERT_LE(last.status, 1) << last.err;
  EXPECT_EQ(read("killed.csv"), read("whole.csv"));
  EXPECT_EQ(kept_in(folder() / "s.db"), kCombinations);
  for (const std::string &name : files())
    EXPECT_FALSE(name.ends_with("-journal") || name.ends_with(".part")) << name;
}

TEST_F(KilledStudy, AJournalLeftAfterTheLastCombinationIsTidiedAway) {
  ASSERT_LE(run(study({"--results", "whole.db"})).status, 1);
  // Killed between the last commit and its end, the program leaves a journal with an empty head.
  std::ofstream(folder() / "whole.db-journal", std::ios::binary) << std::string(512, '\0');
  ASSERT_LE(run(study({"--results", "whole.db"})).status, 1);
  EXPECT_FALSE(std::filesystem::exists(folder() / "whole.db-journal"));
}

TEST_F(KilledStudy, CtrlCKeepsWhatIsDoneAndSaysHowToGoOn) {
  const Ran whole = run(study({"--results", "whole.db", "--csv", "whole.csv"}));
  ASSERT_LE(whole.status, 1) << whole.err;
  Ran stopped = run(study({"--threads", "1"}), 0.15);
  EXPECT_TRUE(stopped.status == 130 || stopped.status <= 1) << stopped.status;
  if (stopped.status == 130) {
    EXPECT_TRUE(holds(stopped.err, "are kept in s.db; the same command goes on")) << stopped.err;
  }
  EXPECT_LE(run(study({"--csv", "stopped.csv"})).status, 1);
  EXPECT_EQ(read("stopped.csv"), read("whole.csv"));
}

} // namespace asperity::test_support
