// [material]: a shipped material with values replaced, or one of the user's own.
#include "job_sections.h"

#include "nearest_word.h"

#include <fmt/format.h>

namespace asperity {

namespace {

constexpr Range kCoefficient_N_per_mm2{0, 20000, true};
constexpr Range kShare_N_per_mm2{0, 20000};
constexpr Range kEdge_N_per_mm{0, 1000};
constexpr Range kTemperature_C{20, 3000};
constexpr Range kOwnRa_um{0, 200};

#define MATERIAL_KEY(name, range)                                                                            \
  { #name, field < Material, &Material::name>, range, Need::optional }
const NumberKey<Material> kMaterialKeys[] = {
    MATERIAL_KEY(ktc_N_per_mm2, kCoefficient_N_per_mm2),
    MATERIAL_KEY(krc_N_per_mm2, kShare_N_per_mm2),
    MATERIAL_KEY(kac_N_per_mm2, kShare_N_per_mm2),
    MATERIAL_KEY(kte_N_per_mm, kEdge_N_per_mm),
    MATERIAL_KEY(kre_N_per_mm, kEdge_N_per_mm),
    MATERIAL_KEY(kae_N_per_mm, kEdge_N_per_mm),
    MATERIAL_KEY(density_kg_per_m3, (Range{10, 25000})),
    MATERIAL_KEY(heat_capacity_J_per_kgK, (Range{50, 10000})),
    MATERIAL_KEY(conductivity_W_per_mK, (Range{0.001, 1000})),
    MATERIAL_KEY(flow_temperature_C, kTemperature_C),
    MATERIAL_KEY(softening_temperature_C, kTemperature_C),
    MATERIAL_KEY(elastic_modulus_MPa, (Range{1, 1e6})),
    MATERIAL_KEY(break_stress_MPa, (Range{0.1, 5000})),
    MATERIAL_KEY(friction, (Range{0.01, 2})),
    MATERIAL_KEY(own_ra_low_um, kOwnRa_um),
    MATERIAL_KEY(own_ra_high_um, kOwnRa_um),
};
#undef MATERIAL_KEY

std::vector<std::string_view> keys_left_out(const KeyReader &reader) {
  std::vector<std::string_view> left_out;
  for (const auto &key : kMaterialKeys)
    if (!reader.has(key.name))
      left_out.push_back(key.name);
  return left_out;
}

void report_unknown(KeyReader &reader, const std::string &name) {
  std::vector<std::string_view> names;
  for (const Material &each : material_table())
    names.push_back(each.name);
  const std::string_view near = nearest_word(name, names);
  const std::string choice = near.empty() ? fmt::format("Choose one of: {}.", listed(names))
                                          : fmt::format("Did you mean \"{}\"?", near);
  reader.error("name", fmt::format("\"{}\" is not a known material", name),
               fmt::format("{} A material of your own needs all its values; missing: {}.", choice,
                           listed(keys_left_out(reader))));
}

void check_material(KeyReader &reader, const Material &material, bool has_own_force) {
  if (material.own_ra_low_um > material.own_ra_high_um)
    reader.error(reader.has("own_ra_low_um") ? "own_ra_low_um" : "own_ra_high_um",
                 "puts the lower roughness above the higher one", "Give own_ra_low_um <= own_ra_high_um.");
  if (material.calibrated && !has_own_force)
    reader.warning("calibrated", "is true, but no force coefficient of your own is given",
                   "Give the measured ktc_N_per_mm2, kte_N_per_mm, ... or set calibrated = false.");
}

} // namespace

Material read_material(KeyReader &reader) {
  Material material;
  const auto name = reader.text("name", Need::required);
  const Material *shipped = name ? find_material(*name) : nullptr;
  if (shipped)
    material = *shipped;
  else if (name && !keys_left_out(reader).empty())
    report_unknown(reader, *name);
  material.name = name.value_or("");

  // Each value is the user's own or the shipped one, with its source.
  bool has_own_force = false;
  for (const auto &key : kMaterialKeys) {
    if (const auto value = reader.number(key.name, key.range, Need::optional)) {
      key.place(material) = *value;
      material.source[std::string(key.name)] = reader.source_of(key.name);
      has_own_force = has_own_force || key.name.starts_with('k');
    } else if (shipped && !reader.has(key.name)) {
      reader.note_default(key.name, text_of_number(key.place(material)),
                          material.source[std::string(key.name)]);
    }
  }
  material.printed = reader.flag("printed").value_or(material.printed);
  material.calibrated = reader.flag("calibrated").value_or(false);
  check_material(reader, material, has_own_force);
  return material;
}

} // namespace asperity
