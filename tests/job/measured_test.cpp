// The file of measurements: what is read, and what is said about mistakes.
#include "asperity/job/measured.h"

#include "job_text.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

constexpr std::string_view kMeasured = "fit = [\"stiffness_share\", \"runout_share\"]\n"
                                       "[[reading]]\n"
                                       "number = \"rim/diameter_mm\"\n"
                                       "value = 62.03\n"
                                       "uncertainty = 0.01\n"
                                       "note = \"micrometer\"\n"
                                       "[[pull]]\n"
                                       "force_N = 20\n"
                                       "moved_um = 55\n"
                                       "uncertainty_um = 6\n"
                                       "[[indicator]]\n"
                                       "cutter = 1\n"
                                       "runout_mm = 0.025\n"
                                       "uncertainty_mm = 0.004\n"
                                       "[[gauge]]\n"
                                       "cutter = 1\n"
                                       "diameter_mm = 5.985\n"
                                       "uncertainty_mm = 0.004\n";

struct Read {
  std::optional<Measured> measured;
  Problems problems;
};

Read read(std::string_view text) {
  Read result;
  const auto job = read_text(kSmallJob, result.problems);
  if (!job)
    return result;
  const TestFolder folder;
  result.measured = read_measured(folder.write("measured.toml", text), *job, result.problems);
  return result;
}

void expect_problem(std::string_view find, std::string_view by, std::string_view message,
                    std::string_view remedy) {
  const Read result = read(replaced(kMeasured, find, by));
  EXPECT_FALSE(result.measured) << by;
  ASSERT_EQ(result.problems.all().size(), 1u) << by;
  const Problem &problem = result.problems.all().front();
  EXPECT_NE(problem.message.find(message), std::string::npos) << problem.message;
  EXPECT_NE(problem.remedy.find(remedy), std::string::npos) << problem.remedy;
  EXPECT_TRUE(problem.file.ends_with("measured.toml"));
  EXPECT_GT(problem.line, 0);
}

TEST(Measured, IsReadWithEveryKindOfReading) {
  const Read result = read(kMeasured);
  for (const Problem &each : result.problems.all())
    ADD_FAILURE() << text_of(each);
  ASSERT_TRUE(result.measured);
  ASSERT_EQ(result.measured->fit.size(), 2u);
  EXPECT_EQ(result.measured->fit[1].key, "runout_share");
  EXPECT_EQ(result.measured->fit[1].cutter, 1) << "the only cutter need not be named";
  ASSERT_EQ(result.measured->readings.size(), 4u);
  EXPECT_EQ(result.measured->readings[0].value, 62.03);
  EXPECT_EQ(result.measured->readings[1].force_N, 20.0);
  EXPECT_EQ(result.measured->readings[2].value, 0.025);
  EXPECT_EQ(result.measured->readings[3].expanded, 0.004);
}

TEST(Measured, CuttersMayBeNamed) {
  const Read result = read(replaced(kMeasured, "\"runout_share\"", "\"cutter 1 cutter_diameter_mm\""));
  ASSERT_TRUE(result.measured);
  EXPECT_EQ(result.measured->fit[1].key, "cutter_diameter_mm");
}

TEST(Measured, MistakesInFitAreNamed) {
  const std::string_view fit = "fit = [\"stiffness_share\", \"runout_share\"]\n";
  expect_problem(fit, "", "fit must be a list", "stiffness_share");
  expect_problem(fit, "fit = \"stiffness_share\"\n", "fit must be a list", "Write fit = [");
  expect_problem("\"runout_share\"", "\"runout_shar\"", "cannot hold \"runout_shar\"",
                 "Did you mean \"runout_share\"?");
  expect_problem("\"runout_share\"", "\"cutter 3 runout_share\"", "cannot hold", "Say which cutter");
  expect_problem("\"runout_share\"", "\"cutter 1 z_zero_mm\"", "cannot hold", "leave the cutter out");
  expect_problem("\"runout_share\"", "\"stiffness_share\"", "twice", "once");
  expect_problem("\"stiffness_share\", \"runout_share\"", "\"force_share\", \"edge_force_share\"",
                 "one of its parts", "not both");
}

TEST(Measured, MistakesInReadingsAreNamed) {
  expect_problem("uncertainty = 0.01\n", "", "reading 1.uncertainty is missing", "Add 'uncertainty'");
  expect_problem("uncertainty = 0.01", "uncertainty = 0", "must be above 0", "Check");
  expect_problem("rim/diameter_mm", "rum/diameter_mm", "no surface of the job", "rim");
  expect_problem("cutter = 1\nrunout_mm", "cutter = 7\nrunout_mm", "no cutter of the job", "[[cutter]]");
  expect_problem("[[gauge]]", "[[guage]]", "guage is not a known key", "gauge");
}

TEST(Measured, ShippedExampleFitsItsJob) {
  const std::string folder = ASPERITY_SOURCE_DIR "/scenes/sheave/";
  Problems problems;
  const auto job = read_job(folder + "plunge.toml", problems);
  ASSERT_TRUE(job);
  const auto measured = read_measured(folder + "plunge-measured.toml", *job, problems);
  ASSERT_TRUE(measured) << text_of(problems.all().front());
  EXPECT_EQ(measured->fit.size(), 5u);
  EXPECT_EQ(measured->readings.size(), 6u);
}

TEST(Measured, NothingMeasuredIsSaidSo) {
  const Read result = read("fit = [\"stiffness_share\"]\n");
  ASSERT_EQ(result.problems.all().size(), 1u);
  EXPECT_NE(result.problems.all()[0].message.find("reading is missing"), std::string::npos);
}

} // namespace
} // namespace asperity
