// Lines of text, one unit a character.
#include "wrap_words.h"

#include <gtest/gtest.h>

using namespace asperity;

namespace {

std::string wrapped(std::string_view text, double width) {
  return wrap_words(text, width, [](std::string_view part) { return static_cast<double>(part.size()); });
}

} // namespace

TEST(WrapWords, BreaksAtTheLastSpaceThatFits) {
  EXPECT_EQ(wrapped("the cutter springs back", 10), "the cutter\nsprings\nback");
  EXPECT_EQ(wrapped("short", 10), "short");
  EXPECT_EQ(wrapped("", 10), "");
}

TEST(WrapWords, KeepsNumbersWholeAndWithTheirUnit) {
  EXPECT_EQ(wrapped("z 0.00 to 14.00 mm", 16), "z 0.00 to\n14.00 mm");
  EXPECT_EQ(wrapped("width 0.384 mm", 8), "width\n0.384 mm");
  EXPECT_EQ(wrapped("at 1800 mm/min of 2", 12), "at\n1800 mm/min\nof 2") << "a unit is no number";
}

TEST(WrapWords, LeavesAWordThatIsTooLongWhole) {
  EXPECT_EQ(wrapped("a spoilboard b", 4), "a\nspoilboard\nb");
}

TEST(WrapWords, KeepsLineBreaksOfTheText) { EXPECT_EQ(wrapped("one\ntwo three", 9), "one\ntwo three"); }
