// Union and difference of stretches, checked point by point against membership.
#include "line_spans.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <utility>
#include <vector>

namespace asperity {
namespace {

bool holds(const LineSpans &spans, double t) {
  for (const Span &each : spans.all())
    if (t >= each.begin && t <= each.end)
      return true;
  return false;
}

TEST(LineSpans, AgreeWithMembershipPointByPoint) {
  std::mt19937 random(7);
  std::size_t most = 0;
  for (int round = 0; round < 400; ++round) {
    const bool are_short = round % 2 != 0; // many of them at once, more than need no memory of their own
    LineSpans spans;
    std::vector<std::pair<Span, bool>> steps;
    for (int i = 0; i < (are_short ? 40 : 8); ++i) {
      const auto a = static_cast<double>(random() % 100);
      const auto b = are_short ? a + static_cast<double>(random() % 4) : static_cast<double>(random() % 100);
      const Span span{std::min(a, b), std::max(a, b)};
      const bool adds = random() % 3 != 0;
      steps.push_back({span, adds});
      adds ? spans.add(span) : spans.cut(span);
      most = std::max(most, spans.all().size());
    }
    // Between whole numbers no end is hit.
    for (double t = 0.5; t < 100; ++t) {
      bool expected = false;
      for (const auto &[span, adds] : steps)
        if (t > span.begin && t < span.end)
          expected = adds;
      EXPECT_EQ(holds(spans, t), expected) << t;
    }
    for (std::size_t i = 1; i < spans.all().size(); ++i)
      EXPECT_LE(spans.all()[i - 1].end, spans.all()[i].begin);
  }
  EXPECT_GT(most, 10u);
}

TEST(LineSpans, EmptyStretchChangesNothing) {
  LineSpans spans;
  spans.add({0, -1});
  EXPECT_TRUE(spans.all().empty());
  spans.add({0, 4});
  spans.cut({3, 1});
  ASSERT_EQ(spans.all().size(), 1u);
  EXPECT_EQ(spans.all()[0].end, 4);
}

} // namespace
} // namespace asperity
