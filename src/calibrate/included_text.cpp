// The fitted values as TOML that a job includes.
#include "asperity/calibrate/calibration.h"

#include "asperity/job/job_change.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Six digits: far below any fitted value's uncertainty.
std::string number(double value) { return toml_text(std::stod(fmt::format("{:.6g}", value))); }

/// Rounded up to two digits, as uncertainties are stated (JCGM 100, 7.2.6).
std::string uncertainty(double value) {
  const double unit = value > 0.0 ? std::pow(10.0, std::floor(std::log10(value)) - 1.0) : 1.0;
  return toml_text(std::stod(fmt::format("{:.2g}", std::ceil(value / unit - 1e-9) * unit)));
}

const FittedValue *find(const Calibration &calibration, InputKind kind, int cutter = 0) {
  for (const FittedValue &each : calibration.fitted)
    if (each.input.kind == kind && each.input.cutter == cutter)
      return &each;
  return nullptr;
}

struct Fitted {
  const Calibration &c;
  const FittedValue *force = find(c, InputKind::force);
  const FittedValue *cutting = force ? force : find(c, InputKind::cutting_force);
  const FittedValue *edge = force ? force : find(c, InputKind::edge_force);
  const FittedValue *stiffness = find(c, InputKind::stiffness);
};

std::string material_text(const Fitted &fitted) {
  const Material &m = fitted.c.job.material;
  std::string text = fmt::format("\n[material]\nname = {}\n", toml_text(std::string_view(m.name)));
  if (fitted.cutting)
    text += fmt::format("ktc_N_per_mm2 = {}\nkrc_N_per_mm2 = {}\nkac_N_per_mm2 = {}\n",
                        number(m.ktc_N_per_mm2), number(m.krc_N_per_mm2), number(m.kac_N_per_mm2));
  if (fitted.edge)
    text += fmt::format("kte_N_per_mm = {}\nkre_N_per_mm = {}\nkae_N_per_mm = {}\n", number(m.kte_N_per_mm),
                        number(m.kre_N_per_mm), number(m.kae_N_per_mm));
  return text + "calibrated = true\n";
}

/// One cutter's lines, or nothing.
std::string cutter_text(const Calibration &c, const Cutter &cutter) {
  std::string text;
  if (find(c, InputKind::runout, cutter.number))
    text += fmt::format("runout_mm = {}\n", number(cutter.runout_mm));
  if (find(c, InputKind::cutter_diameter, cutter.number))
    text += fmt::format("diameter_error_mm = {}\n", number(cutter.diameter_error_mm));
  return text.empty() ? text : fmt::format("\n[[cutter]]\nnumber = {}\n{}", cutter.number, text);
}

/// Largest expanded uncertainty among fitted values of a kind; a key holds for all cutters.
std::optional<double> largest(const Calibration &c, InputKind kind) {
  std::optional<double> most;
  for (const FittedValue &each : c.fitted)
    if (each.input.kind == kind)
      most = std::max(most.value_or(0.0), each.expanded);
  return most;
}

struct UncertaintyKey {
  std::string_view key;
  InputKind kind;
};
constexpr UncertaintyKey kUncertaintyKeys[] = {
    {"cutting_force_share", InputKind::cutting_force}, {"cutting_force_share", InputKind::force},
    {"edge_force_share", InputKind::edge_force},       {"edge_force_share", InputKind::force},
    {"stiffness_share", InputKind::stiffness},         {"runout_share", InputKind::runout},
    {"cutter_diameter_mm", InputKind::cutter_diameter}};

std::string uncertainty_text(const Calibration &c) {
  std::string text;
  for (const UncertaintyKey &each : kUncertaintyKeys)
    if (const auto expanded = largest(c, each.kind))
      text += fmt::format("{} = {}\n", each.key, uncertainty(*expanded));
  // A material that counts as calibrated gets narrow defaults: the part not fitted keeps what was stated of
  // it.
  const Fitted fitted{c};
  if (fitted.edge && !fitted.cutting)
    text += fmt::format("cutting_force_share = {}\n", number(c.job.uncertainty.cutting_force_share));
  if (fitted.cutting && !fitted.edge)
    text += fmt::format("edge_force_share = {}\n", number(c.job.uncertainty.edge_force_share));
  return text.empty() ? text : "\n[uncertainty] # expanded, coverage factor 2\n" + text;
}

std::string zero_comments(const Calibration &c) {
  std::string text;
  for (const FittedValue &each : c.fitted)
    if (each.input.kind == InputKind::x_zero || each.input.kind == InputKind::y_zero ||
        each.input.kind == InputKind::z_zero)
      text += fmt::format("# {} was off by {} mm, +-{} mm: of that set-up alone\n", each.input.what,
                          number(each.value), uncertainty(each.expanded));
  return text;
}

bool is_default(const Job &job, const std::string &key) {
  return std::any_of(job.defaults_used.begin(), job.defaults_used.end(),
                     [&](const std::string &each) { return each.starts_with(key + " ="); });
}

} // namespace

std::string included_text(const Calibration &calibration, const Measured &measured) {
  const Fitted fitted{calibration};
  std::string text =
      fmt::format("# Written by asperity calibrate: fitted to {} on {}.\n"
                  "# A job takes it in by include = \"this file's name\"; the job's own values win.\n",
                  measured.file.filename().string(), calibration.job.file.filename().string());
  text += zero_comments(calibration);
  if (fitted.cutting || fitted.edge)
    text += material_text(fitted);
  if (fitted.stiffness)
    text += fmt::format("\n[machine]\nstiffness_xy_N_per_um = {}\nstiffness_z_N_per_um = {}\n",
                        number(calibration.job.machine.stiffness_xy_N_per_um),
                        number(calibration.job.machine.stiffness_z_N_per_um));
  for (const Cutter &cutter : calibration.job.cutters)
    text += cutter_text(calibration, cutter);
  return text + uncertainty_text(calibration);
}

std::vector<std::string> keys_in_the_way(const Calibration &calibration, const Job &job) {
  const Fitted fitted{calibration};
  std::vector<std::string> keys;
  const auto add = [&](const std::string &key) {
    if (!is_default(job, key))
      keys.push_back(key);
  };
  for (const char *key : {"ktc_N_per_mm2", "krc_N_per_mm2", "kac_N_per_mm2"})
    if (fitted.cutting)
      add(std::string("material.") + key);
  for (const char *key : {"kte_N_per_mm", "kre_N_per_mm", "kae_N_per_mm"})
    if (fitted.edge)
      add(std::string("material.") + key);
  if (fitted.stiffness) {
    add("machine.stiffness_xy_N_per_um");
    add("machine.stiffness_z_N_per_um");
  }
  for (const Cutter &cutter : job.cutters) {
    if (find(calibration, InputKind::runout, cutter.number))
      add(fmt::format("cutter {}.runout_mm", cutter.number));
    if (find(calibration, InputKind::cutter_diameter, cutter.number))
      add(fmt::format("cutter {}.diameter_error_mm", cutter.number));
  }
  for (const UncertaintyKey &each : kUncertaintyKeys) {
    const auto source = job.uncertainty.source.find(each.key);
    if (largest(calibration, each.kind) && source != job.uncertainty.source.end() &&
        !source->second.starts_with("default"))
      keys.push_back(fmt::format("uncertainty.{}", each.key));
  }
  return keys;
}

} // namespace asperity
