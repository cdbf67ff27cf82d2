// The cut surface as a raking lamp shows it.
#include "relief.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Of the cut pixels, this share may be steeper than what is shown at full strength.
constexpr double kSteepShare = 0.001;
/// Slope at which marks show at full strength once exaggerated.
constexpr double kShownSlope = 0.9;
/// More would turn what no finger can feel into mountains: 1 um over 0.1 mm is then shown at 0.6.
constexpr double kMostTimes = 60.0;
/// Flatter than this is rounding, not surface: 0.01 um over 1 mm.
constexpr double kLeastSlope = 1e-5;
constexpr double kLampHeight_deg = 35.0;
constexpr double kLampTurn_deg = 25.0; ///< from the left towards the top of the picture

/// Slope between the neighbours on either side that are cut too, else on one side; 0 with none [mm per mm].
double slope(const Raster &raster, int x, int y, int dx, int dy, double px_mm) {
  const bool before = raster.is_cut(x - dx, y - dy), after = raster.is_cut(x + dx, y + dy);
  const int from = before ? 1 : 0, to = after ? 1 : 0;
  if (from + to == 0)
    return 0.0;
  const float low = raster.residual_um[raster.at(x - from * dx, y - from * dy)];
  const float high = raster.residual_um[raster.at(x + to * dx, y + to * dy)];
  return mm_from_um(static_cast<double>(high - low)) / ((from + to) * px_mm);
}

/// Within the colour range, and so are its neighbours.
bool is_ordinary(const Raster &raster, const ColourRange &range, int x, int y) {
  constexpr int kNear[][2] = {{0, 0}, {1, 0}, {-1, 0}, {0, 1}, {0, -1}};
  return std::all_of(std::begin(kNear), std::end(kNear), [&](const int(&d)[2]) {
    if (!raster.is_cut(x + d[0], y + d[1]))
      return d[0] != 0 || d[1] != 0;
    return std::abs(range.place(static_cast<double>(raster.residual_um[raster.at(x + d[0], y + d[1])]))) <=
           1.001;
  });
}

double steep_of(const std::vector<Vec2> &slopes, const Raster &raster, const ColourRange &range) {
  std::vector<double> sizes;
  for (int y = 0; y < raster.height; ++y)
    for (int x = 0; x < raster.width; ++x)
      if (is_ordinary(raster, range, x, y))
        sizes.push_back(glm::length(slopes[raster.at(x, y)]));
  if (sizes.empty())
    return 0.0;
  const auto rank = static_cast<std::ptrdiff_t>((1.0 - kSteepShare) * static_cast<double>(sizes.size() - 1));
  std::nth_element(sizes.begin(), sizes.begin() + rank, sizes.end());
  return sizes[static_cast<std::size_t>(rank)];
}

} // namespace

Relief relief_of(const Raster &raster, const ColourRange &range) {
  std::vector<Vec2> slopes(raster.surface.size(), Vec2(0.0));
  for (int y = 0; y < raster.height; ++y)
    for (int x = 0; x < raster.width; ++x)
      if (raster.is_cut(x, y)) // rows run down the picture, heights up
        slopes[raster.at(x, y)] = {slope(raster, x, y, 1, 0, raster.x_mm_per_px),
                                   -slope(raster, x, y, 0, 1, raster.y_mm_per_px)};
  Relief relief;
  const double steep = steep_of(slopes, raster, range);
  relief.is_even = steep <= kLeastSlope;
  relief.exaggeration = std::min(kShownSlope / std::max(steep, kLeastSlope), kMostTimes);
  const double height = rad_from_deg(kLampHeight_deg), turn = rad_from_deg(kLampTurn_deg);
  const Vec3 lamp(-std::cos(height) * std::cos(turn), std::cos(height) * std::sin(turn), std::sin(height));
  for (const Vec2 &s : slopes) {
    const Vec3 normal = glm::normalize(Vec3(-relief.exaggeration * s, 1.0));
    relief.light.push_back(static_cast<float>(std::max(glm::dot(normal, lamp), 0.0) / lamp.z));
  }
  return relief;
}

} // namespace asperity
