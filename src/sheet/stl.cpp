// The predicted part as binary STL: closed where the features allow, else open surfaces.
#include "asperity/sheet/export.h"

#include "asperity/sheet/surface_grid.h"
#include "little_end.h"
#include "ring_cap.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace asperity {

namespace {

constexpr double kSameHeight_mm = 1e-6;
constexpr std::size_t kMostRing =
    1500; ///< points round a wall of a closed part: the flat faces are filled ear by ear

using Triangle = std::array<Vec3, 3>;

void add_quad(std::vector<Triangle> &out, Vec3 a, Vec3 b, Vec3 c, Vec3 d, bool is_turned) {
  out.push_back(is_turned ? Triangle{a, c, b} : Triangle{a, b, c});
  out.push_back(is_turned ? Triangle{a, d, c} : Triangle{a, c, d});
}

/// Rows of points from bottom to top; each closes on itself.
struct Tube {
  std::vector<std::vector<Vec3>> rings;
  bool is_inside = false;
};

/// The wall's grid with its first and last row carried on to the lower and the upper face.
Tube tube_of(const SurfaceGrid &grid, double bottom_mm, double top_mm) {
  Tube tube{.rings = {}, .is_inside = grid.is_inside};
  const auto ring_at = [&](std::size_t row, double z) {
    std::vector<Vec3> ring;
    for (std::size_t i = 0; i < grid.columns; ++i) {
      Vec3 p = grid.point_mm(i, row);
      p.z = z;
      ring.push_back(p);
    }
    return ring;
  };
  tube.rings.push_back(ring_at(0, bottom_mm));
  for (std::size_t j = 0; j < grid.rows; ++j)
    if (grid.z_mm[j] > bottom_mm && grid.z_mm[j] < top_mm)
      tube.rings.push_back(ring_at(j, grid.z_mm[j]));
  tube.rings.push_back(ring_at(grid.rows - 1, top_mm));
  return tube;
}

void add_tube(std::vector<Triangle> &out, const Tube &tube) {
  for (std::size_t j = 0; j + 1 < tube.rings.size(); ++j) {
    const auto &low = tube.rings[j], &high = tube.rings[j + 1];
    for (std::size_t i = 0; i < low.size(); ++i) {
      const std::size_t next = (i + 1) % low.size();
      add_quad(out, low[i], low[next], high[next], high[i], tube.is_inside);
    }
  }
}

std::vector<Vec2> plan_of(const std::vector<Vec3> &ring) {
  std::vector<Vec2> out;
  for (const Vec3 p : ring)
    out.push_back(plan(p));
  return out;
}

/// A flat face over the tubes' first or last rings; false if it cannot be filled.
bool add_cap(std::vector<Triangle> &out, const std::vector<Tube> &tubes, bool is_top) {
  std::vector<std::vector<Vec2>> rings;
  std::vector<Vec3> points;
  for (const Tube &tube : tubes) {
    const auto &ring = is_top ? tube.rings.back() : tube.rings.front();
    rings.push_back(plan_of(ring));
    points.insert(points.end(), ring.begin(), ring.end());
  }
  const auto cap = ring_cap(rings.front(), {rings.begin() + 1, rings.end()});
  for (const auto &[a, b, c] : cap)
    out.push_back(is_top ? Triangle{points[a], points[b], points[c]}
                         : Triangle{points[a], points[c], points[b]});
  return !cap.empty();
}

/// The one outside wall first, then the holes; nothing where the job's features make no such part.
std::vector<std::size_t> walls_of_closed_part(const Job &job) {
  std::vector<std::size_t> walls;
  const WallFeature *outer = nullptr;
  for (std::size_t i = 0; i < job.features.size(); ++i)
    if (const auto *wall = std::get_if<WallFeature>(&job.features[i]); wall && wall->side == Side::outside) {
      if (outer)
        return {};
      outer = wall;
      walls.push_back(i);
    }
  if (!outer)
    return {};
  const auto is_near = [](double a, double b) { return std::abs(a - b) <= kSameHeight_mm; };
  for (std::size_t i = 0; i < job.features.size(); ++i) {
    if (const auto *wall = std::get_if<WallFeature>(&job.features[i])) {
      if (wall == outer)
        continue;
      if (!is_near(wall->z_bottom_mm, outer->z_bottom_mm) || !is_near(wall->z_top_mm, outer->z_top_mm) ||
          !outer->outline.contains(wall->outline.point(0.0)))
        return {};
      walls.push_back(i);
    } else if (const auto *floor = std::get_if<FloorFeature>(&job.features[i])) {
      if (!is_near(floor->z_mm, outer->z_top_mm))
        return {};
    } else {
      return {};
    }
  }
  return walls;
}

/// Mean predicted height over the cut cells of all floors; the wall's own top without any.
double top_of(const Outcome &outcome, const WallFeature &outer) {
  double sum = 0.0, count = 0.0;
  for (const Chart &chart : outcome.charts)
    if (const auto *floor = std::get_if<FloorChart>(&chart))
      for (std::size_t cell = 0; cell < floor->wanted_mm.size(); ++cell)
        if (floor->in_feature(cell) && floor->is_cut(cell)) {
          sum += static_cast<double>(floor->residual_mm(cell));
          count += 1.0;
        }
  return outer.z_top_mm + (count > 0.0 ? sum / count : 0.0);
}

bool add_closed(std::vector<Triangle> &out, const Outcome &outcome, std::size_t cells_each) {
  const std::vector<std::size_t> walls = walls_of_closed_part(outcome.job);
  if (walls.empty())
    return false;
  const auto &outer = std::get<WallFeature>(outcome.job.features[walls.front()]);
  const double top_mm = top_of(outcome, outer);
  std::vector<Tube> tubes;
  for (const std::size_t i : walls) {
    const std::size_t rows = std::max<std::size_t>(1, std::get<WallChart>(outcome.charts[i]).rows());
    const SurfaceGrid grid = surface_grid(outcome.job.features[i], outcome.charts[i],
                                          std::min(cells_each, kMostRing * std::min<std::size_t>(rows, 48)));
    if (grid.columns < 3 || grid.rows < 1)
      return false;
    tubes.push_back(tube_of(grid, outer.z_bottom_mm, top_mm));
  }
  for (const Tube &tube : tubes)
    add_tube(out, tube);
  return add_cap(out, tubes, true) && add_cap(out, tubes, false);
}

void add_open(std::vector<Triangle> &out, const SurfaceGrid &grid) {
  for (std::size_t j = 0; j + 1 < grid.rows; ++j)
    for (std::size_t i = 0; i + (grid.is_wall ? 0 : 1) < grid.columns; ++i) {
      const std::size_t next = (i + 1) % grid.columns;
      const auto is_there = [&](std::size_t c, std::size_t r) {
        return grid.cell[grid.at(c, r)] != GridCell::absent;
      };
      if (is_there(i, j) && is_there(next, j) && is_there(next, j + 1) && is_there(i, j + 1))
        add_quad(out, grid.point_mm(i, j), grid.point_mm(next, j), grid.point_mm(next, j + 1),
                 grid.point_mm(i, j + 1), grid.is_inside);
    }
}

void put_vector(std::string &bytes, Vec3 v) {
  for (int axis = 0; axis < 3; ++axis)
    put_float(bytes, static_cast<float>(v[axis]));
}

/// 80 bytes of words, a count, then 50 bytes a triangle.
std::string stl_bytes(const std::vector<Triangle> &triangles, std::string head) {
  head.resize(80, ' ');
  std::string bytes = head;
  put_u32(bytes, static_cast<std::uint32_t>(triangles.size()));
  for (const Triangle &t : triangles) {
    const Vec3 n = glm::cross(t[1] - t[0], t[2] - t[0]);
    put_vector(bytes, glm::length(n) > 0.0 ? glm::normalize(n) : Vec3(0.0));
    for (const Vec3 &corner : t)
      put_vector(bytes, corner);
    put_u16(bytes, 0);
  }
  return bytes;
}

} // namespace

StlPart stl_part(const Outcome &outcome, std::size_t cells_each) {
  StlPart part;
  std::vector<Triangle> triangles;
  part.is_closed = add_closed(triangles, outcome, cells_each);
  if (part.is_closed) {
    part.contents =
        "A closed part: every wall as predicted, lips and bending included, between a flat lower face where "
        "it is wanted and a flat upper face at the floors' mean predicted height. Marks on floors, uncut "
        "islands, clamped places and whatever the job does not name are not in it.";
  } else {
    triangles.clear();
    for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
      const SurfaceGrid grid = surface_grid(outcome.job.features[i], outcome.charts[i], cells_each);
      if (grid.columns > 0 && grid.rows > 0)
        add_open(triangles, grid);
    }
    part.contents =
        "Open surfaces: every wall, floor and dome of the job as predicted, not joined to a closed part.";
  }
  part.triangles = triangles.size();
  part.bytes = stl_bytes(triangles, part.is_closed
                                        ? "asperity predicted part, mm, closed; a model's word, not measured"
                                        : "asperity predicted surfaces, mm, open; a model's word");
  return part;
}

} // namespace asperity
