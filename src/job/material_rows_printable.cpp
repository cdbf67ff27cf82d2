// Polymers that come printed as well as solid: the same cutting and heat values, another strength across
// layers.
#include "material_rows.h"

namespace asperity {

namespace {

const char *const kMemory = "from memory";
const char *const kBulkTable = "Plastics Engineering, table 1.8";
const char *const kPrintingPolymers =
    "FDM Polymers - A Technical Reference, Appendices (compiled data sheets)";
const char *const kLayerTable =
    "compiled strength ranges of printed PLA, PETG and PC, low side of the upright range";
const char *const kFlowLimit = "from memory, chips smear above";

/// Printed PETG turned to Ra 1.94 um, of which only 0.2 um is kinematic.
const TextureRow kPrintedTexture{1.5, 4.0,
                                 "fitted to Materials 2024, 17(17), 4250 (printed PETG, turned) and Machines "
                                 "2025, 13(11), 1049 (printed PLA, milled); voids up to 4"};
const TextureRow kPrintedTextureGuess{1.5, 4.0, "from memory, taken as for printed PETG"};
const TextureRow kSolidTexture{0.5, 1.0, kMemory};

constexpr double kFriction = 0.25;

struct Polymer {
  std::string name;
  CuttingRow cutting;
  HeatRow heat;
  StrengthRow printed;
  StrengthRow solid;
  TextureRow printed_texture;
};

StrengthRow solid_strength(double modulus_MPa, double tensile_MPa) {
  return {modulus_MPa, kMemory, tensile_MPa, "typical data-sheet tensile strength, from memory"};
}

Polymer pla() {
  return {"PLA",
          polymer_cutting(55, 120, 0.25, 2.5),
          {1240, 1800, 0.13, "density: a maker's PLA data sheet; rest from memory", 150, kFlowLimit, 60,
           kPrintingPolymers},
          {2400, "Interface strength of 3D-printed PLA, 3D Print. Addit. Manuf., doi 10.1089/3dp.2020.0109",
           25,
           "Interface strength of 3D-printed PLA, doi 10.1089/3dp.2020.0109 (22.8 measured), with compiled "
           "ranges "
           "35 to 45"},
          solid_strength(3300, 55),
          kPrintedTexture};
}

Polymer petg() {
  return {"PETG",
          polymer_cutting(48, 110, 0.27, 3),
          {1270, 1200, 0.20, "conductivity of PET: Plastics Engineering, table 1.8; rest from memory", 160,
           kFlowLimit, 77, kPrintingPolymers},
          {2000, kMemory, 25, kLayerTable},
          solid_strength(2100, 48),
          kPrintedTexture};
}

Polymer abs() {
  return {"ABS",
          polymer_cutting(40, 85, 0.25, 3),
          {1040, 1300, 0.25, kBulkTable, 150, kFlowLimit, 105, kPrintingPolymers},
          {1800, kMemory, 16, kMemory},
          solid_strength(2300, 40),
          kPrintedTextureGuess};
}

Polymer asa() {
  return {"ASA",
          polymer_cutting(42, 90, 0.25, 3),
          {1070, 1300, 0.18, kMemory, 150, "from memory, taken as for ABS", 100, kPrintingPolymers},
          {1800, kMemory, 18, kMemory},
          solid_strength(2200, 42),
          kPrintedTextureGuess};
}

Polymer pa6() {
  return {"PA6",
          polymer_cutting(70, 130, 0.25, 4),
          {1130, 1700, 0.26,
           "heat capacity of PA66: Plastics Engineering, table 1.8; conductivity: Thermal "
           "Properties of Plastic Materials (0.24 to 0.28); density from memory",
           220, kPrintingPolymers, 55, kPrintingPolymers},
          {1800, kMemory, 28, kMemory},
          solid_strength(2800, 70),
          kPrintedTextureGuess};
}

Polymer pa12() {
  return {"PA12",
          polymer_cutting(45, 95, 0.25, 4),
          {1010, 1700, 0.24, "heat capacity of PA66: Plastics Engineering, table 1.8; rest from memory", 177,
           kPrintingPolymers, 45, kPrintingPolymers},
          {1200, kMemory, 28, kMemory},
          solid_strength(1400, 45),
          kPrintedTextureGuess};
}

Polymer pc() {
  return {"PC",
          polymer_cutting(62, 135, 0.25, 4),
          {1150, 1200, 0.20, kBulkTable, 230, kFlowLimit, 149, kBulkTable},
          {1900, kMemory, 35, kLayerTable},
          solid_strength(2300, 62),
          kPrintedTextureGuess};
}

} // namespace

std::vector<Material> printable_materials() {
  std::vector<Material> all;
  for (const Polymer &p : {pla(), petg(), abs(), asa(), pa6(), pa12(), pc()}) {
    all.push_back(
        material_of(p.name + " (printed)", true, p.cutting, p.heat, p.printed, p.printed_texture, kFriction));
    all.push_back(
        material_of(p.name + " (solid)", false, p.cutting, p.heat, p.solid, kSolidTexture, kFriction));
  }
  return all;
}

} // namespace asperity
