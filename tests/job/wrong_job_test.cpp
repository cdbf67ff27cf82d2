// Every mistake is reported once, at its key, with a remedy; and nothing is returned.
#include "job_text.h"
#include "wrong_job.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

class Wrong : public testing::TestWithParam<WrongJob> {};

TEST_P(Wrong, JobIsReportedAtTheOffendingKeyWithARemedy) {
  const WrongJob &wrong = GetParam();
  const std::string text = replaced(kSmallJob, wrong.find, wrong.by);
  Problems problems;
  EXPECT_FALSE(read_text(text, problems).has_value());
  EXPECT_EQ(problems.error_count(), wrong.errors);
  for (const Problem &each : problems.all())
    SCOPED_TRACE(text_of(each));
  ASSERT_FALSE(problems.all().empty());

  const Problem &first = problems.all().front();
  const TextPlace place = place_of(text, wrong.at);
  EXPECT_EQ(first.line, place.line) << text_of(first);
  EXPECT_EQ(first.column, place.column) << text_of(first);
  EXPECT_NE(first.message.find(wrong.message), std::string::npos) << text_of(first);
  EXPECT_NE(first.remedy.find(wrong.remedy), std::string::npos) << text_of(first);
  EXPECT_TRUE(first.file.ends_with("sheave.toml"));
}

std::string name_of_case(const testing::TestParamInfo<WrongJob> &info) {
  return std::string(info.param.name);
}

INSTANTIATE_TEST_SUITE_P(Values, Wrong, testing::ValuesIn(wrong_values()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Keys, Wrong, testing::ValuesIn(wrong_keys()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Cutters, Wrong, testing::ValuesIn(wrong_cutters()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Blanks, Wrong, testing::ValuesIn(wrong_blanks()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Surfaces, Wrong, testing::ValuesIn(wrong_surfaces()), name_of_case);
INSTANTIATE_TEST_SUITE_P(Holdings, Wrong, testing::ValuesIn(wrong_holdings()), name_of_case);

} // namespace
} // namespace asperity
