// Saving tried values into the job's own text: read back by the job reader and by the TOML library.
#include "job_text.h"
#include "save_job.h"
#include "small_outcome.h"

#include <toml++/toml.h>

using namespace asperity;
using namespace asperity::test_support;

namespace {

std::string edited(const std::string &text, const Changes &changes) {
  std::string fault;
  const std::string result = with_changes(text, *bush_result()->job, changes, fault);
  EXPECT_EQ(fault, "");
  return result;
}

} // namespace

class JobText : public Bench {};

TEST_F(JobText, AChangedValueKeepsItsCommentAndEveryOtherLine) {
  const std::string before = job_text();
  const std::string after = edited(before, {{"cutter.0.stick_out_mm", 35}});
  std::string wanted = before;
  const std::string line = "stick_out_mm = 22   # tip to holder";
  wanted.replace(wanted.find(line), line.size(), "stick_out_mm = 35.0   # tip to holder");
  EXPECT_EQ(after, wanted);
}

TEST_F(JobText, AMissingKeyGoesIntoItsTableAndAMissingTableIsMade) {
  const std::string after = edited(
      job_text(), {{"machine.tram_deg", 0.02}, {"setup.z_zero_error_mm", -0.05}, {"effects.runout", 0}});
  const toml::table read = toml::parse(after);
  EXPECT_EQ(read["machine"]["tram_deg"].value<double>(), 0.02);
  EXPECT_EQ(read["machine"]["stiffness_xy_N_per_um"].value<double>(), 0.5);
  EXPECT_EQ(read["setup"]["z_zero_error_mm"].value<double>(), -0.05);
  EXPECT_EQ(read["effects"]["runout"].value<bool>(), false);
  EXPECT_NE(after.find("# The bush of a bell-crank."), std::string::npos);
}

TEST_F(JobText, AValueInsideAnInlineTableIsSavedAllTheSame) {
  std::string text = job_text();
  const std::string line = "[machine]\nstiffness_xy_N_per_um = 0.5 # read at the nose\n";
  text.replace(text.find(line), line.size(), "");
  text = "machine = { stiffness_xy_N_per_um = 0.5 }\n" + text;
  const toml::table read = toml::parse(edited(text, {{"machine.stiffness_xy_N_per_um", 0.25}}));
  EXPECT_EQ(read["machine"]["stiffness_xy_N_per_um"].value<double>(), 0.25);
  EXPECT_EQ(read["title"].value<std::string>(), "Bell-crank bush");
}

TEST_F(JobText, AKeyNamedInAStringIsNotTakenForIt) {
  std::string text = job_text();
  text.replace(text.find("\"Bell-crank bush\""), 17, "\"\"\"\n[setup]\nz_zero_error_mm = 1\n\"\"\"");
  const toml::table read = toml::parse(edited(text, {{"setup.z_zero_error_mm", 0.3}}));
  EXPECT_EQ(read["setup"]["z_zero_error_mm"].value<double>(), 0.3);
  EXPECT_NE(read["title"].value_or<std::string>("").find("z_zero_error_mm = 1"), std::string::npos);
}

TEST_F(JobText, NumbersReadBackToTheSameBits) {
  for (const double value : {0.1, 1.0 / 3.0, 35.0, -0.05, 1e-7, 123456.789, 1e22})
    EXPECT_EQ(toml::parse("x = " + toml_number(value))["x"].value<double>(), value) << toml_number(value);
}

TEST_F(JobText, ASavedJobReadsAsTheJobWithItsValues) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  seat.changes = {{"cutter.0.runout_mm", 0.035}, {"effects.blending", 0}, {"blank.diameter_mm", 21.5}};
  const SaveEnded saved = save_job(seat, {0, "tried", false});
  ASSERT_TRUE(saved.is_saved) << saved.message;
  Problems problems;
  const std::optional<Job> job = read_job(folder() / "tried.toml", problems);
  ASSERT_TRUE(job) << (problems.all().empty() ? "" : text_of(problems.all().front()));
  EXPECT_EQ(job->cutters[0].runout_mm, 0.035);
  EXPECT_FALSE(job->effects.blending);
  EXPECT_EQ(job->blank.diameter_mm, 21.5);
  EXPECT_EQ(job->program, folder() / "bush.ngc");
}

TEST_F(JobText, SavingNeverReplacesAFileUnasked) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  seat.changes = {{"cutter.0.runout_mm", 0.035}};
  const std::string before = read("bush.toml");
  const SaveEnded refused = save_job(seat, {0, "bush.toml", false});
  EXPECT_FALSE(refused.is_saved);
  EXPECT_TRUE(refused.would_replace);
  EXPECT_EQ(read("bush.toml"), before);
  EXPECT_TRUE(save_job(seat, {0, "bush.toml", true}).is_saved);
  EXPECT_NE(read("bush.toml"), before);
}

TEST_F(JobText, ANameWithFoldersIsRefused) {
  Seat seat;
  seat.file = job_file();
  seat.result = bush_result();
  for (const char *name : {"", "..", "../other.toml", "/tmp/other.toml", "a/b.toml"})
    EXPECT_FALSE(save_job(seat, {0, name, true}).is_saved) << name;
}
