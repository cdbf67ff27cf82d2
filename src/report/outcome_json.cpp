// One prediction as JSON: the whole document, put together from its parts.
#include "asperity/report/outcome_json.h"

#include "asperity/report/cautions.h"
#include "asperity/report/summary_text.h"
#include "cut_figures.h"
#include "feature_json.h"
#include "json_value.h"
#include "wanted.h"

namespace asperity {

namespace {

using nlohmann::json;

std::string status_text(Status status) {
  switch (status) {
  case Status::done:
    return "done";
  case Status::cancelled:
    return "cancelled";
  case Status::too_large:
    return "too_large";
  }
  return "done";
}

json verdict_json(const Outcome &outcome) {
  return {{"all_well", is_all_well(outcome)},
          {"checks", outcome.checks.size()},
          {"checks_missed", missed_checks(outcome)},
          {"dangers", count_of(outcome, Weight::danger)},
          {"flaws", count_of(outcome, Weight::flaw)}};
}

json job_json(const Outcome &outcome) {
  return {{"title", outcome.job.title},
          {"file", outcome.job.file.string()},
          {"program_file", outcome.program.file.string()},
          {"program_lines", outcome.program.line_count},
          {"program_moves", outcome.program_moves},
          {"program_messages", outcome.program.messages},
          {"material", outcome.job.material.name},
          {"material_is_calibrated", outcome.job.material.calibrated}};
}

json checks_json(const Outcome &outcome) {
  json out = json::array();
  for (const WantedCheck &check : outcome.checks)
    out.push_back({{"feature", check.feature},
                   {"what", check.what},
                   {"wanted", check.wanted},
                   {"predicted", number(check.predicted)},
                   {"unit", check.unit},
                   {"met", check.met}});
  return out;
}

json open_wishes_json(const Outcome &outcome) {
  json out = json::array();
  for (const Unanswered &wish : unanswered_wishes(outcome))
    out.push_back({{"feature", wish.feature}, {"what", wish.what}, {"wanted", wish.wanted}});
  return out;
}

json time_json(const Outcome &outcome) {
  json tools = json::array();
  for (const ToolTime &tool : time_per_tool(outcome.path)) {
    const Cutter *cutter = outcome.job.cutter(tool.tool);
    tools.push_back({{"tool", tool.tool},
                     {"name", cutter ? cutter->name : std::string()},
                     {"total_s", number(tool.total_s)},
                     {"cutting_s", number(tool.cutting_s)}});
  }
  return {{"total_s", number(outcome.path.duration_s)},
          {"cutting_s", number(outcome.path.cutting_s)},
          {"tools", std::move(tools)}};
}

json peak_json(const std::optional<Peak> &peak) {
  if (!peak)
    return nullptr;
  return {{"value", number(peak->value)},
          {"time_s", number(peak->time_s)},
          {"place_mm", place(peak->place_mm)},
          {"line", peak->line},
          {"tool", peak->tool}};
}

json cut_json(const Outcome &outcome) {
  const CutPeaks peaks = cut_peaks(outcome.cut, outcome.path);
  return {{"in_contact_s", number(peaks.in_contact_s)},
          {"peak_side_force_N", peak_json(peaks.force_N)},
          {"peak_power_W", peak_json(peaks.power_W)},
          {"peak_chip_temperature_C", peak_json(peaks.chip_temperature_C)},
          {"peak_tip_bend_mm", peak_json(peaks.tip_bend_mm)}};
}

json finding_json(const Outcome &outcome, const Finding &finding) {
  json size = json::array();
  for (const Quantity &quantity : finding.size)
    size.push_back({{"name", quantity.name}, {"value", number(quantity.value)}, {"unit", quantity.unit}});
  const bool has_feature =
      finding.feature >= 0 && static_cast<std::size_t>(finding.feature) < outcome.job.features.size();
  return {{"kind", name_of(finding.kind)},
          {"weight", weight_text(finding.weight)},
          {"feature", has_feature
                          ? json(name_of(outcome.job.features[static_cast<std::size_t>(finding.feature)]))
                          : json()},
          {"place_mm", place(finding.place_mm)},
          {"where", finding.where},
          {"size", std::move(size)},
          {"cause", finding.cause},
          {"remedy", finding.remedy},
          {"lines", finding.lines},
          {"line_count", finding.line_count},
          {"rests_on", finding.rests_on}};
}

json findings_json(const Outcome &outcome) {
  json out = json::array();
  for (const Finding &finding : outcome.findings)
    out.push_back(finding_json(outcome, finding));
  return out;
}

} // namespace

json outcome_json(const Outcome &outcome) {
  json out = {{"format", "asperity-prediction"},
              {"version", kJsonVersion},
              {"status", status_text(outcome.status)},
              {"why", outcome.why},
              {"verdict", verdict_json(outcome)},
              {"job", job_json(outcome)},
              {"checks", checks_json(outcome)},
              {"not_predicted", open_wishes_json(outcome)},
              {"time", time_json(outcome)},
              {"cut", cut_json(outcome)},
              {"findings", findings_json(outcome)},
              {"notes", outcome.notes},
              {"defaults_used", outcome.job.defaults_used}};
  out["features"] = json::array();
  for (std::size_t i = 0; i < outcome.job.features.size(); ++i)
    out["features"].push_back(feature_json(outcome, i));
  out["cautions"] = json::array();
  for (std::string_view caution : cautions())
    out["cautions"].push_back(caution);
  return out;
}

std::string outcome_json_text(const Outcome &outcome) {
  return outcome_json(outcome).dump(2, ' ', false, json::error_handler_t::replace) + '\n';
}

} // namespace asperity
