// Union and difference of stretches on a line.
#include "line_spans.h"

#include <algorithm>

namespace asperity {

void LineSpans::add(Span span) {
  if (span.end < span.begin)
    return;
  std::vector<Span> merged;
  for (const Span &each : spans_) {
    if (each.end < span.begin || each.begin > span.end)
      merged.push_back(each);
    else
      span = {std::min(span.begin, each.begin), std::max(span.end, each.end)};
  }
  merged.push_back(span);
  std::sort(merged.begin(), merged.end(), [](Span a, Span b) { return a.begin < b.begin; });
  spans_ = std::move(merged);
}

void LineSpans::cut(Span span) {
  if (span.end <= span.begin)
    return;
  std::vector<Span> left;
  for (const Span &each : spans_) {
    if (each.end <= span.begin || each.begin >= span.end) {
      left.push_back(each);
      continue;
    }
    if (each.begin <= span.begin)
      left.push_back({each.begin, span.begin});
    if (each.end >= span.end)
      left.push_back({span.end, each.end});
  }
  spans_ = std::move(left);
}

} // namespace asperity
