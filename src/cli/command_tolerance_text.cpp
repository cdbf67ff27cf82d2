// Words and tables of a tolerance run.
#include "command_tolerance_text.h"

#include "asperity/report/cautions.h"
#include "asperity/report/number_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// A share of the spread smaller than this says nothing with a few hundred draws.
constexpr double kWorthNaming = 0.1;
constexpr std::size_t kMostNamed = 3;

std::string without_controls(std::string text) {
  std::erase_if(text, [](unsigned char c) { return c < 32 || c == 127; });
  return text;
}

/// Four digits that mean something, a plain number.
std::string short_text(double value) { return fmt::format("{:.4g}", value); }

const UncertainInput *input_named(const Tolerance &tolerance, const std::string &id) {
  for (const UncertainInput &input : tolerance.inputs)
    if (input.id == id)
      return &input;
  return nullptr;
}

std::string causes_text(const Tolerance &tolerance, const Band &band) {
  std::string text;
  std::size_t named = 0;
  for (const VarianceShare &each : band.shares) {
    if (each.share < kWorthNaming || named == kMostNamed)
      break;
    const UncertainInput *input = input_named(tolerance, each.input);
    text += fmt::format("{}{} {:.0f} %", named++ > 0 ? ", " : "", input ? input->what : each.input,
                        100.0 * std::min(each.share, 1.0));
  }
  return text;
}

std::string band_line(const Tolerance &tolerance, const Band &band) {
  const std::string name =
      without_controls(band.feature.empty() ? band.what : fmt::format("{}: {}", band.feature, band.what)) +
      (band.unit.empty() ? "" : fmt::format(" [{}]", band.unit));
  if (band.standard_deviation <= 1e-9 * std::abs(band.mean))
    return fmt::format("  {:<44} {:>9}   does not depend on them\n", name, short_text(band.value));
  return fmt::format("  {:<44} {:>9} {:>9} {:>9}   {:>9} to {:<9} {}\n", name, short_text(band.value),
                     short_text(band.mean), short_text(band.standard_deviation), short_text(band.low),
                     short_text(band.high), causes_text(tolerance, band));
}

std::string bands_text(const Tolerance &tolerance) {
  std::string text = fmt::format("\nNumbers\n  {:<44} {:>9} {:>9} {:>9}   {:<22} {}\n", "", "stated", "mean",
                                 "std dev", "95 % of the draws", "mostly from");
  for (const Band &band : tolerance.bands)
    text += band_line(tolerance, band);
  return text;
}

std::string conformance_text(const Tolerance &tolerance) {
  if (tolerance.conformances.empty())
    return {};
  std::string text = "\nHow often what is wanted is met (conformance probability)\n";
  for (const Conformance &each : tolerance.conformances)
    text += fmt::format("  {:>3.0f} %  {}: {}, {}\n", 100.0 * each.met_share, without_controls(each.feature),
                        each.what, each.wanted);
  return text;
}

std::string matters_text(const Tolerance &tolerance) {
  std::string text = "\nWhat matters most, by its mean share of the spread of what judges the plan\n";
  std::size_t named = 0;
  for (const VarianceShare &each : tolerance.most_wanted) {
    const UncertainInput *input = input_named(tolerance, each.input);
    if (!input || each.share <= 0.0)
      continue;
    text += fmt::format("  {:>3.0f} %  {}: {} ({})\n", 100.0 * each.share, input->what,
                        uncertainty_text(*input), input->source);
    if (named++ == 0)
      text += fmt::format("         Measure this first. {}\n", input->measure);
  }
  return named > 0 ? text : "\nToo few draws to say what matters most; ask for more with --draws.\n";
}

std::string notes_text(const ToleranceShown &shown) {
  const Tolerance &t = shown.tolerance;
  std::string text = fmt::format(
      "\nNotes\n"
      "  Stated uncertainties are expanded ones with coverage factor 2 (JCGM 100). Lengths are drawn from a\n"
      "  normal, shares from a log-normal distribution, each on its own; bands hold 95 % of {} draws, as "
      "many\n"
      "  left out below as above (JCGM 101, 7.7). Their ends waver by some {:.0f} % of the band's half "
      "width.\n"
      "  Shares are first-order; what inputs do together, and what the charts' grid adds, is in none of "
      "them.\n"
      "  Charts are {} times as coarse as in a single prediction; numbers may differ from it a little.\n",
      t.draws, 100.0 * 1.37 / std::sqrt(static_cast<double>(t.draws)), shown.options.coarser);
  if (!shown.options.roughness)
    text += "  Roughness was not read (--roughness does, and takes several times as long).\n";
  text += "  What the model leaves out (tearing, chatter, built-up edge, melting, voids) is in no band.\n";
  if (!shown.job.material.calibrated)
    text += "  Force coefficients are table values, not calibrated: asperity calibrate fits them to a cut.\n";
  text += "\nCautions\n";
  for (const std::string_view caution : cautions())
    text += fmt::format("  {}\n", caution);
  return text;
}

std::string csv_cell(const std::string &text) {
  std::string cell;
  for (const char c : without_controls(text))
    cell.append(c == '"' ? 2 : 1, c);
  return cell.find_first_of(",\"") == std::string::npos ? cell : fmt::format("\"{}\"", cell);
}

nlohmann::ordered_json json_of(const Band &band) {
  nlohmann::ordered_json shares = nlohmann::ordered_json::object();
  for (const VarianceShare &each : band.shares)
    shares[each.input] = each.share;
  return {{"id", band.id},
          {"feature", band.feature},
          {"what", band.what},
          {"unit", band.unit},
          {"stated", band.value},
          {"mean", band.mean},
          {"standard_deviation", band.standard_deviation},
          {"low", band.low},
          {"high", band.high},
          {"draws", band.draws},
          {"variance_shares", shares}};
}

} // namespace

std::string uncertainty_text(const UncertainInput &input) {
  return input.is_share ? fmt::format("1/{0:.4g} to {0:.4g} times", 1.0 + input.expanded)
                        : fmt::format("+-{:.4g} mm", input.expanded);
}

std::string tolerance_text(const ToleranceShown &shown) {
  const Tolerance &t = shown.tolerance;
  std::string text = fmt::format("{}\nHow sure: {} draws of {} uncertain values, seed {}\n",
                                 without_controls(shown.job.title), t.draws, t.inputs.size(), t.seed);
  return text + bands_text(t) + conformance_text(t) + matters_text(t) + notes_text(shown);
}

std::string tolerance_csv(const ToleranceShown &shown) {
  const Tolerance &t = shown.tolerance;
  std::string text = fmt::format(
      "# {} draws, seed {}; low to high hold 95 % of the draws; share columns: first-order shares of "
      "variance\nid,feature,what,unit,stated,mean,standard_deviation,low,high,draws",
      t.draws, t.seed);
  for (const UncertainInput &input : t.inputs)
    text += fmt::format(",share {}", csv_cell(input.id));
  text += '\n';
  for (const Band &band : t.bands) {
    text += fmt::format("{},{},{},{},{},{},{},{},{},{}", csv_cell(band.id), csv_cell(band.feature),
                        csv_cell(band.what), band.unit, band.value, band.mean, band.standard_deviation,
                        band.low, band.high, band.draws);
    for (const UncertainInput &input : t.inputs) {
      const auto found = std::find_if(band.shares.begin(), band.shares.end(),
                                      [&](const VarianceShare &each) { return each.input == input.id; });
      text += ',';
      if (found != band.shares.end())
        text += fmt::format("{}", found->share);
    }
    text += '\n';
  }
  return text;
}

std::string tolerance_json(const ToleranceShown &shown) {
  const Tolerance &t = shown.tolerance;
  nlohmann::ordered_json root{{"title", shown.job.title},
                              {"draws", t.draws},
                              {"seed", t.seed},
                              {"chart_spacing_factor", shown.options.coarser},
                              {"roughness_read", shown.options.roughness},
                              {"coverage", 0.95}};
  for (const UncertainInput &input : t.inputs)
    root["inputs"].push_back({{"id", input.id},
                              {"what", input.what},
                              {"expanded", input.expanded},
                              {"coverage_factor", 2},
                              {"is_share", input.is_share},
                              {"source", input.source},
                              {"measure", input.measure}});
  for (const Band &band : t.bands)
    root["numbers"].push_back(json_of(band));
  for (const Conformance &each : t.conformances)
    root["conformance"].push_back({{"feature", each.feature},
                                   {"what", each.what},
                                   {"wanted", each.wanted},
                                   {"probability", each.met_share}});
  for (const VarianceShare &each : t.most_wanted)
    root["mean_share"].push_back({{"input", each.input}, {"share", each.share}});
  for (const std::string_view caution : cautions())
    root["cautions"].push_back(caution);
  return root.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + '\n';
}

} // namespace asperity
