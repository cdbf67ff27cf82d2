// How values are listed, and all their combinations.
#include "asperity/study/grid.h"

#include <gtest/gtest.h>

#include <set>

namespace asperity {

namespace {

std::vector<std::string> values_of(const std::string &text) {
  Problems problems;
  const auto factor = read_factor(text, problems);
  for (const Problem &problem : problems.all())
    ADD_FAILURE() << text_of(problem);
  return factor ? factor->values : std::vector<std::string>{};
}

using Texts = std::vector<std::string>;

std::string message_of(const std::vector<std::string> &options) {
  Problems problems;
  EXPECT_FALSE(read_grid(options, problems)) << options.front();
  return problems.all().empty() ? std::string() : text_of(problems.all().front());
}

} // namespace

TEST(StudyGrid, ListsKeepEveryValueAsWritten) {
  EXPECT_EQ(values_of("setup.z_zero_error_mm=0,0.05,0.10"), (Texts{"0", "0.05", "0.10"}));
  EXPECT_EQ(values_of("cutter.1.runout_mm= 0 , 1e-2"), (Texts{"0", "1e-2"}));
  EXPECT_EQ(values_of("effects.runout=true,false"), (Texts{"true", "false"}));
  EXPECT_EQ(values_of("setup.program_zero_mm=[0, 0, 1],[0,0,2]"), (Texts{"[0, 0, 1]", "[0,0,2]"}));
}

TEST(StudyGrid, WordsNeedNoQuotes) {
  EXPECT_EQ(values_of("pass.1.entry=plunge,zigzag"), (Texts{"\"plunge\"", "\"zigzag\""}));
  EXPECT_EQ(values_of("program=a.ngc,sub/b 2.ngc"), (Texts{"\"a.ngc\"", "\"sub/b 2.ngc\""}));
  EXPECT_EQ(values_of("title='a, b',\"c\""), (Texts{"'a, b'", "\"c\""}));
  EXPECT_EQ(shown_value("\"a.ngc\""), "a.ngc");
  EXPECT_EQ(shown_value("0.050"), "0.050");
}

TEST(StudyGrid, RangesAreDecimalAndHoldTheirEnd) {
  // derived: in binary 3 * 0.02 is 0.06 plus an error; as decimals there is none.
  EXPECT_EQ(values_of("setup.z_zero_error_mm=0:0.1:0.02"),
            (Texts{"0.00", "0.02", "0.04", "0.06", "0.08", "0.10"}));
  EXPECT_EQ(values_of("cutter.1.flutes=2:4:1"), (Texts{"2", "3", "4"}));
  EXPECT_EQ(values_of("a.b=1:-1:-1"), (Texts{"1", "0", "-1"}));
  EXPECT_EQ(values_of("a.b=0:1:0.4,5"), (Texts{"0.0", "0.4", "0.8", "5"}));
  EXPECT_EQ(values_of("a.b=.5,5."), (Texts{"0.5", "5.0"}));
}

TEST(StudyGrid, EveryCombinationComesOnceAndTheLastKeyChangesFastest) {
  Problems problems;
  const auto grid = read_grid(Texts{"a.x=1,2", "b.y=u,v,w", "c.z=7,8"}, problems);
  ASSERT_TRUE(grid);
  ASSERT_EQ(grid->size(), 12u);
  std::set<std::string> seen;
  for (std::size_t i = 0; i < grid->size(); ++i)
    seen.insert(combination_text(*grid, i));
  EXPECT_EQ(seen.size(), 12u);
  EXPECT_EQ(combination_text(*grid, 0), "a.x = 1, b.y = u, c.z = 7");
  EXPECT_EQ(combination_text(*grid, 1), "a.x = 1, b.y = u, c.z = 8");
  EXPECT_EQ(combination_text(*grid, 11), "a.x = 2, b.y = w, c.z = 8");
  EXPECT_EQ(grid->changes(5)[1].value, "\"w\"");
}

TEST(StudyGrid, PartsShareOutEveryCombinationOnce) {
  Problems problems;
  for (const std::size_t count : {1u, 2u, 3u, 7u})
    for (std::size_t i = 0; i < 20; ++i) {
      std::size_t holders = 0;
      for (std::size_t part = 1; part <= count; ++part)
        holders += read_part(std::to_string(part) + '/' + std::to_string(count), problems)->holds(i) ? 1 : 0;
      EXPECT_EQ(holders, 1u) << i << " of " << count;
    }
  EXPECT_FALSE(problems.has_errors());
}

TEST(StudyGrid, WrongPartsAreRefused) {
  for (const char *text : {"", "2", "0/2", "3/2", "1/0", "a/b", "1/2/3", "-1/2", "1/ 2", "1/2x"}) {
    Problems problems;
    EXPECT_FALSE(read_part(text, problems)) << text;
    EXPECT_EQ(problems.error_count(), 1u) << text;
  }
}

TEST(StudyGrid, WrongListsAreRefusedWithTheReason) {
  struct Case {
    const char *option, *message;
  };
  for (const Case &c : {Case{"setup.z_zero_error_mm", "no ="},
                        Case{"=1,2", "not a key"},
                        Case{"a..b=1", "not a key"},
                        Case{".a=1", "not a key"},
                        Case{"a b=1", "not a key"},
                        Case{"a.b=", "value is missing"},
                        Case{"a.b=1,,2", "value is missing"},
                        Case{"a.b=1,2,", "value is missing"},
                        Case{"a.b=1,1.0", "1.0 stands in the list twice"},
                        Case{"a.b=x,x", "x stands in the list twice"},
                        Case{"a.b=[1,2", "not closed"},
                        Case{"a.b=\"x", "not closed"},
                        Case{"a.b=0:1", "a range has three"},
                        Case{"a.b=0:1:2:3", "a range has three"},
                        Case{"a.b=0:1:0", "never comes"},
                        Case{"a.b=0:1:-0.1", "never comes"},
                        Case{"a.b=0:1:1e-9", "more than 10000 values"},
                        Case{"a.b=nan", "no finite number"},
                        Case{"a.b=1,inf", "no finite number"},
                        Case{"a.b=x=y", "is not a value"},
                        Case{"a.b={", "not closed"},
                        Case{"a.b=0:inf:1", "no finite number"}}) {
    const std::string message = message_of({c.option});
    EXPECT_NE(message.find(c.message), std::string::npos) << c.option << "\n" << message;
    EXPECT_NE(message.find("\n  "), std::string::npos) << "a remedy: " << message;
  }
}

TEST(StudyGrid, KeysMustNotOverlapAndCombinationsMustBeCountable) {
  EXPECT_NE(message_of({"a.b=1", "a.b=2"}).find("varied twice"), std::string::npos);
  EXPECT_NE(message_of({"a=1", "a.b=2"}).find("part of the other"), std::string::npos);
  EXPECT_NE(message_of({"a.x=1:1000:1", "b.y=1:1000:1"}).find("more than 100000 combinations"),
            std::string::npos);
  Problems problems;
  EXPECT_FALSE(read_grid({}, problems));
  EXPECT_NE(text_of(problems.all().front()).find("nothing is varied"), std::string::npos);
}

} // namespace asperity
