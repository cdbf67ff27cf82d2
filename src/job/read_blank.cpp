// [blank]: the piece before cutting.
#include "job_sections.h"
#include "nearest_word.h"
#include "ranges.h"

#include <fmt/format.h>

namespace asperity {

namespace {

const Choice<BlankShape> kShapes[] = {{"cylinder", BlankShape::cylinder},
                                      {"box", BlankShape::box},
                                      {"revolved", BlankShape::revolved},
                                      {"grown", BlankShape::grown},
                                      {"mesh", BlankShape::mesh}};

bool is_cylinder(const Blank &b) { return b.shape == BlankShape::cylinder; }
bool is_box(const Blank &b) { return b.shape == BlankShape::box; }
bool is_grown(const Blank &b) { return b.shape == BlankShape::grown; }
bool has_centre(const Blank &b) { return is_cylinder(b) || is_box(b) || b.shape == BlankShape::revolved; }
bool has_heights(const Blank &b) { return is_cylinder(b) || is_box(b) || is_grown(b); }

const NumberKey<Blank> kBlankKeys[] = {
    {"diameter_mm", field<Blank, &Blank::diameter_mm>, kLength_mm, Need::required, {}, is_cylinder},
    {"size_x_mm", plan_axis<Blank, &Blank::size_mm, 0>, kLength_mm, Need::required, {}, is_box},
    {"size_y_mm", plan_axis<Blank, &Blank::size_mm, 1>, kLength_mm, Need::required, {}, is_box},
    {"bottom_mm", field<Blank, &Blank::z_bottom_mm>, kCoordinate_mm, Need::required, {}, has_heights},
    {"top_mm", field<Blank, &Blank::z_top_mm>, kCoordinate_mm, Need::required, {}, has_heights},
    {"layer_height_mm", field<Blank, &Blank::layer_height_mm>, kLayer_mm, Need::noted,
     "taken as not printed"},
    {"elephant_foot_mm", field<Blank, &Blank::elephant_foot_mm>, {0, 5}, Need::noted, "taken as none"},
};
const NumberKey<Blank> kGrownAllowance[] = {{"allowance_mm", field<Blank, &Blank::allowance_mm>, {0, 100}}};
const NumberKey<Blank> kOtherAllowance[] = {{"allowance_mm",
                                             field<Blank, &Blank::allowance_mm>,
                                             {0, 100},
                                             Need::noted,
                                             "taken as none beyond the sizes given"}};

void read_profile(KeyReader &reader, Blank &blank) {
  blank.profile_mm = reader.points("profile_mm", Need::required);
  if (blank.profile_mm.empty())
    return;
  if (blank.profile_mm.size() < 2) {
    reader.error("profile_mm", "has only one point",
                 "Give at least a bottom and a top point, as [radius, z].");
    return;
  }
  for (std::size_t i = 0; i < blank.profile_mm.size(); ++i) {
    const Vec2 point = blank.profile_mm[i];
    if (point.x < 0)
      return reader.error("profile_mm", fmt::format("has a radius below 0 at point {}", i + 1),
                          "Each point is [radius, z]; the radius is at least 0.");
    if (i > 0 && point.y <= blank.profile_mm[i - 1].y)
      return reader.error("profile_mm", fmt::format("does not rise at point {}", i + 1),
                          "Give the points from bottom to top; each z above the one before.");
  }
  blank.z_bottom_mm = blank.profile_mm.front().y;
  blank.z_top_mm = blank.profile_mm.back().y;
}

void read_grown(KeyReader &reader, Blank &blank, const std::vector<Feature> &walls) {
  const auto name = reader.text("grown_from", Need::required);
  if (!name)
    return;
  std::vector<std::string_view> names;
  for (const Feature &feature : walls) {
    const auto *wall = std::get_if<WallFeature>(&feature);
    if (!wall)
      continue;
    names.push_back(wall->name);
    if (wall->name != *name)
      continue;
    if (wall->side == Side::inside)
      reader.error("grown_from", fmt::format("names the inside wall \"{}\"", *name),
                   "Name the part's outside wall; describe its opening with [[blank.hole]].");
    blank.grown_from = wall->outline;
    return;
  }
  const std::string_view near = nearest_word(*name, names);
  reader.error("grown_from", fmt::format("names \"{}\", which is no wall of this job", *name),
               near.empty() ? fmt::format("Name one of: {}.", listed(names))
                            : fmt::format("Did you mean \"{}\"?", near));
}

void read_own_shape(KeyReader &reader, Blank &blank, const std::vector<Feature> &walls,
                    const std::string &kind) {
  reader.numbers<Blank>(blank, kBlankKeys, kind);
  reader.numbers<Blank>(blank, is_grown(blank) ? std::span(kGrownAllowance) : std::span(kOtherAllowance));
  if (reader.belongs("centre_mm", has_centre(blank), kind)) {
    if (const auto centre = reader.point2("centre_mm", Need::optional))
      blank.centre = *centre;
    else if (!reader.has("centre_mm"))
      reader.note_default("centre_mm", "[0, 0]", "taken as part zero");
  }
  if (reader.belongs("profile_mm", blank.shape == BlankShape::revolved, kind))
    read_profile(reader, blank);
  if (reader.belongs("grown_from", is_grown(blank), kind))
    read_grown(reader, blank, walls);

  const bool is_mesh = blank.shape == BlankShape::mesh;
  reader.belongs("mesh_moved_mm", is_mesh, kind);
  if (!reader.belongs("mesh", is_mesh, kind))
    return;
  if (const auto mesh = read_mesh(reader)) {
    blank.mesh = *mesh;
    blank.z_bottom_mm = mesh->mesh().low.z;
    blank.z_top_mm = mesh->mesh().high.z;
  }
}

RoundFeature read_round(KeyReader &reader, const Blank &blank, bool is_hole) {
  RoundFeature round;
  round.is_hole = is_hole;
  round.centre = reader.point2("centre_mm", Need::required).value_or(Vec2{0.0});
  round.diameter_mm = reader.number("diameter_mm", kLength_mm, Need::required).value_or(0.0);
  const auto height = [&](std::string_view key, double whole_mm) {
    const auto given = reader.number(key, kCoordinate_mm, Need::optional);
    if (!given && !reader.has(key))
      reader.note_default(key, text_of_number(whole_mm), "through the whole blank");
    return given.value_or(whole_mm);
  };
  round.z_bottom_mm = height("bottom_mm", blank.z_bottom_mm);
  round.z_top_mm = height("top_mm", blank.z_top_mm);
  if (reader.has("bottom_mm") || reader.has("top_mm"))
    check_heights(reader, round.z_bottom_mm, round.z_top_mm);
  reader.finish();
  return round;
}

void check_remains(KeyReader &reader, const Blank &blank) {
  if (blank.section_at(0.5 * (blank.z_bottom_mm + blank.z_top_mm)).area_mm2 <= 0)
    reader.error("hole", "leaves nothing of the blank at mid-height",
                 "Check the diameters of hole and blank.");
}

void read_foot(KeyReader &reader, Blank &blank) {
  const Need need = blank.elephant_foot_mm > 0 ? Need::required : Need::optional;
  blank.elephant_foot_height_mm =
      reader.number("elephant_foot_height_mm", kLengthOrNone_mm, need).value_or(0.0);
  if (blank.elephant_foot_mm > 0 && reader.has("elephant_foot_height_mm") &&
      blank.elephant_foot_height_mm == 0)
    reader.error("elephant_foot_height_mm", "is 0, but there is an elephant foot",
                 "Give the height at which the foot has faded away, often 0.3 to 0.8.");
  const double height_mm = blank.z_top_mm - blank.z_bottom_mm;
  if (height_mm > 0 && blank.elephant_foot_height_mm > height_mm)
    reader.error("elephant_foot_height_mm", "is more than the blank's height", "Check the foot's height.");
}

} // namespace

Blank read_blank(KeyReader &reader, const std::vector<Feature> &walls) {
  Blank blank;
  const std::size_t errors_before = reader.log().problems.error_count();
  const auto shape = reader.choice<BlankShape>("shape", kShapes, Need::required);
  if (!shape) {
    for (const auto &key : kBlankKeys)
      reader.know(key.name);
    for (const char *key : {"allowance_mm", "centre_mm", "profile_mm", "grown_from", "mesh", "mesh_moved_mm",
                            "elephant_foot_height_mm", "hole", "boss"})
      reader.know(key);
    return blank;
  }
  blank.shape = *shape;
  read_own_shape(reader, blank, walls, fmt::format("shape = \"{}\"", kShapes[static_cast<int>(*shape)].word));
  if (has_heights(blank) && reader.log().problems.error_count() == errors_before)
    check_heights(reader, blank.z_bottom_mm, blank.z_top_mm);
  read_foot(reader, blank);
  for (KeyReader &hole : reader.tables("hole"))
    blank.rounds.push_back(read_round(hole, blank, true));
  for (KeyReader &boss : reader.tables("boss"))
    blank.rounds.push_back(read_round(boss, blank, false));
  if (reader.has("hole") && blank.shape != BlankShape::mesh &&
      reader.log().problems.error_count() == errors_before)
    check_remains(reader, blank);
  return blank;
}

} // namespace asperity
