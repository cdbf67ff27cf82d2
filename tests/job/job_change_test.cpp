// A change gives the job that the same value written into the file gives, and the same problems.
#include "asperity/job/job_change.h"

#include "job_text.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace asperity {
namespace {

struct Changed {
  std::optional<Job> job;
  Problems problems;
};

Changed changed(std::vector<JobChange> changes, std::string_view text = kSmallJob) {
  const TestFolder folder;
  folder.write("sheave.ngc", "M2\n");
  Changed result;
  result.job = read_job(folder.write("sheave.toml", text), changes, result.problems);
  return result;
}

/// The one problem of a change that cannot be made.
Problem refused(const JobChange &change) {
  const Changed result = changed({change});
  EXPECT_FALSE(result.job.has_value());
  EXPECT_EQ(result.problems.error_count(), 1u) << change.key;
  return result.problems.all().empty() ? Problem{} : result.problems.all().front();
}

void expect_text(std::string_view text, const JobChange &change, std::string_view expected) {
  Problems problems;
  const auto result = changed_job_text(text, "sheave.toml", std::span(&change, 1), problems);
  EXPECT_EQ(result.value_or(""), expected) << change.key;
  EXPECT_FALSE(problems.has_errors());
}

TEST(JobChange, ReplacesWhatTheFileSays) {
  const Changed result = changed({{"machine.stiffness_xy_N_per_um", "0.7"}, {"cutter.1.diameter_mm", "4"}});
  ASSERT_TRUE(result.job);
  EXPECT_EQ(result.job->machine.stiffness_xy_N_per_um, 0.7);
  EXPECT_EQ(result.job->cutters[0].diameter_mm, 4.0);
}

TEST(JobChange, AddsKeysAndSectionsThatTheFileLacks) {
  const Changed result = changed({{"effects.runout", "false"},
                                  {"cutter.1.runout_mm", "0.05"},
                                  {"wall.1.finish.lip_mm", "0.04"},
                                  {"setup.z_zero_error_mm", "-0.02"}});
  ASSERT_TRUE(result.job);
  EXPECT_FALSE(result.job->effects.runout);
  EXPECT_EQ(result.job->cutters[0].runout_mm, 0.05);
  EXPECT_EQ(finish_of(result.job->features[0]).lip_mm, 0.04);
  EXPECT_EQ(result.job->setup.z_zero_error_mm, -0.02);
}

TEST(JobChange, IsNoDefaultAnyMore) {
  const auto notes = [](const Job &job) {
    return std::count_if(job.defaults_used.begin(), job.defaults_used.end(),
                         [](const std::string &each) { return each.starts_with("machine.tram_deg"); });
  };
  const Changed before = changed({}), after = changed({{"machine.tram_deg", "0.0"}});
  ASSERT_TRUE(before.job && after.job);
  EXPECT_EQ(notes(*before.job), 1);
  EXPECT_EQ(notes(*after.job), 0);
}

TEST(JobChange, ReachesOneNumberOfAList) {
  const Changed result =
      changed({{"setup.program_zero_mm", "[1, 2, 3]"}, {"setup.program_zero_mm.3", "12.5"}});
  ASSERT_TRUE(result.job);
  EXPECT_EQ(result.job->setup.program_zero_mm, Vec3(1, 2, 12.5));
}

TEST(JobChange, TheLaterOfTwoWins) {
  const Changed result = changed({{"machine.tram_deg", "1.0"}, {"machine.tram_deg", "0.5"}});
  ASSERT_TRUE(result.job);
  EXPECT_EQ(result.job->machine.tram_deg, 0.5);
}

TEST(JobChange, WrongValuesAreNamedAsTheChange) {
  const Problem out_of_range = refused({"cutter.1.runout_mm", "20"});
  EXPECT_EQ(out_of_range.file, "change \"cutter.1.runout_mm = 20\"");
  EXPECT_EQ(out_of_range.line, 0);
  EXPECT_EQ(out_of_range.message, "cutter 1.runout_mm is 20: it must be at least 0 and at most 1");
  const Problem unknown = refused({"machine.stiffness_N_per_um", "0.5"});
  EXPECT_EQ(unknown.file, "change \"machine.stiffness_N_per_um = 0.5\"");
  EXPECT_NE(unknown.message.find("not a known key"), std::string::npos);
  const Problem section = refused({"machin.tram_deg", "0.5"});
  EXPECT_EQ(section.file, "change \"machin.tram_deg = 0.5\"");
  EXPECT_NE(section.remedy.find("machine"), std::string::npos);
}

TEST(JobChange, WhatIsNoKeyOrNoValueIsRefused) {
  EXPECT_NE(refused({"machine..tram_deg", "1"}).message.find("not a key"), std::string::npos);
  EXPECT_NE(refused({"", "1"}).message.find("not a key"), std::string::npos);
  EXPECT_NE(refused({"machine.tram_deg", "ramp"}).message.find("not a value"), std::string::npos);
  EXPECT_NE(refused({"machine.tram_deg", ""}).message.find("not a value"), std::string::npos);
  EXPECT_NE(refused({"machine.tram_deg", "1\nx = 2"}).message.find("not a value"), std::string::npos);
  EXPECT_NE(refused({"cutter.diameter_mm", "4"}).message.find("cutter is a list"), std::string::npos);
  EXPECT_NE(refused({"cutter.2.diameter_mm", "4"}).message.find("no number 2"), std::string::npos);
  EXPECT_NE(refused({"dome.1.apex_mm", "4"}).message.find("has no dome"), std::string::npos);
  EXPECT_NE(refused({"title.size", "4"}).message.find("is a value"), std::string::npos);
}

TEST(ChangedText, KeepsCommentsAndOrder) {
  const std::string_view text =
      "# head \u00e4\na = \"\u00f6\" # why\n\n[t] # t\nx = [1,\n 2] # list\n[[l]]\nv = { p = 1 }\n";
  expect_text(text, {"a", "2"},
              "# head \u00e4\na = 2 # why\n\n[t] # t\nx = [1,\n 2] # list\n[[l]]\nv = { p = 1 }\n");
  expect_text(text, {"t.x", "7"},
              "# head \u00e4\na = \"\u00f6\" # why\n\n[t] # t\nx = 7 # list\n[[l]]\nv = { p = 1 }\n");
  expect_text("[t]\nx = [1, 2] # c\n", {"t.x.2", "5 # own"}, "[t]\nx = [1, 5] # c\n");
  expect_text("v = { p = 1 } # c\n", {"v.p", "true"}, "v = { p = true } # c\n");
}

TEST(ChangedText, AddsWhereTheKeyBelongs) {
  expect_text("a = 1\n[t]\nx = 2\n", {"b", "3"}, "a = 1\nb = 3\n[t]\nx = 2\n");
  expect_text("a = 1\n[t] # t\nx = 2\n", {"t.y", "3"}, "a = 1\n[t] # t\ny = 3\nx = 2\n");
  expect_text("[[l]]\nx = 1\n[[l]]", {"l.2.y", "3"}, "[[l]]\nx = 1\n[[l]]\ny = 3\n");
  expect_text("[[l]]\nf = { p = 1 }\n", {"l.1.f.q", "3"}, "[[l]]\nf = { q = 3, p = 1 }\n");
  expect_text("[[l]]\n", {"l.1.f.q", "3"}, "[[l]]\nf = { q = 3 }\n");
  expect_text("a = 1\n", {"t.x", "3"}, "a = 1\n\n[t]\nx = 3\n");
  expect_text("", {"a", "1"}, "a = 1\n");
}

TEST(ChangedText, UnusualTextsAreWrittenAnewWithTheSameMeaning) {
  const JobChange change{"t.u.x", "3"};
  Problems problems;
  const auto result = changed_job_text("[t.u.v]\ny = 1\n", "sheave.toml", std::span(&change, 1), problems);
  ASSERT_TRUE(result);
  const JobChange back{"t.u.v.y", "2"};
  EXPECT_TRUE(changed_job_text(*result, "sheave.toml", std::span(&back, 1), problems));
  EXPECT_NE(result->find("x = 3"), std::string::npos);
  EXPECT_NE(result->find("y = 1"), std::string::npos);
}

TEST(ChangedText, GivesTheJobThatTheChangesGive) {
  std::ifstream file(ASPERITY_SOURCE_DIR "/scenes/reference.toml", std::ios::binary);
  const std::string reference{std::istreambuf_iterator<char>(file), {}};
  const std::vector<JobChange> changes = {
      {"machine.tram_deg", "0.5"},       {"cutter.2.flutes", "4"},
      {"wall.1.finish.lip_mm", "0.25"},  {"floor.1.finish.lip_mm", "0.35"},
      {"blank.hole.1.diameter_mm", "7"}, {"setup.program_zero_mm.3", "11"}};
  Problems problems;
  const auto text = changed_job_text(reference, "reference.toml", changes, problems);
  ASSERT_TRUE(text);
  EXPECT_NE(text->find("# table value for G43"), std::string::npos);
  const TestFolder folder;
  folder.write("reference.ngc", "M2\n");
  const auto job = read_job(folder.write("reference.toml", *text), problems);
  ASSERT_TRUE(job);
  EXPECT_EQ(job->machine.tram_deg, 0.5);
  EXPECT_EQ(job->cutters[1].flutes, 4);
  EXPECT_EQ(finish_of(job->features[0]).lip_mm, 0.25);
  EXPECT_EQ(job->blank.rounds[0].diameter_mm, 7.0);
  EXPECT_EQ(job->setup.program_zero_mm.z, 11.0);
}

TEST(ChangedText, ValuesReadBackToTheSameBits) {
  for (const double value : {0.1, 1.0 / 3.0, 2e-9, 1e22, -5.0, 123456.0}) {
    const Changed result = changed({{"machine.tram_deg", "0"}, {"title", toml_text(toml_text(value))}});
    ASSERT_TRUE(result.job) << value;
    EXPECT_EQ(std::stod(result.job->title), value);
  }
  EXPECT_EQ(toml_text(3.0), "3.0");
  EXPECT_EQ(toml_text("a \"b\" \\ \x1f"), "\"a \\\"b\\\" \\\\ \\u001F\"");
}

} // namespace
} // namespace asperity
