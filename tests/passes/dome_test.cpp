// Domes: the cutter touches the cap everywhere, cusps are as high as the closed form, meshes agree with caps.
#include "asperity/base/units.h"
#include "asperity/passes/cutter_drop.h"
#include "passes/planned.h"

#include <gtest/gtest.h>

#include <cmath>

namespace asperity::test {
namespace {

constexpr double kSphere_mm = 40.0, kApex_mm = 10.0, kRim_mm = 12.0;

/// Part-frame tips of the dome's feed moves below the apex's clearance.
std::vector<Vec3> tips(const Planned &plan) {
  std::vector<Vec3> points;
  for (const PassStroke &stroke : plan.plan.route.strokes())
    if (stroke.cuts() && stroke.begin.z < 10.5)
      points.push_back(stroke.end);
  return points;
}

/// Gap between a cutter with flat f and corner arc c, tip at p, and the sphere: the arc's centre circle must
/// lie R + c from the sphere's centre [derived: distance of a torus section from a sphere].
double gap_mm(Vec3 p, double flat_mm, double corner_mm) {
  const double d = std::hypot(p.x, p.y), up = p.z + corner_mm - (kApex_mm - kSphere_mm);
  if (d <= flat_mm)
    return p.z - kApex_mm;
  return std::hypot(d - flat_mm, up) - kSphere_mm - corner_mm;
}

TEST(Dome, EveryPatternTouchesTheCapWithEveryCutter) {
  const struct {
    int cutter;
    double flat_mm, corner_mm;
  } cutters[] = {{1, 3.0, 0.0}, {2, 0.0, 3.0}, {3, 2.0, 1.0}, {4, 0.1, 0.0}};
  for (const auto &[cutter, flat_mm, corner_mm] : cutters)
    for (const char *keys :
         {"pattern = \"levels\"\nstepdown_mm = 0.2",
          "pattern = \"levels\"\nstepdown_mm = 0.2\norder = \"outwards\"",
          "pattern = \"spiral\"\nstepover_mm = 0.8",
          "pattern = \"parallel\"\nstepover_mm = 0.8\nangle_deg = 20\ndirection = \"both\""}) {
      const auto plan = planned(dome_pass(cutter, keys));
      const auto points = tips(plan);
      ASSERT_GT(points.size(), 15u);
      double farthest = 0.0;
      for (const Vec3 p : points) {
        EXPECT_NEAR(gap_mm(p, flat_mm, corner_mm), 0.0, 1e-9) << cutter << ' ' << keys;
        farthest = std::max(farthest, std::hypot(p.x, p.y));
      }
      EXPECT_NEAR(farthest, flat_mm + (kSphere_mm + corner_mm) * kRim_mm / kSphere_mm, 1e-6)
          << "up to the rim";
    }
}

TEST(Dome, StraightMovesStayWithinTheChordError) {
  const auto plan = planned(dome_pass(2, "pattern = \"spiral\"\nstepover_mm = 1\nchord_error_mm = 0.002"));
  double deepest = 0.0;
  for (const PassStroke &stroke : plan.plan.route.strokes())
    if (stroke.cuts() && stroke.begin.z < 10.0 && std::hypot(stroke.begin.x, stroke.begin.y) > 1e-6)
      deepest = std::max(deepest, -gap_mm(stroke.point(0.5), 0.0, 3.0));
  EXPECT_LE(deepest, 0.0021);
  EXPECT_GT(deepest, 0.0002) << "moves are not needlessly short";
}

TEST(Dome, LevelsAreEvenlySteppedFromApexToRim) {
  const auto plan = planned(dome_pass(2, "pattern = \"levels\"\nstepdown_mm = 0.3\norder = \"outwards\""));
  std::vector<double> heights;
  for (const PassStroke &stroke : plan.plan.route.strokes())
    if (stroke.kind == StrokeKind::arc)
      heights.push_back(stroke.end.z);
  // 43 mm (1 - cos theta), sin theta = 12/40: 1.9809 mm, in 7 steps.
  const double drop_mm = 43.0 * (1.0 - std::sqrt(1.0 - 0.09));
  ASSERT_EQ(heights.size(), 7u);
  for (std::size_t i = 0; i < 7; ++i)
    EXPECT_NEAR(heights[i], kApex_mm - drop_mm * static_cast<double>(i + 1) / 7, 1e-9);
}

TEST(Dome, CuspsBetweenLinesAreAsHighAsTheClosedForm) {
  // At the apex neighbouring lines lie s apart in plan. Ball centres on a sphere of D = R + r, half an angle
  // a = asin(s / 2 D) beside the middle: the cusp stands D cos a - sqrt(r^2 - D^2 sin^2 a) - R above the cap
  // [derived: two circles crossing]. On a plane (R to infinity) that is r - sqrt(r^2 - s^2/4), H of the
  // scallop formula.
  const double s = 0.8, r = 3.0, reach = kSphere_mm + r;
  const auto plan = planned(dome_pass(2, "pattern = \"parallel\"\nstepover_mm = 0.8\ndirection = \"both\""));
  const CutterDrop drop(std::get<DomeFeature>(plan.job.features.back()), plan.job.cutter(2)->profile());
  const double beside = *drop.tip_mm({0.0, 0.0}), next = *drop.tip_mm({0.0, s});
  // The lines planned are at y = 0 and y = s.
  bool has_middle = false, has_next = false;
  for (const Vec3 p : tips(plan)) {
    has_middle = has_middle || std::abs(p.y) < 1e-9;
    has_next = has_next || std::abs(p.y - s) < 1e-9;
  }
  EXPECT_TRUE(has_middle && has_next);
  const Vec2 a{0.0, beside + r}, b{s, next + r}; // ball centres in the plane x = 0
  const double half = 0.5 * glm::distance(a, b);
  const Vec2 middle = 0.5 * (a + b), down = glm::normalize(Vec2(0.0, kApex_mm - kSphere_mm) - middle);
  const Vec2 cusp = middle + std::sqrt(r * r - half * half) * down;
  const double height = glm::distance(cusp, {0.0, kApex_mm - kSphere_mm}) - kSphere_mm;
  const double sin_a = half / reach,
               closed = reach * std::sqrt(1 - sin_a * sin_a) - std::sqrt(r * r - half * half) - kSphere_mm;
  EXPECT_NEAR(height, closed, 1e-9);
  // To first order the plane's H times R/(R + r): the lines touch the cap nearer together than the axis runs.
  const double plane = r - std::sqrt(r * r - s * s / 4);
  EXPECT_NEAR(height, plane * kSphere_mm / reach, 0.01 * plane);
}

Mesh pyramid() {
  // Base 20 x 20 at z 0, apex at (0, 0, 10): four facets of 45 degrees.
  Mesh mesh;
  const Vec3 apex{0, 0, 10}, c[] = {{-10, -10, 0}, {10, -10, 0}, {10, 10, 0}, {-10, 10, 0}};
  for (std::size_t i = 0; i < 4; ++i)
    mesh.triangles.push_back({c[i], c[(i + 1) % 4], apex});
  mesh.low = {-10, -10, 0};
  mesh.high = {10, 10, 10};
  return mesh;
}

TEST(CutterOverMesh, RestsOnVertexEdgeAndFacetByClosedForm) {
  DomeFeature dome;
  dome.surface.emplace(pyramid());
  const CutterDrop ball(dome, CutterProfile::ball(2.0));
  const CutterDrop flat(dome, CutterProfile::flat(2.0));
  EXPECT_NEAR(*ball.tip_mm({0, 0}), 10.0, 1e-9) << "on the apex";
  EXPECT_NEAR(*flat.tip_mm({0, 0}), 10.0, 1e-9);
  EXPECT_NEAR(*flat.tip_mm({1.5, 0}), 10.0, 1e-9) << "the flat still covers the apex";
  // Facet z = 10 - x at x = 6: a ball of radius r stands r (sqrt 2 - 1) above the plane below its axis.
  EXPECT_NEAR(*ball.tip_mm({6, 0}), 4.0 + 2.0 * (std::sqrt(2.0) - 1.0), 1e-9);
  // The flat's edge touches 2 mm uphill.
  EXPECT_NEAR(*flat.tip_mm({6, 0}), 6.0, 1e-9);
  // Edge from apex to corner over (5, 5): slope 1/sqrt 2 along it. Ball: r / cos(slope) - r above the line.
  EXPECT_NEAR(*ball.tip_mm({5, 5}), 5.0 + 2.0 * (std::sqrt(1.5) - 1.0), 1e-9);
  EXPECT_FALSE(ball.tip_mm({30, 0}).has_value());
}

TEST(CutterOverMesh, LinesFollowAPyramidWithTheBallOnItsFacets) {
  const auto plan = planned(
      dome_pass(2, "pattern = \"parallel\"\nstepover_mm = 1\ndirection = \"both\"\nchord_error_mm = 0.001"));
  Job job = plan.job;
  DomeFeature dome;
  dome.name = "cap";
  dome.surface.emplace(pyramid());
  dome.outline = Outline::rounded_rectangle({0, 0}, 19, 19, 0);
  dome.apex_z_mm = 10;
  job.features.back() = dome;
  Problems problems;
  const auto over_mesh = plan_passes(job, problems);
  ASSERT_TRUE(over_mesh);
  std::size_t on_facets = 0;
  for (const PassStroke &stroke : over_mesh->route.strokes()) {
    const Vec3 tip = stroke.point(0.5);
    const double far = std::max(std::abs(tip.x), std::abs(tip.y)),
                 near = std::min(std::abs(tip.x), std::abs(tip.y));
    // Touching 3 mm / sqrt 2 uphill, inside a facet: no edge is nearer.
    if (!stroke.cuts() || stroke.begin.x == stroke.end.x || far - near < 2.2 || stroke.begin.z > 10.4)
      continue;
    EXPECT_NEAR(tip.z, 10.0 - far + 3.0 * (std::sqrt(2.0) - 1.0), 0.0011) << tip.x << ' ' << tip.y;
    ++on_facets;
  }
  EXPECT_GT(on_facets, 20u);
}

TEST(CutterOverMesh, FineCapMeshAgreesWithTheCap) {
  DomeFeature cap;
  cap.sphere_radius_mm = 40;
  cap.apex_z_mm = 10;
  cap.rim_radius_mm = 12;
  Mesh mesh;
  const int rings = 60, spokes = 120;
  const auto at = [&](int i, int k) {
    const double r = 12.0 * i / rings, a = 2 * kPi * k / spokes;
    return Vec3(r * std::cos(a), r * std::sin(a), -30.0 + std::sqrt(1600.0 - r * r));
  };
  for (int i = 0; i < rings; ++i)
    for (int k = 0; k < spokes; ++k) {
      if (i > 0)
        mesh.triangles.push_back({at(i, k), at(i + 1, k), at(i, k + 1)});
      mesh.triangles.push_back({at(i + 1, k), at(i + 1, k + 1), at(i, k + 1)});
    }
  mesh.low = {-12, -12, -30.0 + std::sqrt(1600.0 - 144.0)};
  mesh.high = {12, 12, 10};
  DomeFeature meshed;
  meshed.surface.emplace(mesh);
  for (const auto &profile :
       {CutterProfile::ball(3.0), CutterProfile::flat(3.0), CutterProfile::corner_radius(3.0, 1.0)}) {
    const CutterDrop exact(cap, profile), dropped(meshed, profile);
    for (const Vec2 p : {Vec2(0, 0), Vec2(3.1, 2.2), Vec2(-7, 4), Vec2(0.3, -9)})
      // The longest chord, 0.63 mm at the rim, lies 0.63^2/(8 * 40) = 0.0012 mm inside the sphere.
      EXPECT_NEAR(*exact.tip_mm(p), *dropped.tip_mm(p), 0.0013);
  }
}

} // namespace
} // namespace asperity::test
