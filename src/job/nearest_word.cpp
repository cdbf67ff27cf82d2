// Edit distance and the choice of the nearest known word.
#include "nearest_word.h"

#include <algorithm>
#include <cctype>
#include <numeric>
#include <vector>

namespace asperity {

namespace {

/// Longer words are not compared letter by letter: nobody mistypes a known key at that length.
constexpr std::size_t kLongestWord = 80;

char lower(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

bool goes_on_from(std::string_view known, std::string_view word) {
  return known.size() > word.size() && known.starts_with(word) && known[word.size()] == '_';
}

} // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  std::iota(row.begin(), row.end(), std::size_t{0});
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t replaced = diagonal + (lower(a[i]) == lower(b[j]) ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({replaced, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row[b.size()];
}

std::string_view nearest_word(std::string_view word, std::span<const std::string_view> known) {
  if (word.empty() || word.size() > kLongestWord)
    return {};
  for (std::string_view candidate : known)
    if (goes_on_from(candidate, word))
      return candidate;

  // Up to a third of the letters, and at least two, may be wrong.
  std::string_view nearest;
  std::size_t least = std::max<std::size_t>(2, word.size() / 3) + 1;
  for (std::string_view candidate : known) {
    const std::size_t distance = edit_distance(word, candidate);
    if (distance < least && distance < std::max(word.size(), candidate.size())) {
      least = distance;
      nearest = candidate;
    }
  }
  return nearest;
}

std::string listed(std::span<const std::string_view> words) {
  std::string list;
  for (std::string_view word : words)
    list += (list.empty() ? "" : ", ") + std::string(word);
  return list;
}

} // namespace asperity
