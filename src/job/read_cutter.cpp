// [[cutter]]: one cutter in its holder, and whether its shape can be.
#include "job_sections.h"
#include "ranges.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

const Choice<CutterKind> kKinds[] = {{"flat", CutterKind::flat},
                                     {"ball", CutterKind::ball},
                                     {"corner_radius", CutterKind::corner_radius},
                                     {"tapered", CutterKind::tapered},
                                     {"v", CutterKind::v}};
const Choice<ToolMaterial> kToolMaterials[] = {{"carbide", ToolMaterial::carbide},
                                               {"hss", ToolMaterial::hss}};

bool has_corner(const Cutter &c) {
  return c.kind == CutterKind::corner_radius || c.kind == CutterKind::tapered;
}
bool is_tapered(const Cutter &c) { return c.kind == CutterKind::tapered; }
bool is_v(const Cutter &c) { return c.kind == CutterKind::v; }
bool has_tip(const Cutter &c) { return is_tapered(c) || is_v(c); }

const NumberKey<Cutter> kCutterKeys[] = {
    {"diameter_mm", field<Cutter, &Cutter::diameter_mm>, kCutterLength_mm},
    {"corner_radius_mm",
     field<Cutter, &Cutter::corner_radius_mm>,
     kCutterLengthOrNone_mm,
     Need::required,
     {},
     has_corner},
    {"tip_diameter_mm",
     field<Cutter, &Cutter::tip_diameter_mm>,
     kCutterLengthOrNone_mm,
     Need::required,
     {},
     has_tip},
    {"half_angle_deg", field<Cutter, &Cutter::half_angle_deg>, {0.05, 89.5}, Need::required, {}, has_tip},
    {"helix_deg", field<Cutter, &Cutter::helix_deg>, {-60, 60}, Need::noted, "from memory, common end mill"},
    {"flute_length_mm", field<Cutter, &Cutter::flute_length_mm>, kCutterLength_mm},
    {"shank_diameter_mm", field<Cutter, &Cutter::shank_diameter_mm>, kCutterLength_mm},
    {"stick_out_mm", field<Cutter, &Cutter::stick_out_mm>, kCutterLength_mm},
    {"runout_mm",
     field<Cutter, &Cutter::runout_mm>,
     {0, 1},
     Need::noted,
     "from memory, spring collet 0.005 to 0.05; measure yours"},
    {"diameter_error_mm",
     field<Cutter, &Cutter::diameter_error_mm>,
     {-2, 2},
     Need::noted,
     "taken as nominal; measure yours"},
    {"edge_radius_um",
     field<Cutter, &Cutter::edge_radius_um>,
     {0.1, 200},
     Need::noted,
     "from memory, new carbide 3 to 10"},
    {"length_offset_mm", field<Cutter, &Cutter::length_offset_mm>, kCoordinate_mm, Need::noted,
     "taken as none"},
    {"flute_core_ratio",
     field<Cutter, &Cutter::flute_core_ratio>,
     {0.2, 1},
     Need::noted,
     "Determination of the Equivalent Diameter of an End Mill Based on its Compliance"},
};

std::string_view word_of(CutterKind kind) {
  for (const auto &each : kKinds)
    if (each.value == kind)
      return each.word;
  return {};
}

/// Tip sizes against the full diameter. Returns false when no profile can be made of them.
bool check_tip(KeyReader &reader, const Cutter &c) {
  const double radius_mm = 0.5 * c.diameter_mm;
  if (c.kind == CutterKind::corner_radius && c.corner_radius_mm > radius_mm) {
    reader.error("corner_radius_mm", fmt::format("is larger than the cutter's radius {} mm", radius_mm),
                 "Make it at most half of diameter_mm.");
    return false;
  }
  if (is_tapered(c) && c.corner_radius_mm > 0.5 * c.tip_diameter_mm) {
    reader.error("corner_radius_mm",
                 fmt::format("is larger than the tip's radius {} mm", 0.5 * c.tip_diameter_mm),
                 "Make it at most half of tip_diameter_mm (equal for a ball tip).");
    return false;
  }
  if (has_tip(c) && c.tip_diameter_mm >= c.diameter_mm) {
    reader.error("tip_diameter_mm", fmt::format("is not smaller than diameter_mm = {}", c.diameter_mm),
                 "diameter_mm is the largest diameter, tip_diameter_mm the one at the tip.");
    return false;
  }
  return true;
}

void check_lengths(KeyReader &reader, const Cutter &c) {
  if (std::abs(c.diameter_error_mm) >= 0.25 * c.diameter_mm)
    reader.error("diameter_error_mm", "is a quarter of the diameter or more",
                 "Give real minus nominal diameter; correct diameter_mm if the cutter is another one.");
  if (c.flute_length_mm > c.stick_out_mm)
    reader.warning("flute_length_mm",
                   fmt::format("reaches into the holder, which begins at {} mm", c.stick_out_mm),
                   "Check flute_length_mm and stick_out_mm; both are measured from the tip.");
  const double shoulder_mm = c.profile().shoulder_mm();
  if (shoulder_mm > c.stick_out_mm)
    reader.error("stick_out_mm",
                 fmt::format("is less than the {:.3f} mm the tip shape alone takes", shoulder_mm),
                 "Check diameter_mm, half_angle_deg and stick_out_mm.");
  else if (shoulder_mm > c.flute_length_mm * 1.05)
    reader.warning("flute_length_mm",
                   fmt::format("ends below the full diameter, reached at {:.3f} mm", shoulder_mm),
                   "Check diameter_mm, half_angle_deg and flute_length_mm.");
}

} // namespace

Cutter read_cutter(KeyReader &reader) {
  Cutter cutter;
  const auto number = reader.whole_number("number", {1, 9999}, Need::required);
  cutter.number = number.value_or(0);
  if (number)
    reader.rename(fmt::format("cutter {}", *number));
  cutter.name = reader.text("name", Need::optional).value_or(fmt::format("cutter {}", cutter.number));

  const std::size_t errors_before = reader.log().problems.error_count();
  const auto kind = reader.choice<CutterKind>("kind", kKinds, Need::required);
  cutter.flutes = reader.whole_number("flutes", {1, 40}, Need::required).value_or(0);
  if (!kind) {
    for (const auto &key : kCutterKeys)
      reader.know(key.name);
    reader.know("material");
    return cutter;
  }
  cutter.kind = *kind;
  reader.numbers<Cutter>(cutter, kCutterKeys, fmt::format("kind = \"{}\"", word_of(*kind)));
  if (const auto material = reader.choice<ToolMaterial>("material", kToolMaterials, Need::noted))
    cutter.material = *material;
  else if (!reader.has("material"))
    reader.note_default("material", "carbide", "from memory, common for small cutters");

  // Whether the sizes go together can only be asked once each is usable.
  if (reader.log().problems.error_count() == errors_before && check_tip(reader, cutter))
    check_lengths(reader, cutter);
  return cutter;
}

} // namespace asperity
