// A study in words.
#include "asperity/report/study_text.h"

#include "asperity/report/number_text.h"
#include "sections.h"
#include "study_table.h"
#include "text_layout.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

std::string head_section(const StudyView &view, const SummaryStyle &style) {
  const StudyGrid &grid = view.results.head.grid;
  std::string text =
      heading(fmt::format("Study of {}", printable(view.results.head.job_file.filename().string())), style) +
      '\n';
  for (const Factor &factor : grid.factors) {
    std::string values;
    for (const std::string &value : factor.values)
      values += (values.empty() ? "" : ", ") + printable(shown_value(value));
    text += wrapped(values, static_cast<std::size_t>(style.width), "  " + factor.key + ": ", 6);
  }
  text += fmt::format("  {} of {} combinations are here", view.done(), view.all());
  if (const std::size_t wrong = view.count(TrialStatus::wrong); wrong > 0)
    text += fmt::format(", {} of them wrong", wrong);
  if (const std::size_t large = view.count(TrialStatus::too_large); large > 0)
    text += fmt::format(", {} without room in memory (the same command tries again)", large);
  return text + ".\n";
}

std::string front_note(const StudyView &view) {
  const Front &front = view.front;
  if (!front.has_direction)
    return fmt::format("  For {} or {} neither less nor more is better, so there is no front.\n", front.x.id,
                       front.y.id);
  return fmt::format(
      "  * front: no other combination is as good in both {} and {}, and better in one.  + best plan\n",
      front.x.id, front.y.id);
}

std::string influence_section(const StudyView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  if (view.influence.sum_of_squares == 0.0)
    return heading("Influence", style) + '\n' +
           fmt::format("  {} is the same in all combinations.\n", view.front.y.id);
  std::string text = heading("Influence on " + view.front.y.id, style) + '\n';
  text += influence_table(view, width);
  text += wrapped("share = n (mean at a value - mean)^2, summed over its values, by the whole sum of squares "
                  "(analysis of variance, main effects).",
                  width, "  ", 2);
  if (!view.influence.is_balanced)
    text += wrapped("Combinations are missing, so the shares overlap: a guide only.", width, "  ", 2);
  return text;
}

std::string check_text(const TrialCheck &check) {
  const std::string where = check.feature.empty() ? std::string() : printable(check.feature) + ", ";
  const std::string predicted =
      std::isnan(check.predicted) ? "not reached" : quantity_text(check.predicted, check.unit);
  const std::string beyond = check.met || !std::isfinite(check.shortfall)
                                 ? std::string()
                                 : fmt::format(" (beyond by {})", share_text(check.shortfall));
  return fmt::format("{}{}: {}, wanted {}{}", where, printable(check.what), predicted,
                     printable(check.wanted), beyond);
}

std::string plan_name(const StudyView &view, const Trial &trial) {
  const KeyNumber *time = find_number(trial.numbers, "time_s");
  return fmt::format("combination {}: {}; {}", trial.combination + 1,
                     printable(combination_text(view.results.head.grid, trial.combination)),
                     time ? duration_text(time->value) : "time unknown");
}

std::string best_lines(const StudyView &view, std::size_t width) {
  const Trial &trial = view.results.trials[*view.best.best];
  std::string text = wrapped(plan_name(view, trial), width, "  Fastest that meets everything wanted: ", 4);
  if (!view.best.wants_anything)
    text = wrapped("The job wants no size and no finish, so this is only the fastest without a danger: " +
                       plan_name(view, trial),
                   width, "  ", 4);
  for (const TrialCheck &check : trial.checks)
    text += wrapped(check_text(check), width, "    ", 6);
  for (const ExtraLimit &limit : view.limits)
    if (const KeyNumber *number = find_number(trial.numbers, limit.id))
      text += wrapped(fmt::format("{}: {}, asked: at {} {:g}", limit.id,
                                  quantity_text(number->value, number->unit),
                                  limit.is_upper ? "most" : "least", limit.limit),
                      width, "    ", 6);
  return text + fmt::format("  {} of {} combinations meet everything without a danger.\n",
                            view.best.well_count, view.done());
}

std::string nearest_lines(const StudyView &view, std::size_t width) {
  const Trial &trial = view.results.trials[*view.best.nearest];
  std::string text =
      wrapped("No combination meets everything wanted without a danger. The nearest misses by the least:",
              width, "  ", 2) +
      wrapped(plan_name(view, trial), width, "  ", 4);
  for (const TrialCheck &check : missed_checks(trial, view.limits))
    text += wrapped(check_text(check), width, "    MISSED ", 6);
  if (trial.dangers > 0)
    text += fmt::format("    {} found: predict its job to see which.\n",
                        count_text(trial.dangers, "danger", "dangers"));
  return text;
}

std::string best_section(const StudyView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = heading("Best plan", style) + '\n';
  if (view.best.best)
    text += best_lines(view, width);
  else if (view.best.nearest)
    text += nearest_lines(view, width);
  else
    text += "  No combination could be predicted.\n";
  if (view.done() < view.all())
    text += fmt::format("  Of the {} combinations that are here; {} are still to do.\n", view.done(),
                        view.all() - view.done());
  return text;
}

std::string basis_section(const SummaryStyle &style) {
  std::string text = heading("What this rests on", style) + '\n';
  text += wrapped("Every row is a prediction: geometry and elastic bending, with the job's values and, where "
                  "it gives none, defaults that are not calibrated. Differences between plans are surer than "
                  "the numbers themselves; asperity predict names what each rests on.",
                  static_cast<std::size_t>(style.width), "  ", 2);
  return text;
}

} // namespace

std::string study_text(const StudyView &view, const SummaryStyle &style) {
  const auto width = static_cast<std::size_t>(style.width);
  std::string text = head_section(view, style) + '\n' + trial_table(view, width);
  if (!view.front.points.empty())
    text += front_note(view) + '\n' + influence_section(view, style);
  return text + '\n' + best_section(view, style) + '\n' + basis_section(style) + '\n' +
         cautions_section(style);
}

std::string best_text(const StudyView &view, const SummaryStyle &style) {
  return head_section(view, style) + '\n' + best_section(view, style) + '\n' + basis_section(style) + '\n' +
         cautions_section(style);
}

} // namespace asperity
