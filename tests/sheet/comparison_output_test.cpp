// A comparison as text, JSON and table says the same numbers.
#include "asperity/sheet/comparison_output.h"

#include "support/sheave_outcome.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>

namespace asperity {
namespace {

struct Two {
  Outcome a = test_support::rim_outcome(), b = test_support::rim_outcome();
  Two() {
    b.job.title = "Third, \"zigzag\" <plan>";
    b.path.duration_s = 185.0;
    b.findings.pop_back(); // no lip
    b.checks[1].predicted = 0.0;
    b.checks[1].met = true;
  }
};

class ComparisonOutput : public ::testing::Test {
protected:
  Two two;
  std::array<const Outcome *, 2> both{&two.a, &two.b};
  Comparison comparison = compare(both);
  ComparedOutcomes compared{comparison, both, 0};
};

TEST_F(ComparisonOutput, JsonHoldsValuesDifferencesAndMatches) {
  const auto json = nlohmann::json::parse(comparison_json_text(compared));
  EXPECT_EQ(json.at("format"), "asperity-comparison");
  bool has_lip = false;
  for (const auto &row : json.at("numbers"))
    if (row.at("id") == "rim/lip_mm") {
      has_lip = true;
      EXPECT_EQ(row.at("values"), (nlohmann::json{0.6, 0.0}));
      EXPECT_TRUE(row.at("differences")[0].is_null());
      EXPECT_DOUBLE_EQ(row.at("differences")[1].at("value"), -0.6);
      EXPECT_EQ(row.at("differences")[1].at("standing"), "better");
      EXPECT_TRUE(row.at("differences")[1].at("larger_than_uncertainty").is_null());
    }
  EXPECT_TRUE(has_lip);
  const auto &findings = json.at("against_first")[0].at("findings");
  ASSERT_EQ(findings.size(), 3u);
  EXPECT_EQ(findings[2].at("change"), "gone");
  EXPECT_TRUE(findings[2].at("finding_of_other").is_null());
}

TEST_F(ComparisonOutput, TextNamesTheDifferenceAndThatNoUncertaintyWasAskedFor) {
  const std::string text = comparison_text(compared, {.width = 120, .colour = false});
  EXPECT_NE(text.find("-0.600 mm better"), std::string::npos);
  EXPECT_NE(text.find("+1 min 00 s worse"), std::string::npos);
  EXPECT_NE(text.find("not asked for"), std::string::npos);
  EXPECT_NE(text.find("gone: base lip on rim"), std::string::npos);
  EXPECT_NE(text.find("eye protection"), std::string::npos);
}

TEST_F(ComparisonOutput, TextFitsTheWidth) {
  const std::string text = comparison_text(compared, {.width = 100, .colour = false});
  std::size_t begin = 0;
  while (begin < text.size()) {
    const std::size_t end = text.find('\n', begin);
    EXPECT_LE(end - begin, 110u) << text.substr(begin, end - begin); // titles stay whole
    begin = end + 1;
  }
}

TEST_F(ComparisonOutput, TableRowsHaveAsManyCellsAsTheHead) {
  const std::string text = comparison_csv_text(compared);
  std::size_t begin = 0, columns = 0, rows = 0;
  while (begin < text.size()) {
    const std::size_t end = text.find('\n', begin);
    const std::string row = text.substr(begin, end - begin);
    begin = end + 1;
    if (row.starts_with("#"))
      continue;
    const auto commas = static_cast<std::size_t>(std::count(row.begin(), row.end(), ','));
    if (columns == 0)
      columns = commas;
    if (row.find('"') == std::string::npos) {
      EXPECT_EQ(commas, columns) << row;
    }
    ++rows;
  }
  EXPECT_EQ(rows, comparison.numbers.size() + 1);
  EXPECT_NE(text.find("rim/lip_mm,rim,lip at the base,mm,0.6,0,-0.6,better,,\n"), std::string::npos);
}

} // namespace
} // namespace asperity
