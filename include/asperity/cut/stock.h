// Coarse stock that is cut in time order, to tell at every moment how much the cutter has in front of it.
#pragma once

#include "asperity/base/eight.h"
#include "asperity/base/large_array.h"
#include "asperity/job/blank.h"
#include "asperity/shape/cutter_profile.h"

#include <array>
#include <limits>
#include <optional>
#include <vector>

namespace asperity {

/// A stack of layers, each a plan grid of signed distance to the stock's side surface (positive inside, mm),
/// and one grid of the height down to which the stock is cut away from above. Distances between grid points
/// are read linearly, so that straight sides are exact and a side of radius r is placed within cell^2/(8 r).
class Stock {
public:
  struct Grid {
    Vec2 origin_mm{0.0}; ///< of point (0, 0)
    double cell_mm = 0.25;
    int nx = 0, ny = 0;
  };

  /// bounds_mm: rising heights between layers, from the blank's bottom to its top (at least two).
  /// widest_radius_mm: of the cutters that will ask; what is cut away is told exactly only as deep as they
  /// can use it, and is somewhere deeper beyond. By default all is exact.
  Stock(const Blank &blank, std::vector<double> bounds_mm, double cell_mm, int threads = 1,
        double widest_radius_mm = std::numeric_limits<double>::infinity());

  std::size_t layers() const { return bounds_mm_.size() - 1; }
  double bottom_mm(std::size_t layer) const { return bounds_mm_[layer]; }
  double top_mm(std::size_t layer) const { return bounds_mm_[layer + 1]; }
  const Grid &grid() const { return grid_; }

  /// Signed distance to the layer's side surface at p [mm]; far outside the grid a large negative number.
  double depth_mm(std::size_t layer, Vec2 p) const;
  /// Places as seen from a circle's centre, in radii; whole vectors of them.
  static constexpr std::size_t kPlaces = 40;
  struct Places {
    alignas(64) std::array<double, kPlaces> x{}, y{};
  };
  using Depths = std::array<double, kPlaces>;
  /// depth_mm at centre + radius * (x, y) for each of the places, the very same numbers.
  void depths_mm(std::size_t layer, Vec2 centre_mm, double radius_mm, const Places &places,
                 Depths &depths) const;
  /// depth_mm at eight places, each in its own layer.
  void depths_mm(const std::array<std::size_t, kEight> &layers, const Eight &x_mm, const Eight &y_mm,
                 Eight &depths) const;
  /// Height of the stock's upper surface about p: the highest of the four grid points round it, so that what
  /// the cutter just left beside p does not hide what stands there. Minus infinity off the grid.
  double surface_mm(Vec2 p) const;

  /// One end of a straight carving stroke: the cutter tip, and the axis' plan place at each layer's height is
  /// axis + lean * (height above tip) (a bent cutter, straightened).
  struct Stroke {
    Vec2 axis_mm{0.0};
    Vec2 lean{0.0};
    double tip_mm = 0;
    bool operator==(const Stroke &) const = default;
  };
  /// Takes away what the cutter covers on the way from `from` to `to` (up to flute_length above its tip).
  /// Layers the tip has not passed, but for a twentieth, keep their sides; their cut is remembered by
  /// surface_mm.
  void carve(const Stroke &from, const Stroke &to, const CutterProfile &profile, double flute_length_mm);

  std::size_t bytes() const;

private:
  static constexpr float kFarOutside = -1e6F;

  float *layer(std::size_t l) {
    return depth_.data() + l * static_cast<std::size_t>(grid_.nx) * static_cast<std::size_t>(grid_.ny);
  }
  const float *layer(std::size_t l) const {
    return depth_.data() + l * static_cast<std::size_t>(grid_.nx) * static_cast<std::size_t>(grid_.ny);
  }
  /// A stroke's end, and what was moved there.
  struct Stroked {
    Stroke end;
    std::size_t lowest_layer = 0;
    CutterProfile profile;
    double flute_length_mm = 0;
    bool operator==(const Stroked &) const = default;
  };
  Grid grid_;
  std::vector<double> bounds_mm_;
  float deep_mm_; ///< cut away so far that no cutter can tell how far
  LargeArray<float> depth_;
  LargeArray<float> surface_;
  std::optional<Stroked> last_level_; ///< the last stroke, if it was level
};

// Asked millions of times a job, hence here.
inline double Stock::depth_mm(std::size_t l, Vec2 p) const {
  const Vec2 g = (p - grid_.origin_mm) / grid_.cell_mm;
  if (!(g.x >= 0.0 && g.y >= 0.0 && g.x < grid_.nx - 1 && g.y < grid_.ny - 1))
    return kFarOutside;
  const int i = static_cast<int>(g.x), j = static_cast<int>(g.y);
  const double fx = g.x - i, fy = g.y - j;
  const float *row = layer(l) + static_cast<std::size_t>(j) * static_cast<std::size_t>(grid_.nx) + i;
  const float *above = row + grid_.nx;
  return (1 - fy) * ((1 - fx) * row[0] + fx * row[1]) + fy * ((1 - fx) * above[0] + fx * above[1]);
}

/// Heights between layers: the blank's ends, the given levels that lie between, and no layer thicker than
/// thickest_mm; at most most_layers (the thinnest neighbours are joined first).
std::vector<double> layer_bounds(double bottom_mm, double top_mm, std::vector<double> levels_mm,
                                 double thickest_mm, std::size_t most_layers);

} // namespace asperity
