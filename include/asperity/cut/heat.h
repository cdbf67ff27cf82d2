// Chip temperature and the chip thickness below which plastic melts. Pure functions.
#pragma once

namespace asperity {

/// Adiabatic rise [K] of a chip of thickness h: specific energy (ktc + kte/h) over density times heat
/// capacity.
double chip_temperature_rise_K(double ktc_N_per_mm2, double kte_N_per_mm, double chip_thickness_mm,
                               double density_kg_per_m3, double heat_capacity_J_per_kgK);

/// Thinnest chip that stays below limit_C [mm]; +infinity if even a thick chip passes it.
double thinnest_cool_chip_mm(double ktc_N_per_mm2, double kte_N_per_mm, double density_kg_per_m3,
                             double heat_capacity_J_per_kgK, double limit_C, double room_C);

} // namespace asperity
