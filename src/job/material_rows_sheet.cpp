// Sheet plastics, boards, wood and aluminium.
#include "material_rows.h"

namespace asperity {

namespace {

const char *const kMemory = "from memory";
const char *const kMemoryCutting = "from memory, +-50 % until calibrated";
const char *const kBulkTable = "Plastics Engineering, table 1.8";
const char *const kDataSheet = "typical data-sheet tensile strength, from memory";
const char *const kChars = "from memory, chars above";

/// Boards and wood: axial shares as for the polymers.
CuttingRow board_cutting(double ktc, double krc_share, double kte) {
  return {ktc, krc_share, kte, 0.15, 0.2 * kte, kMemoryCutting};
}

std::vector<Material> plastics() {
  return {
      material_of("PMMA (cast)", false, polymer_cutting(72, 155, 0.30, 1.5),
                  {1180, 1500, 0.20, kBulkTable, 150, "from memory, chips smear above", 105, kBulkTable},
                  {3200, kMemory, 72, kDataSheet},
                  {0.3, 0.6, "fitted to a trade article on routed acrylic edges (Rq 0.46 to 0.64 um)"}, 0.25),
      material_of("POM (solid)", false, polymer_cutting(65, 130, 0.25, 2),
                  {1420, 1500, 0.20, kBulkTable, 165, "from memory, melting", 110,
                   "from memory, heat deflection at 1.8 MPa"},
                  {2900, kMemory, 65, kDataSheet}, {0.5, 1.0, kMemory}, 0.2),
      material_of("HDPE (solid)", false, polymer_cutting(25, 55, 0.25, 4),
                  {950, 2200, 0.25, kBulkTable, 130, "FDM Polymers - A Technical Reference, Appendices", 55,
                   "FDM Polymers - A Technical Reference, Appendices (heat deflection 50 to 60)"},
                  {1000, kMemory, 25, kDataSheet},
                  {1.0, 1.8, "fitted to UHMWPE robotic milling, JAEDS 5(2) 2025 (Ra 1.21 to 2.33 um)"}, 0.2),
  };
}

std::vector<Material> boards() {
  return {
      material_of("PU modelling board", false, board_cutting(25, 0.3, 0.5),
                  {600, 1400, 0.08, kMemory, 200, kChars, 80, kMemory}, {600, kMemory, 15, kMemory},
                  {2.0, 5.0, kMemory}, 0.35),
      material_of("PU tooling board", false, board_cutting(65, 0.3, 1.0),
                  {1100, 1400, 0.20, kMemory, 200, kChars, 90, kMemory}, {2000, kMemory, 40, kMemory},
                  {1.0, 3.0, kMemory}, 0.3),
      material_of("MDF", false, board_cutting(25, 0.3, 2.0),
                  {725, 1700, 0.12, kMemory, 250, kChars, 200, "from memory, scorches above"},
                  {3000, kMemory, 25, kMemory}, {4.0, 8.0, "from memory, edge"}, 0.35),
      material_of("hardwood", false, board_cutting(30, 0.2, 2.0),
                  {700, 1700, 0.17, kMemory, 250, kChars, 200, "from memory, scorches above"},
                  {10000, "from memory, along the grain", 60, "from memory, along the grain"},
                  {3.0, 5.0, "Sutcu & Karagoz 2013, BioRes 8(4), 5435 (walnut 3.4, beech 4.3, chestnut 5.0)"},
                  0.35),
      material_of("plywood", false, board_cutting(30, 0.2, 2.0),
                  {650, 1700, 0.13, kMemory, 250, kChars, 200, "from memory, scorches above"},
                  {7000, kMemory, 35, kMemory}, {4.0, 8.0, kMemory}, 0.35),
  };
}

Material aluminium() {
  return material_of(
      "aluminium 6061", false,
      {700, 0.35, 10, 0.2, 2,
       "between Chin. J. Mech. Eng. 2021, doi 10.1186/s10033-021-00536-9, table 5 (6061-T6 244, 6082-T6 631) "
       "and a "
       "catalogue's kc1.1 = 700; +-50 % until calibrated"},
      {2700, 896, 167, kMemory, 582, "from memory, solidus", 200, "from memory, loses its temper above"},
      {69000, kMemory, 275, "from memory, yield of 6061-T6"},
      {0.3, 0.6, "fitted to Adv. Mater. Sci. Eng. 2021, 3844194, tables 2 and 3 (carbide 0.38 to 1.03 um)"},
      0.2);
}

} // namespace

std::vector<Material> sheet_materials() {
  std::vector<Material> all = plastics();
  for (Material &each : boards())
    all.push_back(std::move(each));
  all.push_back(aluminium());
  return all;
}

} // namespace asperity
