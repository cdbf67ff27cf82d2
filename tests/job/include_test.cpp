// Values kept in files of their own: what is taken in, what wins, and which file a problem names.
#include "job_text.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace asperity {
namespace {

constexpr std::string_view kMeasured = "[material]\n"
                                       "ktc_N_per_mm2 = 150.0\n"
                                       "calibrated = true\n"
                                       "[machine]\n"
                                       "stiffness_z_N_per_um = 1.7\n"
                                       "[[cutter]]\n"
                                       "number = 1\n"
                                       "runout_mm = 0.034\n"
                                       "[uncertainty]\n"
                                       "runout_share = 0.12\n";

struct Read {
  std::optional<Job> job;
  Problems problems;
};

Read with_included(std::string_view included, std::string_view job = kSmallJob,
                   std::string_view line = "include = \"measured.toml\"\n") {
  const TestFolder folder;
  folder.write("sheave.ngc", "M2\n");
  folder.write("measured.toml", included);
  Read read;
  read.job = read_job(folder.write("sheave.toml", std::string(line) + std::string(job)), read.problems);
  return read;
}

Problem first_of(const Read &read) {
  return read.problems.all().empty() ? Problem{} : read.problems.all().front();
}

TEST(Included, GivesWhatTheJobLacks) {
  const Read read = with_included(kMeasured);
  ASSERT_TRUE(read.job);
  EXPECT_TRUE(read.problems.all().empty());
  EXPECT_EQ(read.job->material.ktc_N_per_mm2, 150.0);
  EXPECT_TRUE(read.job->material.calibrated);
  EXPECT_EQ(read.job->machine.stiffness_z_N_per_um, 1.7);
  EXPECT_EQ(read.job->machine.stiffness_xy_N_per_um, 0.4) << "of the job itself";
  ASSERT_EQ(read.job->cutters.size(), 1u);
  EXPECT_EQ(read.job->cutters[0].runout_mm, 0.034);
  EXPECT_EQ(read.job->uncertainty.runout_share, 0.12);
  ASSERT_EQ(read.job->included.size(), 1u);
}

TEST(Included, IsNamedAsTheSource) {
  const Read read = with_included(kMeasured);
  ASSERT_TRUE(read.job);
  EXPECT_EQ(read.job->material.source.find("ktc_N_per_mm2")->second, "measured.toml");
  EXPECT_EQ(read.job->uncertainty.source.find("runout_share")->second, "measured.toml");
  EXPECT_TRUE(
      std::none_of(read.job->defaults_used.begin(), read.job->defaults_used.end(),
                   [](const std::string &each) { return each.find("runout_mm") != std::string::npos; }));
}

TEST(Included, TheJobsOwnValueWinsWithAWarning) {
  const Read read = with_included("[machine]\nstiffness_xy_N_per_um = 0.9\n");
  ASSERT_TRUE(read.job);
  EXPECT_EQ(read.job->machine.stiffness_xy_N_per_um, 0.4);
  const Problem problem = first_of(read);
  EXPECT_EQ(problem.severity, Severity::warning);
  EXPECT_NE(problem.message.find("machine.stiffness_xy_N_per_um stands here"), std::string::npos);
  EXPECT_GT(problem.line, 0);
  EXPECT_TRUE(with_included("[machine]\nstiffness_xy_N_per_um = 0.4\n").problems.all().empty()) << "the same";
}

TEST(Included, ProblemsNameTheIncludedFile) {
  const Read read = with_included("[machine]\ntram_deg = 50\n");
  EXPECT_FALSE(read.job);
  EXPECT_TRUE(first_of(read).file.ends_with("measured.toml"));
  EXPECT_EQ(first_of(read).line, 2);
  EXPECT_TRUE(first_of(with_included("[machine]\ntrm_deg = 1\n")).file.ends_with("measured.toml"));
  EXPECT_TRUE(first_of(with_included("[machine\n")).file.ends_with("measured.toml"));
}

TEST(Included, WhatCannotBeIncludedIsRefused) {
  EXPECT_NE(first_of(with_included("title = \"x\"\n")).message.find("cannot stand in an included file"),
            std::string::npos);
  EXPECT_NE(first_of(with_included("include = \"more.toml\"\n")).message.find("cannot stand"),
            std::string::npos);
  EXPECT_NE(
      first_of(with_included("[material]\nname = \"ABS (printed)\"\n")).message.find("material.name differs"),
      std::string::npos);
  EXPECT_NE(first_of(with_included("", kSmallJob, "include = 7\n")).message.find("must be a file name"),
            std::string::npos);
  EXPECT_TRUE(with_included("", kSmallJob, "include = \"nowhere.toml\"\n").problems.has_errors());
}

TEST(Uncertainty, DefaultsDependOnWhatIsStated) {
  const Read loose = with_included("", kSmallJob, "");
  ASSERT_TRUE(loose.job);
  EXPECT_EQ(loose.job->uncertainty.runout_share, 1.5) << "runout itself is a default";
  EXPECT_EQ(loose.job->uncertainty.stiffness_share, 0.3) << "stiffness is stated";
  EXPECT_EQ(loose.job->uncertainty.cutting_force_share, 0.5);
  EXPECT_TRUE(loose.job->uncertainty.source.find("z_zero_mm")->second.starts_with("default: "));
  const Read measured = with_included("[[cutter]]\nnumber = 1\nrunout_mm = 0.02\n");
  ASSERT_TRUE(measured.job);
  EXPECT_EQ(measured.job->uncertainty.runout_share, 0.3);
}

TEST(Uncertainty, RangesAreChecked) {
  const Read read = with_included("[uncertainty]\nz_zero_mm = -0.1\nz_zro_mm = 0.1\n");
  EXPECT_EQ(read.problems.error_count(), 2u);
  EXPECT_NE(first_of(read).message.find("uncertainty.z_zero_mm is -0.1"), std::string::npos);
}

} // namespace
} // namespace asperity
