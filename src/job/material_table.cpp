// Puts the shipped materials together and finds them by name.
#include "material_rows.h"

#include <fmt/format.h>

namespace asperity {

CuttingRow polymer_cutting(double tensile_MPa, double ktc, double krc_share, double kte) {
  // Energy balance of cutting [Patel, Blackman & Williams 2009, Eng. Fract. Mech. 76, 2711]: force per width
  // = toughness + about 1..1.5 times yield at cutting speed, which is 1.4..2 times the data-sheet strength.
  return {ktc,
          krc_share,
          kte,
          0.15,
          0.2 * kte,
          fmt::format("derived from data-sheet strength {} MPa, +-50 % until calibrated", tensile_MPa)};
}

Material material_of(std::string name, bool printed, const CuttingRow &cutting, const HeatRow &heat,
                     const StrengthRow &strength, const TextureRow &texture, double friction) {
  Material m;
  m.name = std::move(name);
  m.printed = printed;
  const auto put = [&m](double &place, const char *key, double value, const std::string &source) {
    place = value;
    m.source[key] = source;
  };

  put(m.ktc_N_per_mm2, "ktc_N_per_mm2", cutting.ktc_N_per_mm2, cutting.source);
  put(m.krc_N_per_mm2, "krc_N_per_mm2", cutting.krc_share * cutting.ktc_N_per_mm2, cutting.source);
  put(m.kac_N_per_mm2, "kac_N_per_mm2", cutting.kac_share * cutting.ktc_N_per_mm2, cutting.source);
  put(m.kte_N_per_mm, "kte_N_per_mm", cutting.kte_N_per_mm, cutting.source);
  put(m.kre_N_per_mm, "kre_N_per_mm", cutting.kte_N_per_mm, cutting.source);
  put(m.kae_N_per_mm, "kae_N_per_mm", cutting.kae_N_per_mm, cutting.source);

  put(m.density_kg_per_m3, "density_kg_per_m3", heat.density_kg_per_m3, heat.source);
  put(m.heat_capacity_J_per_kgK, "heat_capacity_J_per_kgK", heat.heat_capacity_J_per_kgK, heat.source);
  put(m.conductivity_W_per_mK, "conductivity_W_per_mK", heat.conductivity_W_per_mK, heat.source);
  put(m.flow_temperature_C, "flow_temperature_C", heat.flow_C, heat.flow_source);
  put(m.softening_temperature_C, "softening_temperature_C", heat.softening_C, heat.softening_source);

  put(m.elastic_modulus_MPa, "elastic_modulus_MPa", strength.modulus_MPa, strength.modulus_source);
  put(m.break_stress_MPa, "break_stress_MPa", strength.break_MPa, strength.break_source);
  put(m.friction, "friction", friction, "from memory, plastics and wood on wood or aluminium 0.2 to 0.35");
  put(m.own_ra_low_um, "own_ra_low_um", texture.low_um, texture.source);
  put(m.own_ra_high_um, "own_ra_high_um", texture.high_um, texture.source);
  return m;
}

std::span<const Material> material_table() {
  static const std::vector<Material> table = [] {
    std::vector<Material> all = printable_materials();
    for (Material &each : sheet_materials())
      all.push_back(std::move(each));
    return all;
  }();
  return table;
}

const Material *find_material(std::string_view name) {
  for (const Material &each : material_table())
    if (each.name == name)
      return &each;
  return nullptr;
}

} // namespace asperity
