// A chart of either kind as one rectangular grid of cells, in drawing order and with its geometry.
#pragma once

#include "asperity/chart/chart.h"

#include <cstdint>
#include <vector>

namespace asperity {

enum class SurfaceKind : std::uint8_t { absent, cut, standing, skin };

SurfaceKind surface_kind(const Chart &chart, std::size_t cell);
float residual_mm(const Chart &chart, std::size_t cell);
std::uint32_t owner_of(const Chart &chart, std::size_t cell);

/// Columns run from the seam of a wall once round and end on the first column again; those of a floor as they
/// stand. u and v are distances on the surface [mm]: u from the seam, v = z; or x and y.
class SurfaceGrid {
public:
  SurfaceGrid(const Chart &chart, double seam_mm);

  std::size_t across() const { return order_.size(); }
  std::size_t up() const { return v_mm_.size(); }
  std::size_t column(std::size_t i) const { return order_[i]; } ///< of the chart
  std::size_t cell(std::size_t i, std::size_t j) const;
  double u_mm(std::size_t i) const { return u_mm_[i]; }
  double v_mm(std::size_t j) const { return v_mm_[j]; }
  bool closes() const { return closes_; }
  bool is_mirrored() const { return mirrored_; }
  /// Flat place: an inside wall runs to the left, as seen from within.
  double sheet_x_mm(std::size_t i) const { return mirrored_ ? length_mm_ - u_mm_[i] : u_mm_[i]; }

  SurfaceKind kind_of_cell(std::size_t cell) const { return surface_kind(chart_, cell); }
  float residual_of_cell(std::size_t cell) const { return residual_mm(chart_, cell); }
  SurfaceKind kind(std::size_t i, std::size_t j) const { return surface_kind(chart_, cell(i, j)); }
  bool is_cut(std::size_t i, std::size_t j) const { return kind(i, j) == SurfaceKind::cut; }
  float residual(std::size_t i, std::size_t j) const { return residual_mm(chart_, cell(i, j)); }

  Vec3 place(std::size_t i, std::size_t j) const; ///< on the wanted surface, part frame
  Vec3 ray(std::size_t i, std::size_t j) const;   ///< along which the residual counts
  Vec3 along_u(std::size_t i, std::size_t j) const;
  Vec3 along_v(std::size_t i, std::size_t j) const;
  /// Slope of the residual along u and v over cut neighbours; 0 where the cell is not cut.
  Vec2 slope(std::size_t i, std::size_t j) const;

private:
  double wanted_height(std::size_t i, std::size_t j) const;
  double slope_between(std::size_t i0, std::size_t j0, std::size_t i1, std::size_t j1) const;

  const Chart &chart_;
  std::vector<std::size_t> order_;
  std::vector<double> u_mm_, v_mm_;
  double length_mm_ = 0.0;
  bool closes_ = false, mirrored_ = false;
};

} // namespace asperity
