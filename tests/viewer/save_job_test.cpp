// Saving tried values as a new job: read back by the job reader, comments kept, nothing replaced unasked.
#include "save_job.h"
#include "small_outcome.h"

using namespace asperity;
using namespace asperity::test_support;

class SaveJobFile : public Bench {};

TEST_F(SaveJobFile, ASavedJobReadsAsTheJobWithItsValues) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  seat.changes = {
      {"cutter.1.runout_mm", "0.035"}, {"effects.blending", "false"}, {"blank.diameter_mm", "21.5"}};
  const SaveEnded saved = save_job(seat, {0, "tried", false});
  ASSERT_TRUE(saved.is_saved) << saved.message;
  Problems problems;
  const std::optional<Job> job = read_job(folder() / "tried.toml", problems);
  ASSERT_TRUE(job) << (problems.all().empty() ? "" : text_of(problems.all().front()));
  EXPECT_EQ(job->cutters[0].runout_mm, 0.035);
  EXPECT_FALSE(job->effects.blending);
  EXPECT_EQ(job->blank.diameter_mm, 21.5);
  EXPECT_EQ(job->program, folder() / "bush.ngc");
  EXPECT_NE(read("tried.toml").find("# tip to holder"), std::string::npos) << "comments stay";
}

TEST_F(SaveJobFile, SavingNeverReplacesAFileUnasked) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  seat.changes = {{"cutter.1.runout_mm", "0.035"}};
  const std::string before = read("bush.toml");
  const SaveEnded refused = save_job(seat, {0, "bush.toml", false});
  EXPECT_FALSE(refused.is_saved);
  EXPECT_TRUE(refused.would_replace);
  EXPECT_EQ(read("bush.toml"), before);
  EXPECT_TRUE(save_job(seat, {0, "bush.toml", true}).is_saved);
  EXPECT_NE(read("bush.toml"), before);
}

TEST_F(SaveJobFile, ANameWithFoldersIsRefused) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  for (const char *name : {"", "..", "../other.toml", "/tmp/other.toml", "a/b.toml"})
    EXPECT_FALSE(save_job(seat, {0, name, true}).is_saved) << name;
}
