// Question, answer, plans, and what is wanted of them.
#include "html.h"
#include "sheet_page.h"

#include "asperity/report/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

std::string question(const SheetPage &page) {
  return page.plans() == 1 ? std::string("Will this plan do?")
                           : fmt::format("Which of these {} plans shall we cut?", page.plans());
}

std::string navigation() {
  return "<nav aria-label=\"On this sheet\" class=\"screen small\"><ul>"
         "<li><a href=\"#wanted\">Wanted and predicted</a></li><li><a href=\"#plans\">Plans</a></li>"
         "<li><a href=\"#pictures\">Pictures</a></li><li><a href=\"#turn\">Turn it</a></li>"
         "<li><a href=\"#strips\">Surfaces</a></li><li><a href=\"#profiles\">Profiles</a></li>"
         "<li><a href=\"#numbers\">Numbers</a></li><li><a href=\"#findings\">Findings</a></li>"
         "<li><a href=\"#limits\">Limits</a></li><li><a href=\"#files\">Files</a></li></ul></nav>\n";
}

std::string verdict_html(const ComparedPlan &plan) {
  if (plan.dangers > 0)
    return fmt::format("<span class=\"bad\">\u26a0 {} found: do not run it as it is</span>",
                       count_text(plan.dangers, "danger", "dangers"));
  if (plan.missed > 0)
    return fmt::format("<span class=\"bad\">\u2717 misses {} of {} wanted</span>", plan.missed, plan.checks);
  return plan.checks > 0 ? fmt::format("<span class=\"good\">\u2713 meets all {} wanted</span>", plan.checks)
                         : std::string("<span>nothing is asked of it</span>");
}

std::string cutters_text(const Job &job) {
  std::string text;
  for (const Cutter &cutter : job.cutters)
    text += fmt::format("{}T{}{}", text.empty() ? "" : "; ", cutter.number,
                        cutter.name.empty() ? "" : " " + cutter.name);
  return text;
}

const KeyNumber *number_of(const SheetPage &page, std::string_view id, std::size_t plan) {
  for (const ComparedNumber &row : page.input.comparison.numbers)
    if (row.number.id == id && row.of[plan])
      return &*row.of[plan];
  return nullptr;
}

std::string plan_card(const SheetPage &page, std::size_t plan) {
  const Outcome &outcome = page.outcome(plan);
  std::string out = fmt::format("<article class=\"card\"><h3>{} <bdi>{}</bdi></h3>\n<p>{}</p>\n<dl>",
                                letter_html(page, plan), escaped(outcome.job.title),
                                verdict_html(page.input.comparison.plans[plan]));
  if (const KeyNumber *time = number_of(page, "time_s", plan))
    out += "<dt>Time</dt><dd>" + number_html(page, *time, plan) + "</dd>";
  out += fmt::format("<dt>Material</dt><dd><bdi>{}</bdi></dd><dt>Cutters</dt><dd><bdi>{}</bdi></dd>"
                     "<dt>Program</dt><dd><code>{}</code>, {} lines</dd>",
                     escaped(outcome.job.material.name), escaped(cutters_text(outcome.job)),
                     escaped(outcome.program.file.filename().string()), outcome.program.line_count);
  return out + "</dl></article>\n";
}

/// What is asked, in the order it first comes.
struct Wish {
  std::string feature, what, wanted;
  bool operator==(const Wish &) const = default;
};

std::vector<Wish> wishes(const SheetPage &page) {
  std::vector<Wish> all;
  for (const Outcome *outcome : page.input.outcomes)
    for (const WantedCheck &check : outcome->checks)
      if (const Wish wish{check.feature, check.what, check.wanted};
          std::find(all.begin(), all.end(), wish) == all.end())
        all.push_back(wish);
  return all;
}

std::string check_cell(const SheetPage &page, const Wish &wish, std::size_t plan) {
  std::string inside = "<span class=\"soft\">not asked</span>";
  for (const WantedCheck &check : page.outcome(plan).checks)
    if (wish == Wish{check.feature, check.what, check.wanted}) {
      const std::string value =
          std::isfinite(check.predicted) ? value_html(check.predicted, check.unit) : std::string("not known");
      inside = fmt::format("<span class=\"{}\">{} {}</span> <span class=\"soft small\">{}</span>",
                           check.met ? "good" : "bad", check.met ? "\u2713" : "\u2717", value,
                           check.met ? "met" : "missed");
    }
  return fmt::format("<td><span class=\"only\">{}</span>{}</td>", letter_html(page, plan), inside);
}

} // namespace

std::string head_section(const SheetPage &page) {
  const std::string title = page.input.title.empty() ? common_title(page.input.outcomes) : page.input.title;
  std::string out = "<a class=\"skip\" href=\"#answer\">To the answer</a>\n<header>\n";
  out += fmt::format("<p class=\"soft small\"><bdi>{}</bdi> \u00b7 predicted before cutting, "
                     "{}</p>\n<h1>{}</h1>\n</header>\n",
                     escaped(title), escaped(page.input.date), question(page));
  out += fmt::format("<main>\n<section id=\"answer\" class=\"answer\" aria-labelledby=\"answer-h\">\n"
                     "<h2 id=\"answer-h\">Answer</h2>\n<p class=\"headline\">{}</p>\n",
                     typeset(page.answer.headline));
  if (page.answer.choice.plan && page.plans() > 1)
    out += fmt::format("<p>{} <bdi>{}</bdi></p>\n", letter_html(page, *page.answer.choice.plan),
                       escaped(page.outcome(*page.answer.choice.plan).job.title));
  out += list_html(page.answer.reasons);
  if (page.plans() > 1)
    out += fmt::format("<p>{}</p>\n", typeset(best_at_sentence(page.input.comparison)));
  out +=
      "<p class=\"soft small\">A prediction by a model, not a measurement; what it leaves out stands under "
      "<a href=\"#limits\">limits</a>. Whoever runs the machine decides.</p>\n</section>\n";
  return out + navigation();
}

std::string plan_section(const SheetPage &page) {
  std::string out = section_begin("plans", page.plans() == 1 ? "The plan" : "The plans");
  out += "<div class=\"grid\">\n";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += plan_card(page, k);
  return out + "</div>\n</section>\n";
}

std::string wanted_section(const SheetPage &page) {
  std::string out = section_begin("wanted", "Wanted and predicted");
  const std::vector<Wish> all = wishes(page);
  if (all.empty())
    return out + "<p>The job files ask for no size and no finish.</p>\n</section>\n";
  out += "<table class=\"stack\"><caption class=\"soft small\">What the jobs ask for, and what each plan is "
         "predicted to give</caption><thead><tr><th scope=\"col\">Wanted</th>";
  for (std::size_t k = 0; k < page.plans(); ++k)
    out += fmt::format("<th scope=\"col\">{}</th>", letter_html(page, k));
  out += "</tr></thead>\n<tbody>\n";
  for (const Wish &wish : all) {
    out += fmt::format("<tr><th scope=\"row\"><bdi>{}</bdi>, {}: {}</th>", escaped(wish.feature),
                       typeset(wish.what), typeset(wish.wanted));
    for (std::size_t k = 0; k < page.plans(); ++k)
      out += check_cell(page, wish, k);
    out += "</tr>\n";
  }
  return out + "</tbody></table>\n</section>\n";
}

} // namespace asperity
