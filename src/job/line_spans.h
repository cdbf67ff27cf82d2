// Which stretches of a line lie in material.
#pragma once

#include <vector>

namespace asperity {

/// A closed stretch [begin, end] of a line.
struct Span {
  double begin = 0, end = 0;
};

/// Disjoint stretches in rising order.
class LineSpans {
public:
  const std::vector<Span> &all() const { return spans_; }
  /// Adds a stretch; nothing happens if end < begin.
  void add(Span span);
  /// Takes the open stretch (begin, end) away; its ends stay.
  void cut(Span span);

private:
  std::vector<Span> spans_;
};

} // namespace asperity
