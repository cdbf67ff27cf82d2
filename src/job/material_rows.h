// The groups of values a material is put together from, each with its source.
#pragma once

#include "asperity/job/material.h"

#include <string>
#include <vector>

namespace asperity {

/// Force coefficients: K_rc and K_ac as shares of K_tc, K_ae in N/mm, K_re = K_te (sharp edge).
struct CuttingRow {
  double ktc_N_per_mm2, krc_share, kte_N_per_mm, kac_share, kae_N_per_mm;
  std::string source;
};

struct HeatRow {
  double density_kg_per_m3, heat_capacity_J_per_kgK, conductivity_W_per_mK;
  std::string source;
  double flow_C;
  std::string flow_source;
  double softening_C;
  std::string softening_source;
};

struct StrengthRow {
  double modulus_MPa;
  std::string modulus_source;
  double break_MPa;
  std::string break_source;
};

struct TextureRow {
  double low_um, high_um;
  std::string source;
};

Material material_of(std::string name, bool printed, const CuttingRow &cutting, const HeatRow &heat,
                     const StrengthRow &strength, const TextureRow &texture, double friction);

/// Polymer coefficients from the tensile strength on the data sheet.
CuttingRow polymer_cutting(double tensile_MPa, double ktc_N_per_mm2, double krc_share, double kte_N_per_mm);

std::vector<Material> printable_materials();
std::vector<Material> sheet_materials();

} // namespace asperity
