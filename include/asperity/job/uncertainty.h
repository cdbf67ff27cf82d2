// How far what the job takes as given may be from the truth.
#pragma once

#include <map>
#include <string>

namespace asperity {

/// Expanded uncertainties with coverage factor 2, some 95 % (JCGM 100:2008, 6.2): "+-0.05" says that 19 of 20
/// such values lie within 0.05. 0 = taken as exactly known. A share of 0.5 says that the true value lies
/// between 1/1.5 and 1.5 times the stated one.
struct Uncertainty {
  double x_zero_mm = 0, y_zero_mm = 0, z_zero_mm = 0;
  double cutter_diameter_mm = 0;  ///< each cutter on its own
  double runout_share = 0;        ///< each cutter on its own
  double cutting_force_share = 0; ///< ktc, krc, kac together
  double edge_force_share = 0;    ///< kte, kre, kae together
  double stiffness_share = 0;     ///< of the machine, sideways and along z together
  double blank_allowance_mm = 0;  ///< all round in plan, per side
  /// Source of each value, by its key in the job file.
  std::map<std::string, std::string, std::less<>> source;
};

} // namespace asperity
