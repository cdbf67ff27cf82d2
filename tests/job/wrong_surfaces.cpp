// Walls, floors and domes that cannot be.
#include "wrong_job.h"

namespace asperity {

namespace {

constexpr std::string_view kCircle = "outline = \"circle\"\ncentre_mm = [0.0, 0.0]\ndiameter_mm = 62.0";

/// A wall, to follow the first one, drawn with the given rows of elements from (0, 0).
#define FREE_FORM_WALL(rows)                                                                                 \
  "[[wall]]\nname = \"slot\"\noutline = \"free_form\"\nside = \"inside\"\nbottom_mm = 0.0\ntop_mm = 5.0\n"   \
  "start_mm = [0.0, 0.0]\nelements = [\n" rows "\n]\n[hold_down]"

} // namespace

std::vector<WrongJob> wrong_surfaces() {
  return {
      {"UnknownOutline", "outline = \"circle\"", "outline = \"circel\"", "outline", "cannot be \"circel\"",
       "Did you mean \"circle\"?"},
      {"NoOutline", "outline = \"circle\"\n", "", "[[wall]]", "outline is missing", "Add 'outline'"},
      {"NoName", "name = \"rim\"\n", "", "[[wall]]", "name is missing", "Add 'name'"},
      {"NoSide", "side = \"outside\"\n", "", "[[wall]]", "side is missing", "Add 'side'"},
      {"WallUpsideDown", "bottom_mm = 1.0\ntop_mm = 11.0", "bottom_mm = 11.0\ntop_mm = 1.0", "top_mm = 1.0",
       "leaves no height", "z points up"},
      {"WidthOfACircle", "side = \"outside\"", "side = \"outside\"\nwidth_x_mm = 3.0", "width_x_mm",
       "does not belong to outline = \"circle\"", "Remove 'width_x_mm'"},
      {"WantedWidthOfACircle", "side = \"outside\"",
       "side = \"outside\"\nwidth_x_wanted_mm = { plus = 1, minus = 1 }", "width_x_wanted_mm",
       "does not belong", "Remove"},
      {"CornerRadiusTooLarge", kCircle,
       "outline = \"rounded_rectangle\"\ncentre_mm = [0, 0]\nwidth_x_mm = 20.0\nwidth_y_mm = 9.0\n"
       "corner_radius_mm = 5.0  # wall\ndiameter_wanted = 1",
       "corner_radius_mm = 5.0  # wall", "more than half of the narrower side, 9 mm", "at most half", 2},
      {"ToleranceUpsideDown", "plus = 0.05, minus = 0.05", "plus = -0.05, minus = 0.02", "diameter_wanted_mm",
       "allows nothing", "nominal - minus up to nominal + plus"},
      {"ToleranceOfNothing", "plus = 0.05, minus = 0.05", "plus = 0.0, minus = 0.0", "diameter_wanted_mm",
       "allows nothing", "nominal"},
      {"ToleranceHalfGiven", "plus = 0.05, minus = 0.05", "plus = 0.05", "diameter_wanted_mm",
       "minus is missing", "Add 'minus'"},
      {"ToleranceAsNumber", "diameter_wanted_mm = { nominal = 62.0, plus = 0.05, minus = 0.05 }",
       "diameter_wanted_mm = 62.0", "diameter_wanted_mm", "must be one section, not a number",
       "diameter_wanted_mm = { ... }"},
      {"SameNameTwice", "[hold_down]",
       "[[floor]]\nname = \"rim\"  # again\noutline = \"circle\"\ncentre_mm = [0, 0]\ndiameter_mm = "
       "5.0\nz_mm = 3.0\n"
       "[hold_down]",
       "name = \"rim\"  # again", "used by two surfaces", "its own name"},
      {"OutlineThatDoesNotClose", "[hold_down]",
       FREE_FORM_WALL(
           "{ line_to_mm = [9.0, 0.0] },\n{ line_to_mm = [9.0, 9.0] },\n{ line_to_mm = [0.0, 0.5] }"),
       "elements", "do not close: the last one ends 0.5000 mm", "End the last element at [0, 0]"},
      {"OutlineThatCrossesItself", "[hold_down]",
       FREE_FORM_WALL(
           "{ line_to_mm = [9.0, 9.0] }, { line_to_mm = [9.0, 0.0] }, { line_to_mm = [0.0, 9.0] },\n"
           "{ line_to_mm = [0.0, 0.0] }"),
       "elements", "make no usable outline", "does not cross itself"},
      {"OutlineStandingStill", "[hold_down]",
       FREE_FORM_WALL(
           "{ line_to_mm = [9.0, 0.0] }, { line_to_mm = [9.0, 0.0] }, { line_to_mm = [0.0, 9.0] },\n"
           "{ line_to_mm = [0.0, 0.0] }"),
       "elements", "make no usable outline", "one closed line"},
      {"ArcWithTwoRadii", "[hold_down]",
       FREE_FORM_WALL("{ line_to_mm = [8.0, 0.0] },\n"
                      "{ arc_to_mm = [0.0, 0.0], centre_mm = [4.5, 0.0], turn = \"left\" }"),
       "centre_mm = [4.5", "is 3.5000 mm from the arc's beginning but 4.5000 mm from its end",
       "both radii agree"},
      {"ArcWithoutRadius", "[hold_down]",
       FREE_FORM_WALL("{ arc_to_mm = [8.0, 0.0], centre_mm = [0.0, 0.0], turn = \"left\" }"),
       "centre_mm = [0.0, 0.0], t", "has no radius", "Move the centre"},
      {"ArcWithoutTurn", "[hold_down]", FREE_FORM_WALL("{ arc_to_mm = [8.0, 0.0], centre_mm = [4.0, 0.0] }"),
       "{ arc_to_mm", "turn is missing", "Add 'turn'"},
      {"LineWithACentre", "[hold_down]",
       FREE_FORM_WALL("{ line_to_mm = [8.0, 0.0], centre_mm = [4.0, 1.0] }"), "centre_mm = [4.0, 1.0]",
       "does not belong to a line", "Remove", 2},
      {"ElementOfNothing", "[hold_down]", FREE_FORM_WALL("{ }"), "{ }", "line_to_mm is missing", "arc_to_mm"},
      {"ElementsAsNumbers", "[hold_down]", FREE_FORM_WALL("1, 2, 3"), "elements",
       "must be a list of sections", "elements"},
      {"ElementsMissing", kCircle,
       "outline = \"free_form\"\nstart_mm = [0.0, 0.0]\noffset_wanted_mm = {plus=1,minus=1}", "[[wall]]",
       "elements is missing", "lead back to start_mm"},
      {"CapWiderThanItsSphere", "[hold_down]",
       "[[dome]]\nname = \"cap\"\nshape = \"cap\"\ncentre_mm = [0, 0]\nsphere_radius_mm = 10.0\napex_mm = "
       "14.0\n"
       "rim_radius_mm = 11.0\n[hold_down]",
       "rim_radius_mm", "larger than the sphere's radius 10 mm", "half sphere"},
      {"OutlineOnACap", "[hold_down]",
       "[[dome]]\nname = \"cap\"\nshape = \"cap\"\ncentre_mm = [0, 0]\nsphere_radius_mm = 20.0\napex_mm = "
       "14.0\n"
       "rim_radius_mm = 11.0\noutline = \"circle\"  # cap\n[hold_down]",
       "outline = \"circle\"  # cap", "does not belong to shape = \"cap\"", "Remove 'outline'"},
      {"FloorWithoutHeight", "[hold_down]",
       "[[floor]]\nname = \"seat\"\noutline = \"circle\"\ncentre_mm = [0, 0]\ndiameter_mm = 5.0\n[hold_down]",
       "[[floor]]", "z_mm is missing", "Add 'z_mm'"},
      {"IslandWithoutDiameter", "[hold_down]",
       "[[floor]]\nname = \"seat\"\noutline = \"circle\"\ncentre_mm = [0, 0]\ndiameter_mm = 50.0\nz_mm = "
       "3.0\n"
       "[[floor.island]]\noutline = \"circle\"\ncentre_mm = [0, 0]\n[hold_down]",
       "[[floor.island]]", "diameter_mm is missing", "Add 'diameter_mm'"},
  };
}

} // namespace asperity
