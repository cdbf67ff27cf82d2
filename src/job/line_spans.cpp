// Union and difference of stretches on a line.
#include "line_spans.h"

#include <algorithm>

namespace asperity {

void LineSpans::add(Span span) {
  if (span.end < span.begin)
    return;
  // Those that it touches become one with it.
  const std::span<const Span> before = all();
  std::size_t first = 0;
  while (first < count_ && before[first].end < span.begin)
    ++first;
  std::size_t last = first;
  for (; last < count_ && before[last].begin <= span.end; ++last)
    span = {std::min(span.begin, before[last].begin), std::max(span.end, before[last].end)};
  replace(first, last, {&span, 1});
}

void LineSpans::cut(Span span) {
  if (span.end <= span.begin)
    return;
  const std::span<const Span> before = all();
  std::size_t first = 0;
  while (first < count_ && before[first].end <= span.begin)
    ++first;
  std::size_t last = first;
  while (last < count_ && before[last].begin < span.end)
    ++last;
  if (first == last)
    return;
  std::array<Span, 2> left;
  std::size_t count = 0;
  if (before[first].begin <= span.begin)
    left[count++] = {before[first].begin, span.begin};
  if (before[last - 1].end >= span.end)
    left[count++] = {span.end, before[last - 1].end};
  replace(first, last, std::span(left).first(count));
}

void LineSpans::replace(std::size_t first, std::size_t last, std::span<const Span> by) {
  const std::size_t count = count_ - (last - first) + by.size();
  if (count > kFew && many_.empty())
    many_.assign(few_.begin(), few_.begin() + static_cast<std::ptrdiff_t>(count_));
  if (!many_.empty())
    many_.resize(std::max(count_, count));
  Span *const spans = many_.empty() ? few_.data() : many_.data();
  if (by.size() > last - first)
    std::copy_backward(spans + last, spans + count_, spans + count);
  else
    std::copy(spans + last, spans + count_, spans + first + by.size());
  std::copy(by.begin(), by.end(), spans + first);
  count_ = count;
}

} // namespace asperity
