// A chart cut into patches.
#include "chart_patch.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr double kEdgeShare = 0.02;   ///< of a row's cells: an edge shorter than this may be blurred
constexpr std::size_t kMostKept = 64; ///< rows or columns kept for their edges

using Indices = std::vector<std::size_t>;

/// Kept rows (or columns): every stride-th, both ends, and those on either side of a long edge.
Indices kept(std::size_t count, std::size_t stride, const Indices &edges) {
  Indices all = edges;
  for (std::size_t k = 0; k < count; k += stride)
    all.push_back(k);
  all.push_back(count - 1);
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

/// Rows j where many cells of row j and j + 1 differ in kind; is_uncut(other, along) looks at a cell.
template <typename IsUncut>
Indices long_edges(std::size_t count, std::size_t others, const IsUncut &is_uncut) {
  Indices edges;
  const std::size_t step = std::max<std::size_t>(1, others / 256);
  for (std::size_t k = 0; k + 1 < count && edges.size() < kMostKept; ++k) {
    std::size_t differing = 0, looked_at = 0;
    for (std::size_t other = 0; other < others; other += step, ++looked_at)
      differing += is_uncut(other, k) != is_uncut(other, k + 1) ? 1 : 0;
    if (static_cast<double>(differing) > kEdgeShare * static_cast<double>(looked_at)) {
      edges.push_back(k);
      edges.push_back(k + 1);
    }
  }
  return edges;
}

struct Kept {
  Indices columns, rows;
};

Kept kept_of(const SurfaceGrid &grid, std::size_t most_vertices) {
  // The finer direction is thinned first, until the mesh is small enough.
  const std::size_t nu = grid.across(), nv = grid.up();
  const double du = (grid.u_mm(nu - 1) - grid.u_mm(0)) / static_cast<double>(nu - 1);
  const double dv = (grid.v_mm(nv - 1) - grid.v_mm(0)) / static_cast<double>(nv - 1);
  std::size_t su = 1, sv = 1;
  while ((nu / su + 1) * (nv / sv + 1) > std::max<std::size_t>(most_vertices, 16) &&
         (su < nu / 2 || sv < nv / 2)) {
    const bool thin_u =
        sv >= nv / 2 || (su < nu / 2 && du * static_cast<double>(su) <= dv * static_cast<double>(sv));
    ++(thin_u ? su : sv);
  }
  const auto uncut = [&](std::size_t i, std::size_t j) { return !grid.is_cut(i, j); };
  // Floors are bounded by curves: no whole row or column of theirs is an edge.
  if (!grid.closes())
    return {kept(nu, su, {}), kept(nv, sv, {})};
  return {kept(nu, su, long_edges(nu, nv, [&](std::size_t j, std::size_t i) { return uncut(i, j); })),
          kept(nv, sv, long_edges(nv, nu, uncut))};
}

/// Stretches of kept indices, neighbours sharing one, each spanning at most kMostTexels cells.
std::vector<Indices> stretches(const Indices &all) {
  std::vector<Indices> parts{{all.front()}};
  for (std::size_t k = 1; k < all.size(); ++k) {
    if (all[k] - parts.back().front() + 1 > kMostTexels)
      parts.push_back({all[k - 1]});
    parts.back().push_back(all[k]);
  }
  return parts;
}

std::array<float, 3> floats(Vec3 p) {
  return {static_cast<float>(p.x), static_cast<float>(p.y), static_cast<float>(p.z)};
}

/// The nearest cell of the feature within a few cells, else the cell itself: just outside a floor's edge its
/// surface goes on, so that the edge is not drawn down to where the floor is wanted.
std::size_t nearest_there(const SurfaceGrid &grid, std::size_t i, std::size_t j) {
  constexpr int kReach = 12;
  constexpr int kWays[][2] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, -1}};
  const auto across = static_cast<int>(grid.across()), up = static_cast<int>(grid.up());
  for (int far = 1; far <= kReach; ++far)
    for (const auto &way : kWays) {
      const int ii = static_cast<int>(i) + far * way[0], jj = static_cast<int>(j) + far * way[1];
      if (ii < 0 || jj < 0 || ii >= across || jj >= up)
        continue;
      const std::size_t cell = grid.cell(static_cast<std::size_t>(ii), static_cast<std::size_t>(jj));
      if (grid.kind_of_cell(cell) != SurfaceKind::absent)
        return cell;
    }
  return grid.cell(i, j);
}

SurfaceVertex vertex_at(const SurfaceGrid &grid, const ChartPatch &patch, std::size_t i, std::size_t j) {
  const std::size_t cell =
      grid.kind(i, j) == SurfaceKind::absent ? nearest_there(grid, i, j) : grid.cell(i, j);
  const SurfaceKind kind = grid.kind_of_cell(cell);
  const float e = kind == SurfaceKind::absent ? 0.0f : grid.residual_of_cell(cell);
  const auto texel = [](std::size_t at, std::size_t first, std::size_t count) {
    return static_cast<float>((static_cast<double>(at - first) + 0.5) / static_cast<double>(count));
  };
  return {.place = floats(grid.place(i, j)),
          .ray = floats(grid.ray(i, j)),
          .along_u = floats(grid.along_u(i, j)),
          .along_v = floats(grid.along_v(i, j)),
          .sheet = {static_cast<float>(grid.sheet_x_mm(i)), static_cast<float>(grid.v_mm(j))},
          .texel = {texel(i, patch.first_i, patch.width), texel(j, patch.first_j, patch.height)},
          .residual_mm = e,
          .uncut = kind == SurfaceKind::cut || kind == SurfaceKind::absent ? 0.0f : 1.0f};
}

/// Any cell between the corners is there: a coarse cell's corners may all lie outside a narrow floor.
bool is_any_there(const SurfaceGrid &grid, std::size_t i0, std::size_t i1, std::size_t j0, std::size_t j1) {
  for (std::size_t j = j0; j <= j1; ++j)
    for (std::size_t i = i0; i <= i1; ++i)
      if (grid.kind(i, j) != SurfaceKind::absent)
        return true;
  return false;
}

/// Triangles over every `stride`-th of the patch's vertices, the last ones included.
std::vector<std::uint32_t> triangles_of(const SurfaceGrid &grid, const Indices &columns, const Indices &rows,
                                        std::size_t stride) {
  std::vector<std::uint32_t> triangles;
  for (std::size_t b = 0; b + 1 < rows.size(); b += stride)
    for (std::size_t a = 0; a + 1 < columns.size(); a += stride) {
      const std::size_t a1 = std::min(a + stride, columns.size() - 1),
                        b1 = std::min(b + stride, rows.size() - 1);
      if (!is_any_there(grid, columns[a], columns[a1], rows[b], rows[b1]))
        continue;
      const auto vertex = [&](std::size_t c, std::size_t r) {
        return static_cast<std::uint32_t>(r * columns.size() + c);
      };
      triangles.insert(triangles.end(), {vertex(a, b), vertex(a1, b), vertex(a, b1), vertex(a1, b),
                                         vertex(a1, b1), vertex(a, b1)});
    }
  return triangles;
}

ChartPatch patch_of(const SurfaceGrid &grid, const Indices &columns, const Indices &rows) {
  ChartPatch patch{.first_i = columns.front(),
                   .first_j = rows.front(),
                   .width = columns.back() - columns.front() + 1,
                   .height = rows.back() - rows.front() + 1,
                   .vertices = {},
                   .triangles = triangles_of(grid, columns, rows, 1),
                   .light_triangles = triangles_of(grid, columns, rows, kLightStride)};
  for (std::size_t j : rows)
    for (std::size_t i : columns)
      patch.vertices.push_back(vertex_at(grid, patch, i, j));
  return patch;
}

} // namespace

std::vector<ChartPatch> patches_of(const SurfaceGrid &grid, std::size_t most_vertices) {
  std::vector<ChartPatch> patches;
  if (grid.across() < 2 || grid.up() < 2)
    return patches;
  const Kept all = kept_of(grid, most_vertices);
  const std::vector<Indices> across = stretches(all.columns);
  for (const Indices &rows : stretches(all.rows))
    for (const Indices &columns : across)
      patches.push_back(patch_of(grid, columns, rows));
  return patches;
}

std::vector<float> slope_texels(const SurfaceGrid &grid, const ChartPatch &patch) {
  std::vector<float> texels;
  texels.reserve(2 * patch.width * patch.height);
  for (std::size_t j = 0; j < patch.height; ++j)
    for (std::size_t i = 0; i < patch.width; ++i) {
      const Vec2 slope = grid.slope(patch.first_i + i, patch.first_j + j);
      texels.push_back(static_cast<float>(slope.x));
      texels.push_back(static_cast<float>(slope.y));
    }
  return texels;
}

std::vector<float> residual_texels(const SurfaceGrid &grid, const ChartPatch &patch) {
  std::vector<float> texels(patch.width * patch.height, 0.0f);
  std::vector<bool> known(texels.size(), false);
  for (std::size_t j = 0; j < patch.height; ++j)
    for (std::size_t i = 0; i < patch.width; ++i)
      if (grid.is_cut(patch.first_i + i, patch.first_j + j)) {
        texels[j * patch.width + i] = grid.residual(patch.first_i + i, patch.first_j + j);
        known[j * patch.width + i] = true;
      }
  const auto take = [&](std::size_t to, std::size_t from) {
    if (!known[to] && known[from]) {
      texels[to] = texels[from];
      known[to] = true;
    }
  };
  // Downwards, upwards, then along the rows.
  for (std::size_t j = patch.height; j-- > 1;)
    for (std::size_t i = 0; i < patch.width; ++i)
      take((j - 1) * patch.width + i, j * patch.width + i);
  for (std::size_t j = 1; j < patch.height; ++j)
    for (std::size_t i = 0; i < patch.width; ++i)
      take(j * patch.width + i, (j - 1) * patch.width + i);
  for (std::size_t j = 0; j < patch.height; ++j) {
    for (std::size_t i = 1; i < patch.width; ++i)
      take(j * patch.width + i, j * patch.width + i - 1);
    for (std::size_t i = patch.width; i-- > 1;)
      take(j * patch.width + i - 1, j * patch.width + i);
  }
  return texels;
}

} // namespace asperity
