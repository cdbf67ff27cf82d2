// Profiles of all features as one table.
#include "asperity/sheet/export.h"

#include "asperity/report/outcome_json.h"
#include "csv_cell.h"

#include <fmt/format.h>

namespace asperity {

namespace {

using nlohmann::json;

std::string cell_of(const json &value) {
  return value.is_number() ? csv_number(value.get<double>()) : std::string();
}

void add_profile(std::string &text, const std::string &feature, const json &profile) {
  for (const auto &[key, places] : profile.items()) {
    if (!key.ends_with("_mm"))
      continue;
    for (std::size_t k = 0; k < places.size(); ++k)
      text += fmt::format("{},{},{},{},{}\n", csv_cell(feature), key.substr(0, key.size() - 3),
                          cell_of(places[k]), cell_of(profile.at("mean_residual_um").at(k)),
                          cell_of(profile.at("cut_share").at(k)));
  }
}

} // namespace

std::string profile_csv_text(const Outcome &outcome) {
  const json prediction = outcome_json(outcome);
  std::string text = fmt::format(
      "# {}\n# Predicted by a model, not measured. Mean over the cut cells; + stock left, - cut too deep.\n"
      "feature,direction,position_mm,mean_residual_um,cut_share\n",
      csv_cell(outcome.job.title));
  for (const json &feature : prediction.at("features"))
    for (const char *key : {"profile_along", "profile_up"})
      if (feature.contains(key))
        add_profile(text, feature.value("name", ""), feature.at(key));
  return text;
}

} // namespace asperity
