// Numbers and lines of text as a reader sees them.
#include "asperity/report/number_text.h"
#include "text_layout.h"

#include <gtest/gtest.h>

#include <limits>

namespace asperity {

TEST(NumberText, LengthsHaveThreeDecimalsAndDepthsOne) {
  EXPECT_EQ(quantity_text(0.6, "mm"), "0.600 mm");
  EXPECT_EQ(quantity_text(7.96, "um"), "8.0 um");
  EXPECT_EQ(quantity_text(84.0, "degC"), "84.0 degC");
  EXPECT_EQ(quantity_text(1234.5, "N"), "1234 N");
  EXPECT_EQ(quantity_text(1.4, ""), "1.4");
}

TEST(NumberText, NothingReadsMinusZeroOrNotANumber) {
  EXPECT_EQ(fixed_text(-0.0004, 3), "0.000");
  EXPECT_EQ(fixed_text(-0.0006, 3), "-0.001");
  EXPECT_EQ(mm_text(std::numeric_limits<double>::quiet_NaN()), "unknown");
  EXPECT_EQ(quantity_text(std::numeric_limits<double>::infinity(), "N"), "unknown");
}

TEST(NumberText, DurationsCarryIntoMinutesAndHours) {
  EXPECT_EQ(duration_text(9.94), "9.9 s");
  EXPECT_EQ(duration_text(59.4), "59 s");
  EXPECT_EQ(duration_text(59.6), "1 min 00 s");
  EXPECT_EQ(duration_text(751.0), "12 min 31 s");
  EXPECT_EQ(duration_text(7170.0), "2 h 00 min"); // 1 h 59.5 min rounds up
}

TEST(NumberText, LinesAreListedAndTheRestCounted) {
  const std::uint32_t lines[] = {7, 12, 19};
  EXPECT_EQ(lines_text({}, 0), "");
  EXPECT_EQ(lines_text(std::span(lines, 1), 1), "line 7");
  EXPECT_EQ(lines_text(lines, 3), "lines 7, 12 and 19");
  EXPECT_EQ(lines_text(lines, 43), "lines 7, 12, 19 and 40 more");
}

TEST(TextLayout, NoLineIsWiderThanAsked) {
  constexpr std::size_t kWidth = 30;
  const std::string text =
      wrapped("one two three four five six seven eight nine ten eleven", kWidth, "  - ", 4);
  std::size_t begin = 0, lines = 0;
  for (std::size_t end; (end = text.find('\n', begin)) != std::string::npos; begin = end + 1, ++lines) {
    EXPECT_LE(end - begin, kWidth);
    EXPECT_EQ(text.substr(begin, 2), "  ");
  }
  EXPECT_GE(lines, 2u);
  EXPECT_EQ(begin, text.size());
}

TEST(TextLayout, ColumnsLineUpWithAccentedNames) {
  EXPECT_EQ(table({{"\xC3\xA9t\xC3\xA9", "1"}, {"abcd", "2"}}, 1), " \xC3\xA9t\xC3\xA9   1\n abcd  2\n");
}

TEST(TextLayout, NamesCannotSteerTheTerminal) {
  EXPECT_EQ(printable("rim\x1b[31m\nx\x7f\xC2\x9Bz"), "rim[31m xz");
  EXPECT_EQ(printable("\xC3\x9Ftadium"),
            "\xC3\x9Ftadium"); // the second byte of a letter is no control character
}

} // namespace asperity
