// A comparison in words: plans, answer, numbers, findings, limits.
#include "asperity/sheet/comparison_output.h"

#include "asperity/compare/difference_chart.h"
#include "asperity/compare/matched_finding.h"
#include "asperity/report/cautions.h"
#include "asperity/report/number_text.h"
#include "asperity/sheet/answer.h"
#include "text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

namespace asperity {

namespace {

using Row = std::vector<std::string>;

std::string heading(std::string_view text, const SummaryStyle &style) {
  return style.colour ? fmt::format("\n\x1b[1m{}\x1b[0m\n", text) : fmt::format("\n{}\n", text);
}

std::string plans_section(const ComparedOutcomes &c) {
  std::string text = fmt::format("Comparing {} plans\n", c.outcomes.size());
  for (std::size_t k = 0; k < c.outcomes.size(); ++k)
    text += fmt::format("  {}  {}  ({})\n", c.comparison.plans[k].letter, printable(c.outcomes[k]->job.title),
                        printable(c.outcomes[k]->job.file.string()));
  return text;
}

std::string answer_section(const ComparedOutcomes &c, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  const Answer answer = answer_of(c.comparison, c.outcomes);
  std::string text = heading("Answer", style) + wrapped(printable(answer.headline), width, "  ", 2);
  for (const std::string &reason : answer.reasons)
    text += wrapped(printable(reason), width, "  ", 4);
  return text;
}

std::string value_text(const std::optional<KeyNumber> &number) {
  return number ? quantity_text(number->value, number->unit) : std::string("-");
}

std::string difference_text(const ComparedNumber &row, std::size_t plan) {
  const auto &difference = row.difference[plan];
  if (!difference)
    return "-";
  const std::string_view word = standing_text(difference->standing);
  const std::string size = signed_text(difference->value, row.number.unit);
  return word.empty() ? size : fmt::format("{} {}", size, word);
}

/// Rows of the first plan and the others from `begin` to `end`, a blank heading row before every feature.
std::vector<Row> number_rows(const Comparison &comparison, std::size_t begin, std::size_t end) {
  Row head{"", comparison.plans[0].letter};
  for (std::size_t k = begin; k < end; ++k) {
    head.push_back(comparison.plans[k].letter);
    head.push_back(fmt::format("{} - {}", comparison.plans[k].letter, comparison.plans[0].letter));
  }
  std::vector<Row> rows{head};
  std::string feature;
  for (const ComparedNumber &number : comparison.numbers) {
    if (number.number.feature != feature) {
      feature = number.number.feature;
      rows.push_back({printable(feature)});
    }
    Row row{(feature.empty() ? "" : "  ") + number.number.what, value_text(number.of[0])};
    for (std::size_t k = begin; k < end; ++k) {
      row.push_back(value_text(number.of[k]));
      row.push_back(difference_text(number, k));
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

std::size_t widest_line(const std::string &text) {
  std::size_t widest = 0, begin = 0;
  while (begin < text.size()) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    widest = std::max(widest, columns_of(std::string_view(text).substr(begin, end - begin)));
    begin = end + 1;
  }
  return widest;
}

/// As many plans side by side as the width takes.
std::string numbers_section(const ComparedOutcomes &c, const SummaryStyle &style) {
  const std::size_t plans = c.comparison.plans.size();
  std::string text = heading("Numbers", style);
  for (std::size_t begin = 1; begin < plans;) {
    std::size_t end = plans;
    std::string part = table(number_rows(c.comparison, begin, end), 2);
    while (end > begin + 1 && widest_line(part) > static_cast<std::size_t>(style.width))
      part = table(number_rows(c.comparison, begin, --end), 2);
    text += (begin > 1 ? "\n" : "") + part;
    begin = end;
  }
  return text + wrapped(uncertainty_sentence(c.comparison), static_cast<std::size_t>(style.width), "  ", 2);
}

std::string size_of(const Finding &finding) {
  return finding.size.empty() ? std::string() : quantity_text(finding.size[0].value, finding.size[0].unit);
}

std::string match_line(const Outcome &first, const Outcome &other, const MatchedFinding &match) {
  const bool is_fresh = match.first < 0;
  const Outcome &home = is_fresh ? other : first;
  const Finding &finding = home.findings[static_cast<std::size_t>(is_fresh ? match.other : match.first)];
  const bool has_feature =
      finding.feature >= 0 && static_cast<std::size_t>(finding.feature) < home.job.features.size();
  std::string text = fmt::format(
      "{}: {}{}, {}", name_of(match.change), name_of(finding.kind),
      has_feature ? " on " + name_of(home.job.features[static_cast<std::size_t>(finding.feature)]) : "",
      size_of(finding));
  if (match.first >= 0 && match.other >= 0)
    text += " -> " + size_of(other.findings[static_cast<std::size_t>(match.other)]);
  return printable(text);
}

std::string findings_section(const ComparedOutcomes &c, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("Findings", style);
  for (std::size_t k = 1; k < c.outcomes.size(); ++k) {
    text += fmt::format("  {} against {}\n", c.comparison.plans[k].letter, c.comparison.plans[0].letter);
    const auto matched = matched_findings(*c.outcomes[0], *c.outcomes[k]);
    if (matched.empty())
      text += "    none in either\n";
    for (const MatchedFinding &match : matched)
      text += wrapped(match_line(*c.outcomes[0], *c.outcomes[k], match), width, "    ", 6);
  }
  return text;
}

std::string surfaces_section(const ComparedOutcomes &c, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("Surfaces, cell by cell", style);
  for (std::size_t k = 1; k < c.outcomes.size(); ++k) {
    const FeaturePairs pairs = feature_pairs(c.outcomes[0]->job, c.outcomes[k]->job);
    for (const FeaturePair &pair : pairs.pairs) {
      const DifferenceChart d =
          difference_chart(c.outcomes[0]->charts[pair.first], c.outcomes[k]->charts[pair.other]);
      std::string line =
          fmt::format("{} - {}, {}: ", c.comparison.plans[k].letter, c.comparison.plans[0].letter,
                      name_of(c.outcomes[0]->job.features[pair.first]));
      line += d.both_share > 0.0
                  ? fmt::format("{} on the mean, {} to {}, root mean square {}; {} % of it cut in both{}.",
                                signed_text(d.mean_um, "um"), signed_text(d.lowest_um, "um"),
                                signed_text(d.highest_um, "um"), um_text(d.rms_um),
                                fixed_text(100.0 * d.both_share, 1), d.is_resampled ? ", resampled" : "")
                  : "nothing of it is cut in both.";
      text += wrapped(printable(line), width, "  ", 4);
    }
    for (const std::string &reason : pairs.left_out)
      text += wrapped(printable(reason), width, "  ", 4);
  }
  return text;
}

std::string limits_section(const ComparedOutcomes &c, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("What this rests on", style);
  std::set<std::string> said;
  for (const Outcome *outcome : c.outcomes)
    for (const std::string &note : outcome->notes)
      if (said.insert(note).second)
        text += wrapped(printable(note), width, "  ", 4);
  text += heading("Before cutting", style);
  for (const std::string_view caution : cautions())
    text += wrapped(caution, width, "  ", 4);
  return text;
}

} // namespace

std::string comparison_text(const ComparedOutcomes &c, const SummaryStyle &wanted_style) {
  SummaryStyle style = wanted_style;
  style.width = std::clamp(style.width, 40, 400);
  std::string text = plans_section(c) + answer_section(c, style) + numbers_section(c, style) +
                     findings_section(c, style) + surfaces_section(c, style) + limits_section(c, style);
  return text + '\n' +
         wrapped(printable(best_at_sentence(c.comparison)), static_cast<std::size_t>(style.width), "", 2);
}

} // namespace asperity
