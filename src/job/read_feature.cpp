// [[wall]], [[floor]] and [[dome]]: the part's surfaces that matter.
#include "job_sections.h"
#include "ranges.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

namespace {

const Choice<Side> kSides[] = {{"outside", Side::outside}, {"inside", Side::inside}};
enum class DomeShape { cap, mesh };
const Choice<DomeShape> kDomeShapes[] = {{"cap", DomeShape::cap}, {"mesh", DomeShape::mesh}};

const NumberKey<DomeFeature> kCapKeys[] = {
    {"sphere_radius_mm", field<DomeFeature, &DomeFeature::sphere_radius_mm>, kLength_mm},
    {"apex_mm", field<DomeFeature, &DomeFeature::apex_z_mm>, kCoordinate_mm},
    {"rim_radius_mm", field<DomeFeature, &DomeFeature::rim_radius_mm>, kLength_mm},
};

/// Reads the name and makes messages speak of it: wall "rim".
std::string read_name(KeyReader &reader, std::string_view kind) {
  const auto name = reader.text("name", Need::required);
  if (name)
    reader.rename(fmt::format("{} \"{}\"", kind, *name));
  return name.value_or("");
}

void read_wall_sizes(KeyReader &reader, WallFeature &wall) {
  const std::string_view this_kind = "this kind of outline";
  const bool is_rectangle = wall.kind == OutlineKind::rounded_rectangle;
  if (reader.belongs("diameter_wanted_mm", wall.kind == OutlineKind::circle, this_kind))
    wall.size[0] = read_size_wanted(reader, "diameter_wanted_mm", wall.diameter_mm);
  if (reader.belongs("width_x_wanted_mm", is_rectangle, this_kind))
    wall.size[0] = read_size_wanted(reader, "width_x_wanted_mm", wall.width_mm.x);
  if (reader.belongs("width_y_wanted_mm", is_rectangle, this_kind))
    wall.size[1] = read_size_wanted(reader, "width_y_wanted_mm", wall.width_mm.y);
  if (reader.belongs("offset_wanted_mm", wall.kind == OutlineKind::free_form, this_kind))
    wall.size[0] = read_size_wanted(reader, "offset_wanted_mm", 0.0);
  if (wall.kind == OutlineKind::free_form && wall.size[0] && wall.size[0]->nominal_mm != 0.0)
    reader.error("offset_wanted_mm", "must have nominal = 0: it is the distance from the drawn outline",
                 "Leave nominal out and draw the outline at its wanted size.");
}

/// The face a height is measured from and the height wanted of z_mm above it.
std::optional<SizeWanted> read_height(KeyReader &reader, double z_mm, double &measured_from_mm) {
  if (const auto face = reader.number("measured_from_mm", kCoordinate_mm, Need::optional))
    measured_from_mm = *face;
  else if (!reader.has("measured_from_mm") && reader.has("height_wanted_mm"))
    reader.note_default("measured_from_mm", "0", "height measured from part z = 0");
  return read_size_wanted(reader, "height_wanted_mm", std::abs(z_mm - measured_from_mm));
}

void read_cap(KeyReader &reader, DomeFeature &dome) {
  const std::size_t errors_before = reader.log().problems.error_count();
  reader.numbers<DomeFeature>(dome, kCapKeys);
  dome.centre = reader.point2("centre_mm", Need::required).value_or(Vec2{0.0});
  if (reader.log().problems.error_count() != errors_before)
    return;
  if (dome.rim_radius_mm > dome.sphere_radius_mm)
    reader.error("rim_radius_mm",
                 fmt::format("is larger than the sphere's radius {} mm", dome.sphere_radius_mm),
                 "Make it at most sphere_radius_mm (equal for a half sphere).");
  else
    dome.outline = Outline::circle(dome.centre, 2 * dome.rim_radius_mm);
}

void read_sculpted(KeyReader &reader, DomeFeature &dome) {
  dome.surface = read_mesh(reader);
  if (dome.surface)
    dome.apex_z_mm = dome.surface->mesh().high.z;
  if (const auto given = read_outline(reader)) {
    dome.outline = given->outline;
    dome.centre = given->centre;
  }
}

} // namespace

WallFeature read_wall(KeyReader &reader) {
  WallFeature wall;
  wall.name = read_name(reader, "wall");
  const auto given = read_outline(reader);
  if (given) {
    wall.kind = given->kind;
    wall.outline = given->outline;
    wall.centre = given->centre;
    wall.diameter_mm = given->diameter_mm;
    wall.width_mm = given->width_mm;
    read_wall_sizes(reader, wall);
  } else {
    for (const char *key :
         {"diameter_wanted_mm", "width_x_wanted_mm", "width_y_wanted_mm", "offset_wanted_mm"})
      reader.know(key);
  }
  if (const auto side = reader.choice<Side>("side", kSides, Need::required))
    wall.side = *side;
  const auto bottom_mm = reader.number("bottom_mm", kCoordinate_mm, Need::required);
  const auto top_mm = reader.number("top_mm", kCoordinate_mm, Need::required);
  if (bottom_mm && top_mm) {
    wall.z_bottom_mm = *bottom_mm;
    wall.z_top_mm = *top_mm;
    check_heights(reader, *bottom_mm, *top_mm);
  }
  wall.finish = read_finish(reader);
  return wall;
}

FloorFeature read_floor(KeyReader &reader) {
  FloorFeature floor;
  floor.name = read_name(reader, "floor");
  if (const auto given = read_outline(reader))
    floor.outline = given->outline;
  floor.z_mm = reader.number("z_mm", kCoordinate_mm, Need::required).value_or(0.0);
  floor.height = read_height(reader, floor.z_mm, floor.measured_from_z_mm);
  for (KeyReader &island : reader.tables("island")) {
    if (const auto given = read_outline(island))
      floor.islands.push_back(given->outline);
    island.finish();
  }
  floor.finish = read_finish(reader);
  return floor;
}

DomeFeature read_dome(KeyReader &reader) {
  DomeFeature dome;
  dome.name = read_name(reader, "dome");
  const auto shape = reader.choice<DomeShape>("shape", kDomeShapes, Need::required);
  const bool is_mesh = shape && *shape == DomeShape::mesh;
  if (is_mesh) {
    read_sculpted(reader, dome);
    for (const auto &key : kCapKeys)
      reader.belongs(key.name, false, "shape = \"mesh\"");
  } else if (shape) {
    read_cap(reader, dome);
    for (const char *key : {"mesh", "mesh_moved_mm", "outline", "diameter_mm", "width_x_mm", "width_y_mm",
                            "corner_radius_mm", "start_mm", "elements"})
      reader.belongs(key, false, "shape = \"cap\"");
  } else {
    for (const char *key :
         {"sphere_radius_mm", "apex_mm", "rim_radius_mm", "centre_mm", "mesh", "mesh_moved_mm", "outline",
          "diameter_mm", "width_x_mm", "width_y_mm", "corner_radius_mm", "start_mm", "elements"})
      reader.know(key);
  }
  dome.height = read_height(reader, dome.apex_z_mm, dome.measured_from_z_mm);
  dome.finish = read_finish(reader);
  return dome;
}

} // namespace asperity
