// A study as comma-separated values.
#include "asperity/report/study_csv.h"

#include "text_layout.h"

#include <fmt/format.h>

#include <algorithm>

namespace asperity {

namespace {

std::string cell(const std::string &text) {
  const std::string plain = printable(text);
  if (plain.find_first_of(",\"#") == std::string::npos)
    return plain;
  std::string quoted = "\"";
  for (const char c : plain)
    quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
  return quoted + '"';
}

std::string head_line(const StudyResults &results, const std::vector<KeyNumber> &columns) {
  std::string line = "combination";
  for (const Factor &factor : results.head.grid.factors)
    line += ',' + cell(factor.key);
  line += ",status,wanted_missed,worst_shortfall";
  for (const KeyNumber &column : columns)
    line += ',' + cell(column.id);
  return line + ",why\n";
}

std::string row(const StudyResults &results, const Trial &trial, const std::vector<KeyNumber> &columns) {
  std::string line = fmt::format("{}", trial.combination + 1);
  for (const JobChange &change : results.head.grid.changes(trial.combination))
    line += ',' + cell(shown_value(change.value));
  line += fmt::format(",{}", name_of(trial.status));
  const auto missed = std::count_if(trial.checks.begin(), trial.checks.end(),
                                    [](const TrialCheck &check) { return !check.met; });
  line += trial.status == TrialStatus::done ? fmt::format(",{},{}", missed, trial.worst_shortfall()) : ",,";
  for (const KeyNumber &column : columns) {
    const KeyNumber *number = find_number(trial.numbers, column.id);
    line += number ? fmt::format(",{}", number->value) : ",";
  }
  return line + ',' + cell(trial.why) + '\n';
}

} // namespace

std::string study_csv_text(const StudyResults &results) {
  const std::vector<KeyNumber> columns = number_columns(results);
  std::string text =
      fmt::format("# A study of predicted plans: a model's word, not a measurement.\n"
                  "# job: {}\n# study: {}\n# combinations: {} of {}\n"
                  "# units stand at the ends of the names; worst_shortfall: 0 = all met\n",
                  printable(results.head.job_file.filename().string()), results.head.identity.sha256(),
                  results.trials.size(), results.head.grid.size());
  text += head_line(results, columns);
  for (const Trial &trial : results.trials)
    text += row(results, trial, columns);
  return text;
}

} // namespace asperity
