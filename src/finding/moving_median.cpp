// Ranks all values once; a window is then a set of ranks, one bit each, and its middle moves by few bits.
#include "moving_median.h"

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <utility>

namespace asperity {

namespace {

/// Unsigned numbers in the order of the values.
std::uint32_t key_of(float value) {
  const auto bits = std::bit_cast<std::uint32_t>(value);
  return bits ^ ((bits >> 31) != 0 ? 0xFFFFFFFFU : 0x80000000U);
}

struct Keyed {
  std::uint32_t key = 0, index = 0;
};

/// All values that are numbers, in order: by eleven bits at a time, since a row's values fill the range too
/// thinly for anything that compares them.
std::vector<Keyed> in_order(std::span<const float> values) {
  constexpr unsigned kBits = 11, kWidth = 32;
  std::vector<Keyed> order, room;
  for (std::size_t i = 0; i < values.size(); ++i)
    if (!std::isnan(values[i]))
      order.push_back({key_of(values[i]), static_cast<std::uint32_t>(i)});
  room.resize(order.size());
  for (unsigned shift = 0; shift < kWidth; shift += kBits) {
    constexpr std::uint32_t kDigits = 1U << kBits;
    std::array<std::uint32_t, kDigits + 1> begins{};
    for (const Keyed &keyed : order)
      ++begins[((keyed.key >> shift) & (kDigits - 1)) + 1];
    for (std::size_t digit = 1; digit <= kDigits; ++digit)
      begins[digit] += begins[digit - 1];
    for (const Keyed &keyed : order)
      room[begins[(keyed.key >> shift) & (kDigits - 1)]++] = keyed;
    std::swap(order, room);
  }
  return order;
}

/// A set of ranks and its lower middle one.
class RankWindow {
public:
  explicit RankWindow(std::size_t ranks) : words_(ranks / kWord + 1, 0) {}

  void insert(std::uint32_t rank) {
    words_[rank / kWord] |= std::uint64_t{1} << (rank % kWord);
    if (++count_ == 1)
      middle_ = rank;
    else
      below_ += rank < middle_ ? 1 : 0;
  }
  /// Where the middle itself goes, a neighbour takes its place.
  void erase(std::uint32_t rank) {
    words_[rank / kWord] &= ~(std::uint64_t{1} << (rank % kWord));
    if (--count_ == 0)
      below_ = 0;
    else if (rank < middle_)
      --below_;
    else if (rank == middle_ && below_ == count_)
      step_down();
    else if (rank == middle_)
      middle_ = above(middle_);
  }
  std::size_t count() const { return count_; }
  /// The lower and the upper middle.
  std::pair<std::uint32_t, std::uint32_t> middle() {
    const std::size_t wanted = (count_ - 1) / 2;
    while (below_ < wanted) {
      middle_ = above(middle_);
      ++below_;
    }
    while (below_ > wanted)
      step_down();
    return {middle_, count_ % 2 != 0 ? middle_ : above(middle_)};
  }

private:
  static constexpr std::uint32_t kWord = 64;

  void step_down() {
    middle_ = below(middle_);
    --below_;
  }
  std::uint32_t above(std::uint32_t rank) const {
    std::uint32_t word = rank / kWord;
    // Shifted twice, as a shift by all 64 bits is not one.
    std::uint64_t rest = words_[word] >> (rank % kWord) >> 1 << 1 << (rank % kWord);
    while (rest == 0)
      rest = words_[++word];
    return word * kWord + static_cast<std::uint32_t>(std::countr_zero(rest));
  }
  std::uint32_t below(std::uint32_t rank) const {
    std::uint32_t word = rank / kWord;
    std::uint64_t rest = words_[word] & ((std::uint64_t{1} << (rank % kWord)) - 1);
    while (rest == 0)
      rest = words_[--word];
    return word * kWord + kWord - 1 - static_cast<std::uint32_t>(std::countl_zero(rest));
  }

  std::vector<std::uint64_t> words_;
  std::size_t count_ = 0, below_ = 0; ///< below the middle
  std::uint32_t middle_ = 0;
};

} // namespace

std::vector<float> moving_median(std::span<const float> values, std::size_t half) {
  constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();
  const std::vector<Keyed> order = in_order(values);
  const std::size_t n = values.size();
  std::vector<std::uint32_t> rank(n, kNone);
  for (std::size_t r = 0; r < order.size(); ++r)
    rank[order[r].index] = static_cast<std::uint32_t>(r);

  RankWindow window(order.size());
  const auto insert = [&](std::size_t i) {
    if (rank[i] != kNone)
      window.insert(rank[i]);
  };
  for (std::size_t k = 0; k < 2 * half; ++k)
    insert((n + k - half) % n);
  std::vector<float> median(n, std::numeric_limits<float>::quiet_NaN());
  for (std::size_t i = 0; i < n; ++i) {
    insert((i + half) % n);
    if (window.count() > 0) {
      const auto [lower, upper] = window.middle();
      median[i] = 0.5f * (values[order[lower].index] + values[order[upper].index]);
    }
    if (const std::uint32_t leaving = rank[(i + n - half) % n]; leaving != kNone)
      window.erase(leaving);
  }
  return median;
}

} // namespace asperity
