// Blanks that cannot be.
#include "wrong_job.h"

namespace asperity {

std::vector<WrongJob> wrong_blanks() {
  return {
      {"NoBlank", "[blank]\nshape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0\n", "",
       "title", "blank is missing", "Add 'blank'"},
      {"UnknownShape", "shape = \"cylinder\"", "shape = \"cilinder\"", "shape", "cannot be \"cilinder\"",
       "Did you mean \"cylinder\"?"},
      {"TopBelowBottom", "bottom_mm = 0.0\ntop_mm = 12.0", "bottom_mm = 12.0\ntop_mm = 0.0  # blank",
       "top_mm = 0.0  # blank", "leaves no height", "z points up"},
      {"FlatBlank", "bottom_mm = 0.0\ntop_mm = 12.0", "bottom_mm = 12.0\ntop_mm = 12.0", "top_mm",
       "leaves no height", "z points up"},
      {"BoxSizeOnACylinder", "diameter_mm = 63.0", "diameter_mm = 63.0\nsize_x_mm = 60.0", "size_x_mm",
       "does not belong to shape = \"cylinder\"", "Remove 'size_x_mm'"},
      {"MeshOnACylinder", "diameter_mm = 63.0", "diameter_mm = 63.0\nmesh = \"a.stl\"", "mesh",
       "does not belong to shape = \"cylinder\"", "Remove 'mesh'"},
      {"ProfileOfOnePoint", "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0",
       "shape = \"revolved\"\nprofile_mm = [[31.0, 0.0]]", "profile_mm", "has only one point", "[radius, z]"},
      {"ProfileThatDoesNotRise", "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0",
       "shape = \"revolved\"\nprofile_mm = [[31.0, 0.0], [31.0, 5.0], [20.0, 5.0]]", "profile_mm",
       "does not rise at point 3", "from bottom to top"},
      {"ProfileWithNegativeRadius",
       "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0",
       "shape = \"revolved\"\nprofile_mm = [[31.0, 0.0], [-1.0, 5.0]]", "profile_mm",
       "radius below 0 at point 2", "at least 0"},
      {"ProfileRowOfThree", "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0",
       "shape = \"revolved\"\nprofile_mm = [[31.0, 0.0], [31.0, 5.0, 1.0]]", "profile_mm",
       "must be a list of 2 numbers", "[x, y]"},
      {"GrownFromAnUnknownWall", "shape = \"cylinder\"\ndiameter_mm = 63.0",
       "shape = \"grown\"\ngrown_from = \"rin\"\nallowance_mm = 0.5", "grown_from", "is no wall of this job",
       "Did you mean \"rim\"?"},
      {"GrownWithoutAllowance", "shape = \"cylinder\"\ndiameter_mm = 63.0",
       "shape = \"grown\"\ngrown_from = \"rim\"", "blank]", "allowance_mm is missing", "Add 'allowance_mm'"},
      {"NegativeAllowance", "diameter_mm = 63.0", "diameter_mm = 63.0\nallowance_mm = -0.5", "allowance_mm",
       "at least 0", "unit"},
      {"MeshNotNamed", "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0",
       "shape = \"mesh\"", "blank]", "mesh is missing", "Add 'mesh'"},
      {"FootWithoutHeight", "diameter_mm = 63.0", "diameter_mm = 63.0\nelephant_foot_mm = 0.2", "blank]",
       "elephant_foot_height_mm is missing", "Add"},
      {"FootOfNoHeight", "diameter_mm = 63.0",
       "diameter_mm = 63.0\nelephant_foot_mm = 0.2\nelephant_foot_height_mm = 0.0", "elephant_foot_height_mm",
       "there is an elephant foot", "faded away"},
      {"FootHigherThanTheBlank", "diameter_mm = 63.0",
       "diameter_mm = 63.0\nelephant_foot_mm = 0.2\nelephant_foot_height_mm = 20.0",
       "elephant_foot_height_mm", "more than the blank's height", "Check"},
      {"HoleWithoutDiameter", "[[wall]]", "[[blank.hole]]\ncentre_mm = [0, 0]\n[[wall]]", "[[blank.hole]]",
       "diameter_mm is missing", "Add 'diameter_mm'"},
      {"HoleUpsideDown", "[[wall]]",
       "[[blank.hole]]\ncentre_mm = [0, 0]\ndiameter_mm = 5.0\nbottom_mm = 9.0\ntop_mm = 2.0\n[[wall]]",
       "top_mm = 2.0", "leaves no height", "z points up"},
      {"ThickLayers", "diameter_mm = 63.0", "diameter_mm = 63.0\nlayer_height_mm = 20.0", "layer_height_mm",
       "at most 5", "unit"},
  };
}

} // namespace asperity
