// A comparison as a table.
#include "asperity/sheet/comparison_output.h"

#include "asperity/sheet/answer.h"
#include "csv_cell.h"

#include <fmt/format.h>

namespace asperity {

namespace {

std::string head(const ComparedOutcomes &c) {
  std::string text =
      "# Predicted by a model, not measured. Differences are plan minus A; low and high hold 95 %.\n";
  for (const ComparedPlan &plan : c.comparison.plans)
    text += fmt::format("# plan {}: {}\n", plan.letter, csv_cell(plan.title));
  text +=
      c.draws > 0 ? fmt::format("# uncertainty from {} draws\n", c.draws) : "# uncertainty not asked for\n";
  text += "id,feature,what,unit";
  for (const ComparedPlan &plan : c.comparison.plans)
    text += ',' + plan.letter;
  for (std::size_t k = 1; k < c.comparison.plans.size(); ++k)
    for (const char *what : {"minus A", "standing", "low", "high"})
      text += fmt::format(",{} {}", c.comparison.plans[k].letter, what);
  return text + '\n';
}

std::string difference_cells(const std::optional<Difference> &difference) {
  if (!difference)
    return ",,,,";
  return fmt::format(",{},{},{},{}", csv_number(difference->value), standing_text(difference->standing),
                     difference->spread ? csv_number(difference->spread->low) : "",
                     difference->spread ? csv_number(difference->spread->high) : "");
}

} // namespace

std::string comparison_csv_text(const ComparedOutcomes &c) {
  std::string text = head(c);
  for (const ComparedNumber &row : c.comparison.numbers) {
    text += fmt::format("{},{},{},{}", csv_cell(row.number.id), csv_cell(row.number.feature),
                        csv_cell(row.number.what), row.number.unit);
    for (const auto &number : row.of)
      text += ',' + (number ? csv_number(number->value) : std::string());
    for (std::size_t k = 1; k < row.difference.size(); ++k)
      text += difference_cells(row.difference[k]);
    text += '\n';
  }
  return text;
}

} // namespace asperity
