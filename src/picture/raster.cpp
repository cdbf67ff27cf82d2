// A chart brought to the picture's pixels.
#include "raster.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

struct Share {
  std::size_t cell = 0; ///< column or row
  double weight = 0;
};
using Shares = std::vector<Share>; ///< of one pixel, heaviest first

struct Stand {
  double offset_mm = 0;
  std::size_t cell = 0;
};

/// Columns or rows in the order of their offsets; a wrapped axis repeats its ends outside the picture.
std::vector<Stand> in_order(const std::vector<double> &offsets, double wrap_mm) {
  std::vector<Stand> stands;
  for (std::size_t i = 0; i < offsets.size(); ++i)
    stands.push_back({offsets[i], i});
  std::sort(stands.begin(), stands.end(),
            [](const Stand &a, const Stand &b) { return a.offset_mm < b.offset_mm; });
  if (wrap_mm > 0.0 && !stands.empty()) {
    const Stand first = stands.front(), last = stands.back();
    stands.insert(stands.begin(), {last.offset_mm - wrap_mm, last.cell});
    stands.push_back({first.offset_mm + wrap_mm, first.cell});
  }
  return stands;
}

Shares shares_at(const std::vector<Stand> &stands, double middle_mm, double px_mm) {
  const auto after = std::lower_bound(stands.begin(), stands.end(), middle_mm,
                                      [](const Stand &s, double m) { return s.offset_mm < m; });
  const auto right = after == stands.end() ? after - 1 : after;
  const auto left = after == stands.begin() ? after : after - 1;
  const double reach = std::max(px_mm, right->offset_mm - left->offset_mm);
  Shares shares;
  auto from = left;
  while (from != stands.begin() && (from - 1)->offset_mm > middle_mm - reach)
    --from;
  for (auto s = from; s != stands.end() && s->offset_mm < middle_mm + reach; ++s) {
    const double weight = 1.0 - std::abs(s->offset_mm - middle_mm) / reach;
    if (weight > 1e-9)
      shares.push_back({s->cell, weight});
  }
  if (shares.empty())
    shares.push_back({std::abs(left->offset_mm - middle_mm) <= std::abs(right->offset_mm - middle_mm)
                          ? left->cell
                          : right->cell,
                      1.0});
  std::sort(shares.begin(), shares.end(), [](const Share &a, const Share &b) { return a.weight > b.weight; });
  return shares;
}

std::vector<Shares> shares_of(const std::vector<double> &offsets, double length_mm, bool wraps, int pixels) {
  const std::vector<Stand> stands = in_order(offsets, wraps ? length_mm : 0.0);
  const double px_mm = length_mm / pixels;
  std::vector<Shares> all;
  for (int k = 0; k < pixels; ++k)
    all.push_back(shares_at(stands, (k + 0.5) * px_mm, px_mm));
  return all;
}

Surface kind_of(const WallChart &chart, std::size_t cell) {
  if (chart.is_cut(cell))
    return Surface::cut;
  return chart.residual_mm(cell) > 0.0f ? Surface::standing : Surface::skin;
}

Surface kind_of(const FloorChart &chart, std::size_t cell) {
  if (!chart.in_feature(cell))
    return Surface::outside;
  if (chart.is_cut(cell))
    return Surface::cut;
  return chart.residual_mm(cell) > 0.0f ? Surface::standing : Surface::skin;
}

/// Stock that stands in one piece from the lowest row up is a lip.
void mark_lip(const WallChart &chart, std::vector<Surface> &kinds) {
  for (std::size_t i = 0; i < chart.columns(); ++i)
    for (std::size_t j = 0; j < chart.rows() && kinds[chart.at(i, j)] == Surface::standing; ++j)
      kinds[chart.at(i, j)] = Surface::lip;
}

void mark_lip(const FloorChart &, std::vector<Surface> &) {}

template <class AnyChart> std::vector<Surface> kinds_of(const AnyChart &chart) {
  std::vector<Surface> kinds(chart.envelope_mm.size());
  for (std::size_t cell = 0; cell < kinds.size(); ++cell)
    kinds[cell] = kind_of(chart, cell);
  mark_lip(chart, kinds);
  return kinds;
}

template <class AnyChart>
void paint(Raster &raster, const AnyChart &chart, const std::vector<Shares> &columns,
           const std::vector<Shares> &rows) {
  const std::vector<Surface> kinds = kinds_of(chart);
  for (int y = 0; y < raster.height; ++y) {
    const Shares &up = rows[static_cast<std::size_t>(raster.height - 1 - y)];
    for (int x = 0; x < raster.width; ++x) {
      const Shares &across = columns[static_cast<std::size_t>(x)];
      const Surface kind = kinds[chart.at(across[0].cell, up[0].cell)];
      raster.surface[raster.at(x, y)] = kind;
      if (kind != Surface::cut)
        continue;
      double sum = 0.0, weights = 0.0;
      for (const Share &row : up)
        for (const Share &column : across) {
          const std::size_t cell = chart.at(column.cell, row.cell);
          if (kinds[cell] != Surface::cut)
            continue;
          sum += row.weight * column.weight * static_cast<double>(chart.residual_mm(cell));
          weights += row.weight * column.weight;
        }
      raster.residual_um[raster.at(x, y)] = static_cast<float>(um_from_mm(sum / weights));
    }
  }
}

} // namespace

bool Raster::has(Surface kind) const {
  return std::find(surface.begin(), surface.end(), kind) != surface.end();
}

Raster rasterise(const Chart &chart, const Plane &plane, int width_px, int height_px) {
  Raster raster{.width = width_px,
                .height = height_px,
                .x_mm_per_px = plane.width_mm / width_px,
                .y_mm_per_px = plane.height_mm / height_px,
                .residual_um = {},
                .surface = {}};
  const auto pixels = static_cast<std::size_t>(width_px) * static_cast<std::size_t>(height_px);
  raster.residual_um.assign(pixels, 0.0f);
  raster.surface.assign(pixels, Surface::outside);
  std::vector<double> across = column_places(chart), up = row_places(chart);
  if (across.empty() || up.empty())
    return raster;
  for (double &place : across)
    place = plane.x_offset_mm(place);
  for (double &place : up)
    place = plane.y_offset_mm(place);
  const auto columns = shares_of(across, plane.width_mm, plane.wraps, width_px);
  const auto rows = shares_of(up, plane.height_mm, false, height_px);
  std::visit([&](const auto &any) { paint(raster, any, columns, rows); }, chart);
  return raster;
}

} // namespace asperity
