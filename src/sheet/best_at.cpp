// What each plan is best at, and what all titles share.
#include "asperity/sheet/answer.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace asperity {

namespace {

constexpr std::size_t kMostNamed = 4;

/// Numbers that speak for a plan; what only repeats one of them in other words is left out.
bool is_headline(std::string_view id) {
  const auto slash = id.rfind('/');
  const std::string_view key = slash == std::string_view::npos ? id : id.substr(slash + 1);
  constexpr std::array<std::string_view, 15> kKeys = {
      "time_s",        "peak_side_force_N", "break_margin", "slip_margin", "peak_chip_temperature_C",
      "diameter_mm",   "height_mm",         "offset_mm",    "lip_mm",      "witness_depth_um",
      "level_step_um", "scallop_um",        "gouge_um",     "ra_um",       "rz_um"};
  return std::find(kKeys.begin(), kKeys.end(), key) != kKeys.end() || key.starts_with("width_along");
}

std::string names_of(const Comparison &comparison, const std::vector<std::size_t> &rows) {
  std::string text;
  std::size_t named = 0;
  for (const std::size_t row : rows) {
    const KeyNumber &number = comparison.numbers[row].number;
    if (!is_headline(number.id))
      continue;
    if (++named > kMostNamed)
      continue;
    text += named == 1 ? "" : ", ";
    text += number.feature.empty() ? number.what : fmt::format("{} ({})", number.what, number.feature);
  }
  return named > kMostNamed ? fmt::format("{} and {} more", text, named - kMostNamed) : text;
}

} // namespace

std::string best_at_sentence(const Comparison &comparison) {
  if (comparison.plans.size() < 2)
    return {};
  const auto best = best_at(comparison);
  std::string text;
  for (std::size_t plan = 0; plan < best.size(); ++plan)
    if (const std::string names = names_of(comparison, best[plan]); !names.empty())
      text += fmt::format("{}plan {} at {}", text.empty() ? "" : "; ", comparison.plans[plan].letter, names);
  if (text.empty())
    return comparison.knows_uncertainty
               ? "No plan is best at anything: all differences lie within the uncertainty."
               : "No plan is best at anything: the predicted numbers are the same.";
  return "Best, " + text + (comparison.knows_uncertainty ? "." : " (uncertainty not asked for).");
}

std::string common_title(std::span<const Outcome *const> outcomes) {
  constexpr std::size_t kLeast = 4;
  if (outcomes.empty())
    return {};
  const std::string &first = outcomes[0]->job.title;
  std::size_t length = first.size();
  for (const Outcome *outcome : outcomes) {
    const std::string &title = outcome->job.title;
    const auto differs = std::mismatch(first.begin(), first.end(), title.begin(), title.end()).first;
    length = std::min(length, static_cast<std::size_t>(differs - first.begin()));
  }
  if (length == first.size())
    return first;
  // Back to the end of a whole word, without the punctuation that joins what follows.
  while (length > 0 && first[length] != ' ' && first[length] != ',')
    --length;
  while (length > 0 && std::string_view(" ,;:-(").find(first[length - 1]) != std::string_view::npos)
    --length;
  return length >= kLeast ? first.substr(0, length) : first;
}

} // namespace asperity
