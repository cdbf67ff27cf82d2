// Whatever a title holds, it stays text.
#include "html.h"

#include <gtest/gtest.h>

namespace asperity {
namespace {

// HTML Living Standard, 13.1.4 and 13.5: these five cannot end or open anything in text and attribute values.
TEST(Escaped, MarkupBecomesText) {
  EXPECT_EQ(escaped("<script>alert(1)</script>"), "&lt;script&gt;alert(1)&lt;/script&gt;");
  EXPECT_EQ(escaped("\" onload='x' & \"'"), "&quot; onload=&#39;x&#39; &amp; &quot;&#39;");
}

TEST(Escaped, WordsOfAllLanguagesStay) {
  EXPECT_EQ(escaped("Turmuhr \u00fc \u0436 \u65f6\u949f \U0001F552"),
            "Turmuhr \u00fc \u0436 \u65f6\u949f \U0001F552");
}

// RFC 3629: overlong forms, lone continuation bytes, surrogates and cut-off characters are no UTF-8.
TEST(Escaped, BrokenBytesAreReplaced) {
  const std::string mark = "\xEF\xBF\xBD";
  EXPECT_EQ(escaped("a\xC0\xBC"), "a" + mark + mark); // an overlong '<'
  EXPECT_EQ(escaped("\x80"), mark);
  EXPECT_EQ(escaped("\xED\xA0\x80"), mark + mark + mark);
  EXPECT_EQ(escaped("\xE6\x97"), mark + mark);
}

TEST(Escaped, ControlAndDirectionCharactersAreLeftOut) {
  EXPECT_EQ(escaped(std::string("a\0b\x1b[31m", 8)), "ab[31m");
  EXPECT_EQ(escaped("plan \u202e.oN\u2066x"), "plan .oNx");
}

TEST(ScriptSafe, NothingEndsTheScriptElement) {
  const std::string json = script_safe("{\"title\":\"</script><!--&\"}");
  EXPECT_EQ(json.find('<'), std::string::npos);
  EXPECT_EQ(json, "{\"title\":\"\\u003c/script\\u003e\\u003c!--\\u0026\"}");
}

TEST(Typeset, UnitsAreSetWell) {
  EXPECT_EQ(typeset("5.2 um deep"), "5.2\u00a0\u00b5m deep");
  EXPECT_EQ(typeset("at 84.0 degC"), "at 84.0\u00a0\u00b0C");
  EXPECT_EQ(typeset("at 90 deg round"), "at 90\u00b0 round");
  EXPECT_EQ(typeset("an umbrella, 3 umbrellas"), "an umbrella, 3 umbrellas");
}

TEST(ValueHtml, FollowsTheUnit) {
  EXPECT_EQ(value_html(0.6, "mm"), "0.600\u00a0mm");
  EXPECT_EQ(value_html(5.25, "um"), "5.2\u00a0\u00b5m"); // half to even, as printf
  EXPECT_EQ(value_html(303.4, "s"), "5\u00a0min 03\u00a0s");
}

} // namespace
} // namespace asperity
