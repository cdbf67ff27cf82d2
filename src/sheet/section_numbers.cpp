// The table of all key numbers, and the findings with what cures them.
#include "html.h"
#include "sheet_page.h"

#include "asperity/compare/matched_finding.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

std::string spread_words(const ComparedNumber &row, const Difference &difference) {
  if (!difference.spread)
    return {};
  return fmt::format(" ({} to {} with 95\u00a0%)",
                     typeset(signed_text(difference.spread->low, row.number.unit)),
                     typeset(signed_text(difference.spread->high, row.number.unit)));
}

std::string against_html(const ComparedNumber &row, std::size_t plan) {
  const auto &difference = row.difference[plan];
  if (!difference)
    return {};
  const std::string_view word = standing_text(difference->standing);
  const std::string_view tone = difference->standing == Standing::better  ? " good"
                                : difference->standing == Standing::worse ? " bad"
                                                                          : "";
  const bool is_within =
      difference->standing == Standing::same && difference->spread && difference->spread->holds_nought();
  return fmt::format("<span class=\"against{}\">{}{}{}{}</span>", tone,
                     typeset(signed_text(difference->value, row.number.unit)), word.empty() ? "" : ", ",
                     is_within ? "within the uncertainty" : word, spread_words(row, *difference));
}

std::string number_row(const SheetPage &page, const ComparedNumber &row) {
  std::string out = fmt::format("<tr><th scope=\"row\">{}</th>", typeset(row.number.what));
  for (std::size_t k = 0; k < page.plans(); ++k) {
    out += fmt::format("<td><span class=\"only\">{}</span>", letter_html(page, k));
    out += row.of[k] ? number_html(page, *row.of[k], k) : std::string("<span class=\"soft\">\u2013</span>");
    out += against_html(row, k) + "</td>";
  }
  return out + "</tr>\n";
}

const Finding &finding_at(const Outcome &outcome, int index) {
  return outcome.findings[static_cast<std::size_t>(index)];
}

/// How a finding of a later plan stands against the first plan's.
std::string change_words(const SheetPage &page, std::size_t plan, std::size_t index) {
  if (plan == 0)
    return {};
  for (const MatchedFinding &match : matched_findings(page.outcome(0), page.outcome(plan)))
    if (match.other == static_cast<int>(index)) {
      if (match.change == Change::fresh)
        return fmt::format("new against plan {}", page.letter(0));
      return fmt::format("{} {} plan {}'s number {}", name_of(match.change),
                         match.change == Change::same ? "as" : "than", page.letter(0), match.first + 1);
    }
  return {};
}

std::string_view weight_word(Weight weight) {
  switch (weight) {
  case Weight::danger:
    return "danger";
  case Weight::flaw:
    return "flaw";
  case Weight::note:
    break;
  }
  return "note";
}

std::string finding_html(const SheetPage &page, std::size_t plan, std::size_t index) {
  const Outcome &outcome = page.outcome(plan);
  const Finding &finding = outcome.findings[index];
  const bool has_feature =
      finding.feature >= 0 && static_cast<std::size_t>(finding.feature) < outcome.job.features.size();
  const std::string feature =
      has_feature
          ? fmt::format(" on <bdi>{}</bdi>",
                        escaped(name_of(outcome.job.features[static_cast<std::size_t>(finding.feature)])))
          : std::string();
  std::string sizes;
  for (const Quantity &quantity : finding.size)
    sizes += fmt::format("{}{} {}", sizes.empty() ? "" : ", ", quantity.name,
                         quantity_text(quantity.value, quantity.unit));
  const std::string change = change_words(page, plan, index);
  std::string out = fmt::format(
      "<div class=\"finding {0}\" id=\"f-{1}-{2}\"><p><strong>{1}{2} \u00b7 {3}: {4}</strong>{5}{6}</p>\n",
      weight_word(finding.weight), page.letter(plan), index + 1, weight_word(finding.weight),
      name_of(finding.kind), feature, change.empty() ? "" : " \u2013 " + change);
  out += fmt::format("<p class=\"small\">{}; {}</p>\n<p>{}</p>\n", typeset(finding.where), typeset(sizes),
                     typeset(finding.cause));
  if (!finding.remedy.empty())
    out += fmt::format("<p><strong>Remedy:</strong> {}</p>\n", typeset(finding.remedy));
  std::string foot = lines_text(finding.lines, finding.line_count);
  if (!foot.empty())
    foot = "Program " + foot + ". ";
  if (!finding.rests_on.empty())
    foot += "Rests on: " + finding.rests_on + ".";
  return out + (foot.empty() ? "" : fmt::format("<p class=\"small soft\">{}</p>\n", typeset(foot))) +
         "</div>\n";
}

std::string gone_html(const SheetPage &page, std::size_t plan) {
  std::vector<std::string> gone;
  for (const MatchedFinding &match : matched_findings(page.outcome(0), page.outcome(plan)))
    if (match.change == Change::gone)
      gone.push_back(fmt::format("{}{} ({})", page.letter(0), match.first + 1,
                                 name_of(finding_at(page.outcome(0), match.first).kind)));
  if (gone.empty())
    return {};
  std::string text;
  for (const std::string &one : gone)
    text += (text.empty() ? "" : ", ") + one;
  return fmt::format("<p>Gone against plan {}: {}.</p>\n", page.letter(0), typeset(text));
}

} // namespace

std::string number_section(const SheetPage &page) {
  std::string out = section_begin("numbers", "All numbers");
  if (page.plans() > 1)
    out += fmt::format("<p>Below each number of a later plan: the difference to plan {}. {}</p>\n",
                       page.letter(0), typeset(uncertainty_sentence(page.input.comparison)));
  out += "<table class=\"stack\"><thead><tr><th scope=\"col\">Number</th>";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += fmt::format("<th scope=\"col\">{}</th>", letter_html(page, k));
  out += "</tr></thead>\n<tbody>\n";
  std::string feature;
  for (const ComparedNumber &row : page.input.comparison.numbers) {
    if (row.number.feature != feature) {
      feature = row.number.feature;
      out +=
          fmt::format("<tr class=\"group\"><th colspan=\"{}\" scope=\"colgroup\"><bdi>{}</bdi></th></tr>\n",
                      page.plans() + 1, escaped(feature));
    }
    out += number_row(page, row);
  }
  return out + "</tbody></table>\n</section>\n";
}

std::string finding_section(const SheetPage &page) {
  std::string out = section_begin("findings", "Findings and what cures them");
  for (std::size_t k = 0; k < page.plans(); ++k) {
    const std::size_t count = page.outcome(k).findings.size();
    out += fmt::format("<h3>{} {}</h3>\n", letter_html(page, k),
                       count == 0 ? std::string("nothing found") : count_text(count, "finding", "findings"));
    for (std::size_t i = 0; i < count; ++i)
      out += finding_html(page, k, i);
    if (k > 0)
      out += gone_html(page, k);
  }
  return out + "</section>\n";
}

} // namespace asperity
