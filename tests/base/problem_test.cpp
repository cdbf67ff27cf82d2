// Problems are counted, bounded and put into words.
#include "asperity/base/problem.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

TEST(Problems, WarningsAreNotErrors) {
  Problems problems;
  problems.warning("sheave.toml", 3, 1, "no feed given", "Give feed.");
  EXPECT_FALSE(problems.has_errors());
  problems.error("sheave.toml", 4, 1, "no cutter", "Give a cutter.");
  EXPECT_TRUE(problems.has_errors());
  EXPECT_EQ(problems.error_count(), 1u);
  ASSERT_EQ(problems.all().size(), 2u);
  EXPECT_EQ(problems.all()[1].severity, Severity::error);
}

TEST(Problems, OnlySoManyAreKeptAndTheRestIsCounted) {
  Problems problems;
  for (std::size_t i = 0; i < Problems::kMost + 7; ++i)
    problems.error("bush.ngc", 1, 1, "bad word", "Repair it.");
  EXPECT_EQ(problems.all().size(), Problems::kMost);
  EXPECT_EQ(problems.left_out(), 7u);
  EXPECT_EQ(problems.error_count(), Problems::kMost + 7);
}

TEST(Problems, TextNamesPlaceThenMessageThenRemedy) {
  EXPECT_EQ(text_of({Severity::error, "bezel.ngc", 12, 5, "unknown word K", "Remove it."}),
            "bezel.ngc:12:5: error: unknown word K\n  Remove it.");
}

TEST(Problems, TextLeavesOutWhatIsNotKnown) {
  EXPECT_EQ(text_of({Severity::warning, "bezel.stl", 0, 0, "odd size", ""}), "bezel.stl: warning: odd size");
  EXPECT_EQ(text_of({Severity::warning, "bezel.ngc", 9, 0, "odd", "Look."}),
            "bezel.ngc:9: warning: odd\n  Look.");
  EXPECT_EQ(text_of({Severity::error, "", 0, 0, "no job", ""}), "error: no job");
}

} // namespace
} // namespace asperity
