// Charts as bare strips of colour.
#include "asperity/sheet/strip_picture.h"

#include "asperity/picture/colour_map.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr Rgb kPaper{252, 251, 248}, kBare{226, 224, 218}, kStripe{150, 148, 142};
constexpr int kStripeEvery_px = 8;
constexpr int kLeastHeight_px = 110,
              kMostHeight_px = 460; ///< floors are drawn true, so narrower where they are tall

Rgb hatched(int x, int y) { return (x + y) % kStripeEvery_px < 2 ? kStripe : kBare; }

struct Grid {
  std::size_t columns = 0, rows = 0;
  double width_mm = 0, height_mm = 0;
  std::size_t shift = 0; ///< first column shown
};

Grid grid_of(const Chart &chart, double seam_mm) {
  if (const auto *floor = std::get_if<FloorChart>(&chart))
    return {floor->nx, floor->ny, floor->spacing_mm * static_cast<double>(floor->nx),
            floor->spacing_mm * static_cast<double>(floor->ny), 0};
  const auto &wall = std::get<WallChart>(chart);
  Grid grid{wall.columns(), wall.rows(), wall.outline.length_mm(), 0.0, 0};
  if (wall.rows() > 0)
    grid.height_mm = (wall.z_mm.back() - wall.z_mm.front()) * static_cast<double>(wall.rows()) /
                     std::max<double>(1.0, static_cast<double>(wall.rows()) - 1.0);
  const auto first = std::lower_bound(wall.s_mm.begin(), wall.s_mm.end(), seam_mm);
  grid.shift = wall.columns() > 0 ? static_cast<std::size_t>(first - wall.s_mm.begin()) % wall.columns() : 0;
  return grid;
}

bool is_in_feature(const Chart &chart, std::size_t cell) {
  const auto *floor = std::get_if<FloorChart>(&chart);
  return !floor || floor->in_feature(cell);
}

struct Pixel {
  double sum = 0;
  int values = 0, bare = 0;
};

Pixel pixel_of(const Chart &chart, const Grid &grid, const std::vector<float> &values, std::size_t i0,
               std::size_t i1, std::size_t j0, std::size_t j1) {
  Pixel pixel;
  for (std::size_t j = j0; j < j1; ++j)
    for (std::size_t i = i0; i < i1; ++i) {
      const std::size_t cell = j * grid.columns + (i + grid.shift) % grid.columns;
      if (!is_in_feature(chart, cell))
        continue;
      if (std::isnan(values[cell]))
        ++pixel.bare;
      else {
        pixel.sum += static_cast<double>(values[cell]);
        ++pixel.values;
      }
    }
  return pixel;
}

/// Cells that fall on a pixel: at least one.
std::pair<std::size_t, std::size_t> cells_of(int at, int pixels, std::size_t cells) {
  const auto place = [&](int k) {
    return static_cast<std::size_t>(static_cast<double>(k) * static_cast<double>(cells) / pixels);
  };
  const std::size_t begin = std::min(place(at), cells - 1);
  return {begin, std::max(begin + 1, std::min(place(at + 1), cells))};
}

} // namespace

std::vector<float> cut_residual_um(const Chart &chart) {
  return std::visit(
      [](const auto &c) {
        std::vector<float> values(c.envelope_mm.size(), std::numeric_limits<float>::quiet_NaN());
        for (std::size_t cell = 0; cell < values.size(); ++cell)
          if (c.is_cut(cell))
            values[cell] = 1000.0f * c.residual_mm(cell);
        return values;
      },
      chart);
}

double common_seam_mm(const Chart &chart, const std::string &feature,
                      std::span<const Outcome *const> outcomes) {
  const auto *wall = std::get_if<WallChart>(&chart);
  if (!wall || wall->columns() == 0)
    return 0.0;
  std::vector<double> places;
  for (const Outcome *outcome : outcomes)
    for (const Finding &finding : outcome->findings)
      if (finding.feature >= 0 &&
          name_of(outcome->job.features.at(static_cast<std::size_t>(finding.feature))) == feature) {
        const auto nearest = std::min_element(wall->foot.begin(), wall->foot.end(), [&](Vec2 a, Vec2 b) {
          return glm::length(a - plan(finding.place_mm)) < glm::length(b - plan(finding.place_mm));
        });
        places.push_back(wall->s_mm[static_cast<std::size_t>(nearest - wall->foot.begin())]);
      }
  constexpr int kTries = 72;
  const double length = wall->outline.length_mm();
  double best = 0.0, most = -1.0;
  for (int k = 0; k < kTries; ++k) {
    const double seam = length * ((k + kTries / 2) % kTries) / kTries;
    double clear = length;
    for (const double place : places) {
      const double apart = std::abs(place - seam);
      clear = std::min({clear, apart, length - apart});
    }
    if (clear > most) {
      most = clear;
      best = seam;
    }
  }
  return best;
}

double common_range_um(std::span<const std::vector<float>> lists) {
  constexpr double kInside = 0.98, kLeast_um = 1.0;
  double range = kLeast_um;
  for (const std::vector<float> &values : lists) {
    std::vector<double> sizes;
    for (const float value : values)
      if (!std::isnan(value))
        sizes.push_back(std::abs(static_cast<double>(value)));
    if (sizes.empty())
      continue;
    const auto at =
        sizes.begin() + static_cast<std::ptrdiff_t>(kInside * static_cast<double>(sizes.size() - 1));
    std::nth_element(sizes.begin(), at, sizes.end());
    range = std::max(range, *at);
  }
  const double power = std::pow(10.0, std::floor(std::log10(range)));
  for (const double step : {1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0})
    if (range <= step * power * (1.0 + 1e-9))
      return step * power;
  return 10.0 * power;
}

Strip strip_picture(const Chart &chart, const std::vector<float> &values, double range_um, double seam_mm,
                    int width_px) {
  const Grid grid = grid_of(chart, seam_mm);
  if (grid.columns == 0 || grid.rows == 0 || !(grid.width_mm > 0.0) || !(grid.height_mm > 0.0))
    return {};
  const bool is_wall = std::holds_alternative<WallChart>(chart);
  const int widest = is_wall ? width_px : static_cast<int>(kMostHeight_px * grid.width_mm / grid.height_mm);
  const int width = std::max(1, std::min({width_px, widest, std::max(240, static_cast<int>(grid.columns))}));
  const double true_height = width * grid.height_mm / grid.width_mm;
  const int height = static_cast<int>(
      std::clamp(true_height, is_wall ? double(kLeastHeight_px) : 1.0, double(kMostHeight_px)));
  Strip strip{Image(width, height, kPaper), grid.width_mm, grid.height_mm, height / true_height};
  for (int y = 0; y < height; ++y) {
    const auto [j0, j1] = cells_of(height - 1 - y, height, grid.rows);
    for (int x = 0; x < width; ++x) {
      const auto [i0, i1] = cells_of(x, width, grid.columns);
      const Pixel pixel = pixel_of(chart, grid, values, i0, i1, j0, j1);
      if (pixel.values > pixel.bare)
        strip.image.at(x, y) = residual_colour(pixel.sum / pixel.values / range_um);
      else if (pixel.bare > 0)
        strip.image.at(x, y) = hatched(x, y);
    }
  }
  return strip;
}

Image colour_bar(int width_px) {
  Image bar(width_px, 1, kPaper);
  for (int x = 0; x < width_px; ++x)
    bar.at(x, 0) = residual_colour(2.0 * (x + 0.5) / width_px - 1.0);
  return bar;
}

} // namespace asperity
