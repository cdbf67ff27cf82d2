// A chart cut into patches: each a coarse mesh and the full-resolution grids that are laid over it.
#pragma once

#include "surface_grid.h"

#include <array>
#include <cstdint>
#include <vector>

namespace asperity {

/// As the surface shader reads it.
struct SurfaceVertex {
  std::array<float, 3> place, ray, along_u, along_v;
  std::array<float, 2> sheet, texel;
  float residual_mm, uncut; ///< uncut: 1 = moved by its true size
};

/// Texels run over grid columns first_i .. first_i + width - 1 and rows first_j ..; vertices stand on texel
/// middles. Neighbouring patches share their border column or row.
struct ChartPatch {
  std::size_t first_i = 0, first_j = 0, width = 0, height = 0;
  std::vector<SurfaceVertex> vertices;
  std::vector<std::uint32_t> triangles;
  std::vector<std::uint32_t> light_triangles; ///< over every kLightStride-th vertex, for pictures in motion
};

inline constexpr std::size_t kLightStride = 4;

inline constexpr std::size_t kMostTexels = 4096; ///< along an edge of a patch

/// At most about `most_vertices` for the whole chart; rows and columns beside an edge between cut and uncut
/// stock are kept, so that a lip has a sharp ledge.
std::vector<ChartPatch> patches_of(const SurfaceGrid &grid, std::size_t most_vertices);

/// Two numbers a texel.
std::vector<float> slope_texels(const SurfaceGrid &grid, const ChartPatch &patch);
/// Residual [mm]; where nothing is cut the nearest cut cell's goes on, so that no colour fringe appears.
std::vector<float> residual_texels(const SurfaceGrid &grid, const ChartPatch &patch);

} // namespace asperity
