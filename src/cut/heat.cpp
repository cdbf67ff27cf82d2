// Chip temperature and the chip thickness below which plastic melts.
#include "asperity/cut/heat.h"

#include <limits>

namespace asperity {

/// 1 N/mm^2 of specific energy is 1e6 J/m^3.
static constexpr double kJPerM3PerMPa = 1e6;
static constexpr double kInfinity = std::numeric_limits<double>::infinity();

double chip_temperature_rise_K(double ktc_N_per_mm2, double kte_N_per_mm, double chip_thickness_mm,
                               double density_kg_per_m3, double heat_capacity_J_per_kgK) {
  if (chip_thickness_mm <= 0 && kte_N_per_mm > 0)
    return kInfinity;
  const double edge_MPa = kte_N_per_mm > 0 ? kte_N_per_mm / chip_thickness_mm : 0.0;
  return (ktc_N_per_mm2 + edge_MPa) * kJPerM3PerMPa / (density_kg_per_m3 * heat_capacity_J_per_kgK);
}

double thinnest_cool_chip_mm(double ktc_N_per_mm2, double kte_N_per_mm, double density_kg_per_m3,
                             double heat_capacity_J_per_kgK, double limit_C, double room_C) {
  const double allowed_MPa = density_kg_per_m3 * heat_capacity_J_per_kgK * (limit_C - room_C) / kJPerM3PerMPa;
  return allowed_MPa > ktc_N_per_mm2 ? kte_N_per_mm / (allowed_MPa - ktc_N_per_mm2) : kInfinity;
}

} // namespace asperity
