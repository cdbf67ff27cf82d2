// Edit distance against worked examples, and which word is proposed.
#include "nearest_word.h"

#include <gtest/gtest.h>

#include <vector>

namespace asperity {
namespace {

TEST(NearestWord, DistanceMatchesWorkedExamples) {
  // The usual textbook examples for [Levenshtein 1966], from memory.
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("saturday", "sunday"), 3u);
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(edit_distance("flute", "flute"), 0u);
  EXPECT_EQ(edit_distance("Flute", "fLUTE"), 0u);
}

TEST(NearestWord, ProposesTheNearestAndNothingFar) {
  const std::vector<std::string_view> known{"diameter_mm", "stick_out_mm", "flutes"};
  EXPECT_EQ(nearest_word("diametre_mm", known), "diameter_mm");
  EXPECT_EQ(nearest_word("diameter", known), "diameter_mm");
  EXPECT_EQ(nearest_word("flute", known), "flutes");
  EXPECT_EQ(nearest_word("zebra_crossing", known), "");
  EXPECT_EQ(nearest_word("", known), "");
  EXPECT_EQ(nearest_word(std::string(100000, 'x'), known), "");
}

} // namespace
} // namespace asperity
