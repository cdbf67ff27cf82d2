// Blank shapes, outlines and meshes as they are read from a job.
#include "job_text.h"

#include <gtest/gtest.h>

#include <fmt/format.h>

namespace asperity {
namespace {

constexpr double kRounding = 1e-9;

/// ASCII STL of a box.
std::string box_stl(Vec3 low, Vec3 high) {
  constexpr int kFaces[12][3] = {{0, 2, 1}, {1, 2, 3}, {4, 5, 6}, {5, 7, 6}, {0, 1, 4}, {1, 5, 4},
                                 {2, 6, 3}, {3, 6, 7}, {0, 4, 2}, {2, 4, 6}, {1, 3, 5}, {3, 7, 5}};
  std::string text = "solid box\n";
  for (const auto &face : kFaces) {
    text += "facet normal 0 0 0\nouter loop\n";
    for (int i : face)
      text += fmt::format("vertex {} {} {}\n", i & 1 ? high.x : low.x, i & 2 ? high.y : low.y,
                          i & 4 ? high.z : low.z);
    text += "endloop\nendfacet\n";
  }
  return text + "endsolid box\n";
}

constexpr std::string_view kCylinder =
    "shape = \"cylinder\"\ndiameter_mm = 63.0\nbottom_mm = 0.0\ntop_mm = 12.0";

std::string with_blank(std::string_view blank) { return replaced(kSmallJob, kCylinder, blank); }

Job read_with_mesh(const std::string &text) {
  const TestFolder folder;
  folder.write("sheave.ngc", "M2\n");
  folder.write("box.stl", box_stl({0, 0, 0}, {64, 64, 14}));
  Problems problems;
  const auto job = read_job(folder.write("sheave.toml", text), problems);
  for (const Problem &each : problems.all())
    ADD_FAILURE() << text_of(each);
  return job.value_or(Job{});
}

TEST(ShapesRead, BoxBlank) {
  const Blank blank =
      read_with_mesh(
          with_blank("shape = \"box\"\ncentre_mm = [1, 2]\nsize_x_mm = 66\nsize_y_mm = 64\nbottom_mm = -1\n"
                     "top_mm = 12\nallowance_mm = 0.5"))
          .blank;
  EXPECT_EQ(blank.low_mm(), Vec2(1 - 33.5, 2 - 32.5));
  EXPECT_EQ(blank.z_bottom_mm, -1);
}

TEST(ShapesRead, RevolvedBlankTakesItsHeightsFromTheProfile) {
  const Blank blank =
      read_with_mesh(with_blank("shape = \"revolved\"\nprofile_mm = [[32, -0.5], [31.5, 6], [32, 12.5]]"))
          .blank;
  EXPECT_EQ(blank.z_bottom_mm, -0.5);
  EXPECT_EQ(blank.z_top_mm, 12.5);
  EXPECT_NEAR(blank.plan_depth_mm({0, 0}, 6), 31.5, kRounding);
}

TEST(ShapesRead, MeshBlankIsMovedIntoPlace) {
  const Blank blank =
      read_with_mesh(with_blank("shape = \"mesh\"\nmesh = \"box.stl\"\nmesh_moved_mm = [-32, -32, -1]"))
          .blank;
  EXPECT_EQ(blank.z_bottom_mm, -1);
  EXPECT_EQ(blank.z_top_mm, 13);
  EXPECT_NEAR(blank.plan_depth_mm({30, 0}, 5), 2, kRounding);
}

TEST(ShapesRead, MeshDomeIsLimitedByItsOutline) {
  const Job job = read_with_mesh(replaced(
      kSmallJob, "[hold_down]",
      "[[dome]]\nname = \"crown\"\nshape = \"mesh\"\nmesh = \"box.stl\"\nmesh_moved_mm = [-32, -32, 0]\n"
      "outline = \"circle\"\ncentre_mm = [0, 0]\ndiameter_mm = 20\nheight_wanted_mm = { plus = 1, minus = 1 "
      "}\n"
      "[hold_down]"));
  const auto &dome = std::get<DomeFeature>(job.features.at(1));
  ASSERT_TRUE(dome.surface.has_value());
  EXPECT_NEAR(dome.surface->top_mm({1, 1}).value(), 14, kRounding);
  EXPECT_EQ(dome.apex_z_mm, 14);
  EXPECT_EQ(dome.height->nominal_mm, 14);
  EXPECT_NEAR(dome.outline.depth_mm({0, 0}), 10, kRounding);
}

TEST(ShapesRead, MeshThatIsNotThereOrNoMeshIsReported) {
  for (const char *name : {"absent.stl", "sheave.ngc", "."}) {
    const std::string text = with_blank(fmt::format("shape = \"mesh\"\nmesh = \"{}\"", name));
    Problems problems;
    EXPECT_FALSE(read_text(text, problems).has_value()) << name;
    ASSERT_FALSE(problems.all().empty());
    const Problem &last = problems.all().back();
    EXPECT_NE(last.message.find("names a mesh that cannot be used"), std::string::npos) << text_of(last);
    EXPECT_EQ(last.line, place_of(text, "mesh = ").line);
  }
}

/// The small job's wall drawn with these elements.
WallFeature drawn(const std::string &start_and_elements) {
  const std::string text =
      replaced(replaced(kSmallJob, "outline = \"circle\"\ncentre_mm = [0.0, 0.0]\ndiameter_mm = 62.0",
                        "outline = \"free_form\"\n" + start_and_elements),
               "diameter_wanted_mm = { nominal = 62.0, plus = 0.05, minus = 0.05 }\n", "");
  return std::get<WallFeature>(read_with_mesh(text).features.at(0));
}

TEST(ShapesRead, OutlineDrawnClockwiseBoundsTheSameArea) {
  const WallFeature wall =
      drawn("start_mm = [0, 0]\nelements = [{line_to_mm = [0, 4]}, {line_to_mm = [3, 4]}, "
            "{line_to_mm = [3, 0]}, {line_to_mm = [0, 0]}]");
  EXPECT_NEAR(wall.outline.area_mm2(), 12, kRounding);
  EXPECT_NEAR(wall.outline.depth_mm({1, 2}), 1, kRounding);
  EXPECT_EQ(wall.centre, Vec2(1.5, 2));
}

TEST(ShapesRead, ArcsTurnTheWayTheyAreTold) {
  constexpr double kHalfDisc = 3.14159265358979323846 * 4 / 2;
  const WallFeature out =
      drawn("start_mm = [0, 0]\nelements = [{line_to_mm = [4, 0]}, {line_to_mm = [4, 9]}, "
            "{arc_to_mm = [0, 9], centre_mm = [2, 9], turn = \"left\"}, {line_to_mm = [0, 0]}]");
  EXPECT_NEAR(out.outline.area_mm2(), 36 + kHalfDisc, kRounding);
  const WallFeature in =
      drawn("start_mm = [0, 0]\nelements = [{line_to_mm = [4, 0]}, {line_to_mm = [4, 9]}, "
            "{arc_to_mm = [0, 9], centre_mm = [2, 9], turn = \"right\"}, {line_to_mm = [0, 0]}]");
  EXPECT_NEAR(in.outline.area_mm2(), 36 - kHalfDisc, kRounding);
}

TEST(ShapesRead, OneArcAllRoundIsACircle) {
  const WallFeature wall =
      drawn("start_mm = [5, 0]\nelements = [{arc_to_mm = [5, 0], centre_mm = [0, 0], turn = \"left\"}]");
  EXPECT_NEAR(wall.outline.depth_mm({0, 3}), 2, kRounding);
}

} // namespace
} // namespace asperity
