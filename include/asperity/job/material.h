// What the blank is made of: cutting coefficients, heat and strength, each value with its source.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>

namespace asperity {

/// Linear-edge force model dF = (K_c h + K_e) dz in tangential (t), radial (r), axial (a) direction.
struct Material {
  std::string name;
  double ktc_N_per_mm2 = 0, krc_N_per_mm2 = 0, kac_N_per_mm2 = 0;
  double kte_N_per_mm = 0, kre_N_per_mm = 0, kae_N_per_mm = 0;
  double density_kg_per_m3 = 0;
  double heat_capacity_J_per_kgK = 0;
  double conductivity_W_per_mK = 0;
  double flow_temperature_C = 0;                ///< chips smear or melt above
  double softening_temperature_C = 0;           ///< glass transition or heat deflection
  double elastic_modulus_MPa = 0;               ///< across the layers where printed
  double break_stress_MPa = 0;                  ///< across the layers where printed
  double friction = 0;                          ///< against the spoilboard and clamps
  double own_ra_low_um = 0, own_ra_high_um = 0; ///< roughness the material adds by itself
  bool printed = false;                         ///< comes in layers
  bool calibrated = false;                      ///< force coefficients come from the user's own measurement
  /// Source of each value, by its key in the job file.
  std::map<std::string, std::string, std::less<>> source;
};

/// The materials shipped with the program, with sourced defaults.
std::span<const Material> material_table();
const Material *find_material(std::string_view name);

} // namespace asperity
