// Which known word the user most likely meant.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace asperity {

/// Fewest single-letter insertions, deletions and replacements that turn a into b [Levenshtein 1966]; letter
/// case is ignored.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word nearest to `word`, or an empty view when none is near enough to be meant. A known word that
/// goes on where `word` stops ("diameter" -> "diameter_mm") counts as near.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> known);

/// Words as a list for a message: "a, b, c".
std::string listed(std::span<const std::string_view> words);

} // namespace asperity
