// The values a job takes as given, each as a random quantity.
#pragma once

#include "asperity/job/job.h"

#include <span>
#include <string>
#include <vector>

namespace asperity {

enum class InputKind {
  x_zero,
  y_zero,
  z_zero,
  cutter_diameter,
  runout,
  cutting_force,
  edge_force,
  force, ///< cutting and edge coefficients by one common factor
  stiffness,
  blank_allowance
};

/// One input with its standard uncertainty u (half of the expanded one stated in the job). A deviate g moves
/// a length by u g and multiplies a share's value by exp(u g): normal, and log-normal where the value cannot
/// be negative (JCGM 101:2008, 6.4.7, with ln of the value as the quantity for shares).
struct UncertainInput {
  std::string id;   ///< "z_zero_mm", "cutter 1 runout_share": stable, the same in every job
  std::string what; ///< in words
  InputKind kind = InputKind::z_zero;
  int cutter = 0; ///< number of the cutter it belongs to; 0 = none
  bool is_share = false;
  double expanded = 0;             ///< as stated, coverage factor 2
  double standard_uncertainty = 0; ///< mm, or of the logarithm
  std::string source;              ///< of the stated uncertainty
  std::string measure;             ///< how to know it better
};

/// Every input with an uncertainty above 0 whose effect is switched on, in a fixed order.
std::vector<UncertainInput> uncertain_inputs(const Job &job);

/// The input of that kind whatever its stated uncertainty; `expanded` stands where none is stated.
UncertainInput uncertain_input(const Job &job, InputKind kind, int cutter, double expanded);

/// The job with every input moved by its deviate (in standard uncertainties). Sizes must match.
Job job_with(const Job &job, std::span<const UncertainInput> inputs, std::span<const double> deviates);

/// Standard uncertainty of a length's or share's expanded uncertainty, and back.
double standard_uncertainty_of(double expanded, bool is_share);
double expanded_uncertainty_of(double standard_uncertainty, bool is_share);

} // namespace asperity
