// The tip's height over a mesh is the highest of what every vertex, edge and facet asks for.
#include "mesh_drop.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr double kNothing = -std::numeric_limits<double>::infinity();
/// Cells of the plan grid are about this many radii wide.
constexpr double kCellShare = 0.5;
constexpr int kMostCells = 1000;
/// Halvings of an edge while its highest contact is sought: 0.62^40 of its length is left.
constexpr int kHalvings = 40;
constexpr double kGolden = 0.6180339887498949;

/// Plan distance from the axis, and height above the tip, at which a plane of this slope (tan) is touched.
struct Contact {
  double out_mm = 0, up_mm = 0;
};

Contact contact_at_slope(const CutterProfile &profile, double slope) {
  const double angle = std::atan(slope);
  const double steepest = 0.5 * kPi - profile.cone_half_angle_rad();
  if (angle >= steepest && profile.cone_half_angle_rad() > 0.0)
    return {profile.radius_mm(), profile.shoulder_mm()};
  const double c = profile.corner_mm();
  return {profile.tip_flat_mm() + c * std::sin(angle), c - c * std::cos(angle)};
}

} // namespace

MeshDrop::MeshDrop(const Mesh &mesh, const CutterProfile &profile) : mesh_(&mesh), profile_(profile) {
  const Vec2 size = plan(mesh.high) - plan(mesh.low);
  const double r = profile.radius_mm();
  cell_mm_ = std::max({kCellShare * r, (size.x + 2 * r) / kMostCells, (size.y + 2 * r) / kMostCells, 1e-6});
  columns_ = static_cast<int>((size.x + 2 * r) / cell_mm_) + 1;
  rows_ = static_cast<int>((size.y + 2 * r) / cell_mm_) + 1;
  cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
  const Vec2 origin = plan(mesh.low) - Vec2(r);
  for (std::size_t t = 0; t < mesh.triangles.size(); ++t) {
    const auto &[a, b, c] = mesh.triangles[t];
    const Vec2 low = glm::min(glm::min(plan(a), plan(b)), plan(c)) - Vec2(r) - origin;
    const Vec2 high = glm::max(glm::max(plan(a), plan(b)), plan(c)) + Vec2(r) - origin;
    const auto cell = [&](double v, int most) {
      return std::clamp(static_cast<int>(v / cell_mm_), 0, most - 1);
    };
    for (int row = cell(low.y, rows_); row <= cell(high.y, rows_); ++row)
      for (int column = cell(low.x, columns_); column <= cell(high.x, columns_); ++column)
        cells_[static_cast<std::size_t>(row * columns_ + column)].push_back(static_cast<std::uint32_t>(t));
  }
}

void MeshDrop::raise_by_edge(Vec3 a, Vec3 b, Vec2 p, double &tip_mm) const {
  // Within the cutter's radius the tip height over a point of the edge is concave along it: a line minus a
  // convex silhouette. So the highest is found by narrowing down.
  const Vec2 along = plan(b) - plan(a), to_p = p - plan(a);
  const double length2 = glm::dot(along, along), r = profile_.radius_mm();
  double low = 0.0, high = 1.0;
  if (length2 > 0.0) {
    const double foot = glm::dot(to_p, along) / length2;
    const double off2 = glm::dot(to_p, to_p) - foot * foot * length2;
    if (off2 > r * r)
      return;
    const double half = std::sqrt((r * r - off2) / length2);
    low = std::max(0.0, foot - half);
    high = std::min(1.0, foot + half);
  } else if (glm::dot(to_p, to_p) > r * r) {
    return;
  }
  if (low > high)
    return;
  const auto tip_at = [&](double u) {
    const double out_mm = std::min(r, glm::distance(p, plan(a) + u * along));
    return a.z + u * (b.z - a.z) - profile_.height_at(out_mm);
  };
  tip_mm = std::max({tip_mm, tip_at(low), tip_at(high)});
  double left = low, right = high;
  for (int i = 0; i < kHalvings && right - left > 1e-12; ++i) {
    const double u = right - kGolden * (right - left), v = left + kGolden * (right - left);
    if (tip_at(u) < tip_at(v))
      left = u;
    else
      right = v;
  }
  tip_mm = std::max(tip_mm, tip_at(0.5 * (left + right)));
}

void MeshDrop::raise_by_facet(const Triangle &triangle, Vec2 p, double &tip_mm) const {
  Vec3 normal = glm::cross(triangle[1] - triangle[0], triangle[2] - triangle[0]);
  if (normal.z == 0.0)
    return;
  if (normal.z < 0.0)
    normal = -normal;
  const double flat = glm::length(plan(normal)), slope = flat / normal.z;
  const Contact contact = contact_at_slope(profile_, slope);
  // The facet is touched on its uphill side of the axis.
  const Vec2 q = flat > 0.0 ? p - contact.out_mm / flat * plan(normal) : p;
  const auto side = [&](int i, int k) {
    return cross(plan(triangle[static_cast<std::size_t>(k)]) - plan(triangle[static_cast<std::size_t>(i)]),
                 q - plan(triangle[static_cast<std::size_t>(i)]));
  };
  const double s0 = side(0, 1), s1 = side(1, 2), s2 = side(2, 0);
  const bool is_inside = (s0 >= 0 && s1 >= 0 && s2 >= 0) || (s0 <= 0 && s1 <= 0 && s2 <= 0);
  if (!is_inside)
    return;
  const double z_mm = triangle[0].z - glm::dot(plan(normal), q - plan(triangle[0])) / normal.z;
  tip_mm = std::max(tip_mm, z_mm - contact.up_mm);
}

void MeshDrop::raise(const Triangle &triangle, Vec2 p, double &tip_mm) const {
  if (std::max({triangle[0].z, triangle[1].z, triangle[2].z}) <= tip_mm)
    return;
  raise_by_facet(triangle, p, tip_mm);
  for (std::size_t i = 0; i < 3; ++i)
    raise_by_edge(triangle[i], triangle[(i + 1) % 3], p, tip_mm);
}

std::optional<double> MeshDrop::tip_mm(Vec2 p) const {
  const Vec2 at = (p - plan(mesh_->low) + Vec2(profile_.radius_mm())) / cell_mm_;
  if (!(at.x >= 0.0 && at.y >= 0.0 && at.x < columns_ && at.y < rows_))
    return std::nullopt;
  double tip = kNothing;
  for (const std::uint32_t t :
       cells_[static_cast<std::size_t>(static_cast<int>(at.y) * columns_ + static_cast<int>(at.x))])
    raise(mesh_->triangles[t], p, tip);
  return tip == kNothing ? std::nullopt : std::optional<double>(tip);
}

} // namespace asperity
