// Which stretches of a line lie in material.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

/// A closed stretch [begin, end] of a line.
struct Span {
  double begin = 0, end = 0;
};

/// Disjoint stretches in rising order. The first few need no memory of their own: charts ask for as many of
/// these as they have cells.
class LineSpans {
public:
  std::span<const Span> all() const { return {many_.empty() ? few_.data() : many_.data(), count_}; }
  /// Adds a stretch; nothing happens if end < begin.
  void add(Span span);
  /// Takes the open stretch (begin, end) away; its ends stay.
  void cut(Span span);

private:
  /// Puts other stretches in the place of those from `first` on and before `last`.
  void replace(std::size_t first, std::size_t last, std::span<const Span> by);

  static constexpr std::size_t kFew = 4;
  std::array<Span, kFew> few_;
  std::vector<Span> many_; ///< all of them once they are more
  std::size_t count_ = 0;
};

} // namespace asperity
