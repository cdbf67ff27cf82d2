// Triangles of plain solids.
#include "solid_shape.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kArcStep_rad = rad_from_deg(3.0);
constexpr int kTurnedSides = 72;

std::array<float, 3> floats(Vec3 p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

/// Where the edges of the loops cross the level line y, between the two ends of a slab without corners.
struct Crossing {
  double x_low = 0, x_high = 0; ///< at the slab's lower and upper end
};

std::vector<Crossing> crossings(const std::vector<Loop> &loops, double y_low, double y_high) {
  std::vector<Crossing> found;
  for (const Loop &loop : loops)
    for (std::size_t k = 0; k < loop.size(); ++k) {
      Vec2 a = loop[k], b = loop[(k + 1) % loop.size()];
      if (a.y > b.y)
        std::swap(a, b);
      if (a.y > y_low || b.y < y_high || a.y == b.y)
        continue;
      const auto x_at = [&](double y) { return a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y); };
      found.push_back({x_at(y_low), x_at(y_high)});
    }
  std::sort(found.begin(), found.end(),
            [](const Crossing &l, const Crossing &r) { return l.x_low + l.x_high < r.x_low + r.x_high; });
  return found;
}

} // namespace

Loop loop_of(const Outline &outline, double offset_mm) {
  Loop loop;
  for (std::size_t e = 0; e < outline.elements().size(); ++e) {
    const OutlineElement &element = outline.elements()[e];
    const int steps =
        element.is_arc()
            ? std::max(1, static_cast<int>(std::ceil(std::abs(element.sweep_rad) / kArcStep_rad)))
            : 1;
    // A line moved out needs both its ends: at a corner they part.
    const int last = offset_mm != 0.0 ? steps : steps - 1;
    for (int k = 0; k <= last; ++k) {
      const double s = element.length_mm() * k / steps;
      const Vec2 tangent = element.tangent(s);
      loop.push_back(element.point(s) - offset_mm * left_of(tangent));
    }
  }
  return loop;
}

Loop circle_loop(Vec2 centre, double diameter_mm) {
  Loop loop;
  for (int k = 0; k < 120; ++k) {
    const double a = 2.0 * kPi * k / 120;
    loop.push_back(centre + 0.5 * diameter_mm * Vec2(std::cos(a), std::sin(a)));
  }
  return loop;
}

Loop box_loop(Vec2 centre, Vec2 size_mm) {
  const Vec2 h = 0.5 * size_mm;
  return {centre + Vec2(-h.x, -h.y), centre + Vec2(h.x, -h.y), centre + Vec2(h.x, h.y),
          centre + Vec2(-h.x, h.y)};
}

void SolidShape::triangle(Vec3 a, Vec3 b, Vec3 c, Vec3 na, Vec3 nb, Vec3 nc) {
  vertices_.push_back({floats(a), floats(na)});
  vertices_.push_back({floats(b), floats(nb)});
  vertices_.push_back({floats(c), floats(nc)});
}

void SolidShape::quad(const std::array<Vec3, 4> &p, const std::array<Vec3, 4> &n) {
  triangle(p[0], p[1], p[2], n[0], n[1], n[2]);
  triangle(p[0], p[2], p[3], n[0], n[2], n[3]);
}

void SolidShape::add_sides(const Loop &loop, double z_bottom_mm, double z_top_mm, bool points_outwards) {
  double area = 0.0;
  for (std::size_t k = 0; k < loop.size(); ++k)
    area += cross(loop[k], loop[(k + 1) % loop.size()]);
  const double sign = (area >= 0.0) == points_outwards ? 1.0 : -1.0;
  const std::size_t n = loop.size();
  const auto side_normal = [&](std::size_t k) {
    const Vec2 way = loop[(k + 1) % n] - loop[k % n];
    const double length = glm::length(way);
    return length > 0.0 ? -sign / length * left_of(way) : Vec2(0.0);
  };
  const auto corner_normal = [&](std::size_t side, std::size_t neighbour) {
    // Round where the loop turns gently, sharp at a corner.
    const Vec2 a = side_normal(side), b = side_normal(neighbour);
    const Vec2 normal = glm::dot(a, b) > 0.85 ? glm::normalize(a + b) : a;
    return Vec3(normal, 0.0);
  };
  for (std::size_t k = 0; k < n; ++k) {
    const Vec2 a = loop[k], b = loop[(k + 1) % n];
    const Vec3 na = corner_normal(k, (k + n - 1) % n), nb = corner_normal(k, (k + 1) % n);
    quad({Vec3(a, z_bottom_mm), Vec3(b, z_bottom_mm), Vec3(b, z_top_mm), Vec3(a, z_top_mm)},
         {na, nb, nb, na});
  }
}

void SolidShape::add_cap(const std::vector<Loop> &loops, double z_mm, bool faces_up) {
  // Slabs between all corner heights hold nothing but trapezoids.
  std::vector<double> heights;
  for (const Loop &loop : loops)
    for (Vec2 p : loop)
      heights.push_back(p.y);
  std::sort(heights.begin(), heights.end());
  heights.erase(std::unique(heights.begin(), heights.end(), [](double a, double b) { return b - a < 1e-9; }),
                heights.end());
  const Vec3 up(0.0, 0.0, faces_up ? 1.0 : -1.0);
  for (std::size_t k = 0; k + 1 < heights.size(); ++k) {
    const double low = heights[k], high = heights[k + 1];
    const std::vector<Crossing> sides = crossings(loops, low + 1e-12, high - 1e-12);
    for (std::size_t s = 0; s + 1 < sides.size(); s += 2)
      quad({Vec3(sides[s].x_low, low, z_mm), Vec3(sides[s + 1].x_low, low, z_mm),
            Vec3(sides[s + 1].x_high, high, z_mm), Vec3(sides[s].x_high, high, z_mm)},
           {up, up, up, up});
  }
}

void SolidShape::add_prism(const std::vector<Loop> &loops, double z_bottom_mm, double z_top_mm) {
  for (std::size_t k = 0; k < loops.size(); ++k)
    add_sides(loops[k], z_bottom_mm, z_top_mm, k == 0);
  add_cap(loops, z_top_mm);
  add_cap(loops, z_bottom_mm, false);
}

void SolidShape::add_turned(const std::vector<Vec2> &profile_mm, Vec3 centre) {
  for (std::size_t k = 0; k + 1 < profile_mm.size(); ++k) {
    const Vec2 a = profile_mm[k], b = profile_mm[k + 1], way = b - a;
    if (glm::length(way) <= 0.0)
      continue;
    const Vec2 out = -left_of(glm::normalize(way)); // to the right of a profile that rises
    for (int s = 0; s < kTurnedSides; ++s) {
      const auto round = [&](Vec2 p, int side) {
        const double angle = 2.0 * kPi * side / kTurnedSides;
        return Vec3(p.x * std::cos(angle), p.x * std::sin(angle), p.y);
      };
      quad({centre + round(a, s), centre + round(a, s + 1), centre + round(b, s + 1), centre + round(b, s)},
           {round(out, s), round(out, s + 1), round(out, s + 1), round(out, s)});
    }
  }
}

void SolidShape::add_flat(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const Vec3 up(0.0, 0.0, 1.0);
  quad({Vec3(a, 0.0), Vec3(b, 0.0), Vec3(c, 0.0), Vec3(d, 0.0)}, {up, up, up, up});
}

void SolidShape::add_mesh(const Mesh &mesh) {
  for (const auto &t : mesh.triangles) {
    const Vec3 normal = glm::cross(t[1] - t[0], t[2] - t[0]);
    if (glm::length(normal) > 0.0)
      triangle(t[0], t[1], t[2], normal, normal, normal);
  }
}

} // namespace asperity
