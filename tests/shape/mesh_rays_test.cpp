// Rays and slices of meshes of known shape.
#include "asperity/shape/mesh.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace asperity {
namespace {

constexpr double kRounding_mm = 1e-12;

void measure(Mesh &mesh) {
  mesh.low = mesh.high = mesh.triangles.front()[0];
  for (const auto &t : mesh.triangles)
    for (const Vec3 &p : t) {
      mesh.low = glm::min(mesh.low, p);
      mesh.high = glm::max(mesh.high, p);
    }
}

void add_quad(Mesh &mesh, Vec3 a, Vec3 b, Vec3 c, Vec3 d) {
  mesh.triangles.push_back({a, b, c});
  mesh.triangles.push_back({a, c, d});
}

/// A prism over a regular polygon round the origin, from z = 0 to the given height, its top tilted by slope
/// in x.
Mesh prism(int sides, double radius, double height, double slope) {
  Mesh mesh;
  const auto at = [&](int i, bool top) {
    const double a = 2.0 * kPi * (i % sides) / sides, x = radius * std::cos(a), y = radius * std::sin(a);
    return Vec3(x, y, top ? height + slope * x : 0.0);
  };
  for (int i = 0; i < sides; ++i) {
    add_quad(mesh, at(i, false), at(i + 1, false), at(i + 1, true), at(i, true));
    mesh.triangles.push_back({Vec3(0, 0, height), at(i, true), at(i + 1, true)});
    mesh.triangles.push_back({Vec3(0, 0, 0), at(i + 1, false), at(i, false)});
  }
  measure(mesh);
  return mesh;
}

/// Depth in a regular polygon round the origin, by its sides: a closed form for points inside.
double polygon_depth(int sides, double radius, Vec2 p) {
  double depth = std::numeric_limits<double>::infinity();
  for (int i = 0; i < sides; ++i) {
    const double a = 2.0 * kPi * (i + 0.5) / sides;
    depth = std::min(depth, radius * std::cos(kPi / sides) - glm::dot(p, Vec2(std::cos(a), std::sin(a))));
  }
  return depth;
}

TEST(MeshRays, TopOfATiltedPrismIsItsPlane) {
  const MeshRays rays(prism(60, 10.0, 5.0, 0.2));
  std::mt19937 random(5);
  std::uniform_real_distribution<double> across(-11.0, 11.0);
  for (int i = 0; i < 20000; ++i) {
    const Vec2 p(across(random), across(random));
    const double depth = polygon_depth(60, 10.0, p);
    if (std::abs(depth) < 1e-9)
      continue; // on the rim either answer is right
    const auto top = rays.top_mm(p);
    ASSERT_EQ(top.has_value(), depth > 0.0) << p.x << " " << p.y;
    if (top) {
      ASSERT_NEAR(*top, 5.0 + 0.2 * p.x, kRounding_mm);
    }
  }
}

TEST(MeshRays, NoRaySlipsThroughBetweenNeighbours) {
  const MeshRays rays(prism(12, 10.0, 5.0, 0.0));
  for (int i = 0; i < 12; ++i)
    for (int k = 0; k < 100; ++k) {
      const double a = 2.0 * kPi * i / 12, r = 0.0999 * k;
      EXPECT_TRUE(rays.top_mm({r * std::cos(a), r * std::sin(a)})) << "edge " << i << " at " << r;
    }
}

TEST(MeshRays, TheHighestOfSeveralCrossingsIsTheTop) {
  Mesh mesh;
  for (const double z : {1.0, 7.0, 3.0})
    add_quad(mesh, {0, 0, z}, {4, 0, z}, {4, 4, z}, {0, 4, z});
  measure(mesh);
  EXPECT_EQ(MeshRays(mesh).top_mm({1, 2}), 7.0);
}

TEST(MeshRays, SliceDepthOfAPrismMatchesItsPolygon) {
  for (const int sides : {3, 8, 300}) {
    const MeshRays rays(prism(sides, 10.0, 5.0, 0.0));
    std::mt19937 random(11);
    std::uniform_real_distribution<double> across(-15.0, 15.0);
    for (int i = 0; i < 3000; ++i) {
      const Vec2 p(across(random), across(random));
      const double inside = polygon_depth(sides, 10.0, p), found = rays.plan_depth_mm(p, 2.5);
      if (inside > 0.0)
        ASSERT_NEAR(found, inside, 1e-11)
            << sides << " sides at " << p.x << " " << p.y; // slices are interpolated
      else
        ASSERT_LE(found, inside + 1e-11); // outside, the nearest corner is at least as far as any side's line
    }
  }
}

TEST(MeshRays, SliceDepthOutsideACornerIsTheDistanceToIt) {
  const MeshRays rays(prism(4, 10.0, 5.0, 0.0)); // corners on the axes
  EXPECT_NEAR(rays.plan_depth_mm({13.0, 0.0}, 1.0), -3.0, 1e-11);
  EXPECT_NEAR(rays.plan_depth_mm({0.0, -1000.0}, 1.0), -990.0, 1e-10);
}

TEST(MeshRays, AHoleIsOutside) {
  Mesh mesh = prism(200, 10.0, 5.0, 0.0);
  for (const auto &t : prism(200, 4.0, 5.0, 0.0).triangles)
    mesh.triangles.push_back({t[0], t[2], t[1]});
  const MeshRays rays(mesh);
  EXPECT_LT(rays.plan_depth_mm({0.3, 0.2}, 2.0), -3.0);
  EXPECT_NEAR(rays.plan_depth_mm({0.0, 7.0}, 2.0), 3.0, 10.0 * (1.0 - std::cos(kPi / 200.0)));
}

TEST(MeshRays, AConeSlicesToItsRadiusAtEveryHeight) {
  Mesh cone;
  constexpr int kSides = 720;
  for (int i = 0; i < kSides; ++i) {
    const double a = 2.0 * kPi * i / kSides, b = 2.0 * kPi * (i + 1) / kSides;
    cone.triangles.push_back({Vec3(8 * std::cos(a), 8 * std::sin(a), 0),
                              Vec3(8 * std::cos(b), 8 * std::sin(b), 0), Vec3(0, 0, 4)});
  }
  measure(cone);
  const MeshRays rays(cone);
  const double sagitta = 8.0 * (1.0 - std::cos(kPi / kSides));
  for (const double z : {0.5, 1.0, 3.0})
    EXPECT_NEAR(rays.plan_depth_mm({0.1, 0.0}, z), 8.0 - 2.0 * z - 0.1, sagitta);
}

TEST(MeshRays, AboveAndBelowThereIsNothing) {
  const MeshRays rays(prism(8, 10.0, 5.0, 0.0));
  EXPECT_EQ(rays.plan_depth_mm({0, 0}, 5.1), -INFINITY);
  EXPECT_EQ(rays.plan_depth_mm({0, 0}, -0.1), -INFINITY);
  EXPECT_FALSE(MeshRays().top_mm({0, 0}));
}

} // namespace
} // namespace asperity
