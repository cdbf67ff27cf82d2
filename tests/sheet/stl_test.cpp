// STL of parts whose volume and area are formulas.
#include "asperity/sheet/export.h"

#include "properties/small_job.h"

#include <array>
#include <cmath>
#include <cstring>
#include <map>
#include <set>

namespace asperity {
namespace {

using test::boss_job;
using test::boss_program;
using test::predicted;

constexpr double kFloatShare = 1e-5; // corners are stored in floats

struct Corner {
  float x = 0, y = 0, z = 0;
  auto operator<=>(const Corner &) const = default;
};
using Triangles = std::vector<std::array<Corner, 3>>;

/// Binary STL: 80 bytes, a count, then normal, three corners and two bytes each.
Triangles read_stl(const std::string &bytes) {
  std::uint32_t count = 0;
  std::memcpy(&count, bytes.data() + 80, 4);
  EXPECT_EQ(bytes.size(), 84 + 50 * std::size_t(count));
  EXPECT_NE(bytes.substr(0, 5), "solid"); // that word would call it a text file
  Triangles all(count);
  for (std::size_t k = 0; k < count; ++k)
    std::memcpy(all[k].data(), bytes.data() + 84 + 50 * k + 12, 36);
  return all;
}

/// Divergence theorem: a sixth of the sum of a . (b x c).
double volume_mm3(const Triangles &triangles) {
  double six = 0.0;
  for (const auto &[a, b, c] : triangles)
    six += glm::dot(Vec3(a.x, a.y, a.z), glm::cross(Vec3(b.x, b.y, b.z), Vec3(c.x, c.y, c.z)));
  return six / 6.0;
}

double area_mm2(const Triangles &triangles) {
  double twice = 0.0;
  for (const auto &[a, b, c] : triangles)
    twice +=
        glm::length(glm::cross(Vec3(b.x - a.x, b.y - a.y, b.z - a.z), Vec3(c.x - a.x, c.y - a.y, c.z - a.z)));
  return 0.5 * twice;
}

/// Every edge once in each direction: closed, manifold, turned outwards alike.
void expect_closed(const Triangles &triangles) {
  std::map<std::pair<Corner, Corner>, int> edges;
  for (const auto &t : triangles)
    for (int k = 0; k < 3; ++k)
      ++edges[{t[std::size_t(k)], t[std::size_t((k + 1) % 3)]}];
  for (const auto &[edge, times] : edges) {
    ASSERT_EQ(times, 1);
    ASSERT_TRUE(edges.contains({edge.second, edge.first}));
  }
}

/// Corners on the lower face whose distance from the axis is nearest to radius_mm.
int corners_round(const Triangles &triangles, double radius_mm) {
  std::set<Corner> ring;
  for (const auto &t : triangles)
    for (const Corner &corner : t)
      if (corner.z == 0.0f && std::abs(std::hypot(corner.x, corner.y) - radius_mm) < 0.1)
        ring.insert(corner);
  return static_cast<int>(ring.size());
}

double disc_mm2(double radius_mm, int corners) {
  return 0.5 * corners * radius_mm * radius_mm * std::sin(2.0 * kPi / corners);
}

TEST(Stl, ABossIsAClosedDiscOfItsVolume) {
  const StlPart part = stl_part(predicted(boss_job(), boss_program()), kExportCells);
  EXPECT_TRUE(part.is_closed);
  const Triangles triangles = read_stl(part.bytes);
  EXPECT_EQ(triangles.size(), part.triangles);
  expect_closed(triangles);
  const double wanted = 4.0 * disc_mm2(10.0, corners_round(triangles, 10.0));
  EXPECT_NEAR(volume_mm3(triangles), wanted, kFloatShare * wanted);
}

// Plane geometry: 0.05 mm too high leaves the top 0.05 mm higher and a lip of 0.4 mm (the blank) 0.05 mm
// high.
TEST(Stl, ErrorsShowInTheVolume) {
  Job job = boss_job();
  job.effects.zero_error = true;
  job.setup.z_zero_error_mm = 0.05;
  const Triangles triangles = read_stl(stl_part(predicted(job, boss_program()), kExportCells).bytes);
  expect_closed(triangles);
  float top = 0.0f;
  for (const auto &t : triangles)
    for (const Corner &corner : t)
      top = std::max(top, corner.z);
  EXPECT_NEAR(top, 4.05, 1e-5);
}

TEST(Stl, AHoleRunsThroughTheClosedPart) {
  Job job = boss_job();
  job.blank.rounds = {{{0, 0}, 7.0, 0.0, 4.2, true}};
  WallFeature hole;
  hole.name = "bush hole";
  hole.outline = Outline::circle({0, 0}, 8.0);
  hole.diameter_mm = 8.0;
  hole.side = Side::inside;
  hole.z_top_mm = 4.0;
  job.features.push_back(hole);
  const StlPart part = stl_part(predicted(job, boss_program()), kExportCells);
  EXPECT_TRUE(part.is_closed);
  const Triangles triangles = read_stl(part.bytes);
  expect_closed(triangles);
  // The hole is not cut: it stays 7 mm, as the blank brings it.
  const double wanted =
      4.0 * (disc_mm2(10.0, corners_round(triangles, 10.0)) - disc_mm2(3.5, corners_round(triangles, 3.5)));
  EXPECT_NEAR(volume_mm3(triangles), wanted, kFloatShare * wanted);
}

TEST(Stl, AStepInThePartMakesOpenSurfacesAndSaysSo) {
  Job job = boss_job();
  std::get<FloorFeature>(job.features[1]).z_mm = 3.0;
  job.features.erase(job.features.begin()); // the wall: only the floor is left
  const StlPart part = stl_part(predicted(job, boss_program()), kExportCells);
  EXPECT_FALSE(part.is_closed);
  EXPECT_NE(part.contents.find("Open surfaces"), std::string::npos);
  // A disc of 20 mm less half a cell (0.2 mm) at the rim, whose cells are whole or left out.
  const double area = area_mm2(read_stl(part.bytes));
  EXPECT_LT(area, kPi * 10.0 * 10.0);
  EXPECT_GT(area, kPi * 9.7 * 9.7);
}

} // namespace
} // namespace asperity
