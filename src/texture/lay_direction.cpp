// Second moments of gradients.
#include "lay_direction.h"

#include "asperity/base/units.h"

#include <fmt/format.h>

#include <cmath>

namespace asperity {

Lay lay_of(const HeightGrid &rough) {
  double xx = 0, xy = 0, yy = 0;
  for (std::size_t j = 1; j + 1 < rough.rows; ++j)
    for (std::size_t i = 1; i + 1 < rough.columns; ++i) {
      const std::size_t cells[] = {rough.at(i - 1, j), rough.at(i + 1, j), rough.at(i, j - 1),
                                   rough.at(i, j + 1)};
      if (!rough.valid[cells[0]] || !rough.valid[cells[1]] || !rough.valid[cells[2]] ||
          !rough.valid[cells[3]])
        continue;
      const auto height = [&](int k) { return static_cast<double>(rough.heights_mm[cells[k]]); };
      const double gx = (height(1) - height(0)) / (2.0 * rough.spacing_x_mm);
      const double gy = (height(3) - height(2)) / (2.0 * rough.spacing_y_mm);
      xx += gx * gx;
      xy += gx * gy;
      yy += gy * gy;
    }
  Lay lay;
  if (xx + yy <= 0)
    return lay;
  lay.clarity = std::hypot(xx - yy, 2.0 * xy) / (xx + yy);
  const double steepest_deg = deg_from_rad(0.5 * std::atan2(2.0 * xy, xx - yy));
  lay.deg = steepest_deg + 90.0; // steepest lies within -90..90
  if (lay.deg >= 180.0)
    lay.deg -= 180.0;
  return lay;
}

bool runs_up(const Lay &lay) { return std::abs(lay.deg - 90.0) < 45.0; }

std::string lay_in_words(const Lay &lay, const std::string &across, const std::string &up) {
  constexpr double kClear = 0.2, kNearly_deg = 10.0;
  if (lay.clarity < kClear)
    return "no clear direction";
  const double from_across = std::min(lay.deg, 180.0 - lay.deg);
  std::string lines = "slanting lines";
  if (from_across < kNearly_deg)
    lines = "lines along " + across;
  else if (from_across > 90.0 - kNearly_deg)
    lines = up == "z" ? "upright lines" : "lines along " + up;
  return fmt::format("{}, {:.0f} deg to {}", lines, lay.deg, across);
}

} // namespace asperity
