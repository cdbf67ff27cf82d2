// Which values are uncertain, in which words, and what moving one does to the job.
#include "asperity/tolerance/uncertain_input.h"

#include <fmt/format.h>

#include <cassert>
#include <cmath>

namespace asperity {

namespace {

/// One kind of input: where its uncertainty stands, what it is called, how it is measured.
struct Row {
  InputKind kind;
  std::string_view key;
  double Uncertainty::*expanded;
  bool is_share, is_of_cutter;
  std::string_view what, measure;
};

constexpr Row kRows[] = {
    {InputKind::x_zero, "x_zero_mm", &Uncertainty::x_zero_mm, false, false, "zero in x",
     "Find the edge in x from both sides with the same pin and halve the difference."},
    {InputKind::y_zero, "y_zero_mm", &Uncertainty::y_zero_mm, false, false, "zero in y",
     "Find the edge in y from both sides with the same pin and halve the difference."},
    {InputKind::z_zero, "z_zero_mm", &Uncertainty::z_zero_mm, false, false, "zero in z",
     "Set z on a gauge plate or block of known height three times and take the mean."},
    {InputKind::cutter_diameter, "cutter_diameter_mm", &Uncertainty::cutter_diameter_mm, false, true,
     "diameter", "Mill a slot in one pass and measure its width (it holds runout too), or gauge the cutter."},
    {InputKind::runout, "runout_share", &Uncertainty::runout_share, true, true, "runout",
     "Turn the spindle by hand and read a dial indicator on the cutter's teeth or shank."},
    {InputKind::cutting_force, "cutting_force_share", &Uncertainty::cutting_force_share, true, false,
     "cutting coefficients ktc, krc, kac",
     "Cut one wall at two feeds, gauge both, and calibrate: feed moves the cutting part, not the edge part."},
    {InputKind::edge_force, "edge_force_share", &Uncertainty::edge_force_share, true, false,
     "edge coefficients kte, kre, kae",
     "Cut a wall and take a second pass at the same place: what that removes gauges the bending; calibrate."},
    {InputKind::stiffness, "stiffness_share", &Uncertainty::stiffness_share, true, false, "machine stiffness",
     "Pull the spindle nose sideways with a spring scale and read a dial gauge; calibrate takes the pair."},
    {InputKind::blank_allowance, "blank_allowance_mm", &Uncertainty::blank_allowance_mm, false, false,
     "stock on the blank, per side", "Measure the blank across in several places before it is clamped."},
};
constexpr Row kForce{InputKind::force,
                     "force_share",
                     &Uncertainty::cutting_force_share,
                     true,
                     false,
                     "all force coefficients by one factor",
                     "Cut a wall, gauge it, and calibrate."};

const Row &row_of(InputKind kind) {
  for (const Row &row : kRows)
    if (row.kind == kind)
      return row;
  return kForce;
}

bool is_effective(const Job &job, const Row &row, const Cutter *cutter) {
  const Effects &on = job.effects;
  switch (row.kind) {
  case InputKind::x_zero:
  case InputKind::y_zero:
  case InputKind::z_zero:
    return on.zero_error;
  case InputKind::cutter_diameter:
    return on.diameter_error;
  case InputKind::runout:
    return on.runout && cutter && cutter->runout_mm > 0.0;
  case InputKind::edge_force:
    return on.edge_force;
  case InputKind::stiffness:
    return on.machine_bending;
  default:
    return true;
  }
}

UncertainInput input_of(const Job &job, const Row &row, int cutter, double expanded) {
  const std::string of = cutter > 0 ? fmt::format("cutter {} ", cutter) : std::string();
  const auto source = job.uncertainty.source.find(row.key);
  return {of + std::string(row.key),
          of + std::string(row.what),
          row.kind,
          cutter,
          row.is_share,
          expanded,
          standard_uncertainty_of(expanded, row.is_share),
          source == job.uncertainty.source.end() ? std::string() : source->second,
          std::string(row.measure)};
}

void scale_cutting(Material &m, double factor) {
  for (double Material::*k : {&Material::ktc_N_per_mm2, &Material::krc_N_per_mm2, &Material::kac_N_per_mm2})
    m.*k *= factor;
}

void scale_edge(Material &m, double factor) {
  for (double Material::*k : {&Material::kte_N_per_mm, &Material::kre_N_per_mm, &Material::kae_N_per_mm})
    m.*k *= factor;
}

/// Moves a length by `by_mm`, or multiplies a share's value by `factor`.
void move(Job &job, const UncertainInput &input, double by_mm, double factor) {
  switch (input.kind) {
  case InputKind::x_zero:
    job.setup.xy_zero_error_mm.x += by_mm;
    break;
  case InputKind::y_zero:
    job.setup.xy_zero_error_mm.y += by_mm;
    break;
  case InputKind::z_zero:
    job.setup.z_zero_error_mm += by_mm;
    break;
  case InputKind::cutter_diameter:
    for (Cutter &cutter : job.cutters)
      cutter.diameter_error_mm += cutter.number == input.cutter ? by_mm : 0.0;
    break;
  case InputKind::runout:
    for (Cutter &cutter : job.cutters)
      cutter.runout_mm *= cutter.number == input.cutter ? factor : 1.0;
    break;
  case InputKind::cutting_force:
    scale_cutting(job.material, factor);
    break;
  case InputKind::edge_force:
    scale_edge(job.material, factor);
    break;
  case InputKind::force:
    scale_cutting(job.material, factor);
    scale_edge(job.material, factor);
    break;
  case InputKind::stiffness:
    job.machine.stiffness_xy_N_per_um *= factor;
    job.machine.stiffness_z_N_per_um *= factor;
    break;
  case InputKind::blank_allowance:
    job.blank.allowance_mm += by_mm;
    break;
  }
}

} // namespace

double standard_uncertainty_of(double expanded, bool is_share) {
  return 0.5 * (is_share ? std::log1p(expanded) : expanded);
}

double expanded_uncertainty_of(double standard_uncertainty, bool is_share) {
  return is_share ? std::expm1(2.0 * standard_uncertainty) : 2.0 * standard_uncertainty;
}

std::vector<UncertainInput> uncertain_inputs(const Job &job) {
  std::vector<UncertainInput> inputs;
  const auto add = [&](const Row &row, const Cutter *cutter) {
    const double expanded = job.uncertainty.*row.expanded;
    if (expanded > 0.0 && is_effective(job, row, cutter))
      inputs.push_back(input_of(job, row, cutter ? cutter->number : 0, expanded));
  };
  for (const Row &row : kRows) {
    if (!row.is_of_cutter)
      add(row, nullptr);
    else
      for (const Cutter &cutter : job.cutters)
        add(row, &cutter);
  }
  return inputs;
}

UncertainInput uncertain_input(const Job &job, InputKind kind, int cutter, double expanded) {
  const Row &row = row_of(kind);
  const double stated = job.uncertainty.*row.expanded;
  return input_of(job, row, cutter, stated > 0.0 ? stated : expanded);
}

Job job_with(const Job &job, std::span<const UncertainInput> inputs, std::span<const double> deviates) {
  assert(inputs.size() == deviates.size());
  Job moved = job;
  for (std::size_t i = 0; i < inputs.size(); ++i) {
    const double by = inputs[i].standard_uncertainty * deviates[i];
    move(moved, inputs[i], by, std::exp(by));
  }
  return moved;
}

} // namespace asperity
