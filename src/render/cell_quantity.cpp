// A number for every cell of an outcome's charts, out of what made the cell.
#include "asperity/render/cell_quantity.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

constexpr float kNone = std::numeric_limits<float>::quiet_NaN();
constexpr std::size_t kCoarseSteps = 24;

/// The samples of each piece of path, in the order of time.
class SamplesOfPieces {
public:
  SamplesOfPieces(const LargeArray<CutSample> &samples, std::size_t pieces) : samples_(samples) {
    begin_.assign(pieces + 1, 0);
    for (const CutSample &sample : samples)
      if (sample.piece < pieces)
        ++begin_[sample.piece + 1];
    for (std::size_t i = 0; i < pieces; ++i)
      begin_[i + 1] += begin_[i];
  }

  /// The piece's sample nearest to p: some of them first, then downhill from the best.
  const CutSample *nearest(std::uint32_t piece, Vec3 p) const {
    if (piece + 1 >= begin_.size() || begin_[piece] == begin_[piece + 1])
      return nullptr;
    const std::size_t low = begin_[piece], high = begin_[piece + 1];
    const std::size_t stride = std::max<std::size_t>(1, (high - low) / kCoarseSteps);
    // A closed lap comes by twice, so every hollow of the coarse distances is followed down.
    std::size_t best = low;
    for (std::size_t i = low; i < high; i += stride) {
      const bool falls_before = i < low + stride || away(i, p) <= away(i - stride, p);
      const bool rises_after = i + stride >= high || away(i, p) <= away(i + stride, p);
      if (!falls_before || !rises_after)
        continue;
      const std::size_t down = downhill(i, low, high, p);
      best = away(down, p) < away(best, p) ? down : best;
    }
    return &samples_[best];
  }

private:
  std::size_t downhill(std::size_t at, std::size_t low, std::size_t high, Vec3 p) const {
    while (at + 1 < high && away(at + 1, p) < away(at, p))
      ++at;
    while (at > low && away(at - 1, p) < away(at, p))
      --at;
    return at;
  }

  double away(std::size_t i, Vec3 p) const {
    const Vec3 d = samples_[i].position_mm - p;
    return glm::dot(d, d);
  }

  const LargeArray<CutSample> &samples_;
  std::vector<std::size_t> begin_;
};

float value_of(const CutSample &sample, Measure measure) {
  switch (measure) {
  case Measure::bending:
    return sample.tip_bend_mm * 1e3f;
  case Measure::chip_load:
    return sample.feed_per_tooth_mm * 1e3f;
  default:
    return static_cast<float>(mm_per_min_from_mm_per_s(static_cast<double>(sample.speed_mm_per_s)));
  }
}

/// Calls back with every cell's index and its point on the wanted surface, row by row.
template <class Work> void for_cells(const Chart &chart, Work work) {
  if (const auto *wall = std::get_if<WallChart>(&chart)) {
    for (std::size_t j = 0; j < wall->rows(); ++j)
      for (std::size_t i = 0; i < wall->columns(); ++i)
        work(wall->at(i, j), Vec3(wall->foot[i], wall->z_mm[j]), i, j);
    return;
  }
  const auto &floor = std::get<FloorChart>(chart);
  for (std::size_t j = 0; j < floor.ny; ++j)
    for (std::size_t i = 0; i < floor.nx; ++i)
      work(floor.at(i, j), Vec3(floor.x_mm(i), floor.y_mm(j), floor.base_mm), i, j);
}

std::vector<float> from_samples(const Chart &chart, const SamplesOfPieces &samples, Measure measure) {
  std::vector<float> values(cell_count(chart), kNone);
  std::visit(
      [&](const auto &c) {
        for_cells(chart, [&](std::size_t cell, Vec3 p, std::size_t, std::size_t) {
          if (!c.is_cut(cell))
            return;
          if (const CutSample *sample = samples.nearest(c.owner[cell], p))
            values[cell] = value_of(*sample, measure);
        });
      },
      chart);
  return values;
}

std::vector<float> from_roughness(const Chart &chart, const FeatureRoughness &roughness) {
  std::vector<float> values(cell_count(chart), kNone);
  if (roughness.map_columns == 0 || roughness.map_rows == 0)
    return values;
  const auto *wall = std::get_if<WallChart>(&chart);
  const std::size_t columns = wall ? wall->columns() : std::get<FloorChart>(chart).nx;
  const std::size_t rows = wall ? wall->rows() : std::get<FloorChart>(chart).ny;
  std::visit(
      [&](const auto &c) {
        for_cells(chart, [&](std::size_t cell, Vec3, std::size_t i, std::size_t j) {
          if (c.is_cut(cell))
            values[cell] = roughness.map_ra_um[(j * roughness.map_rows / rows) * roughness.map_columns +
                                               i * roughness.map_columns / columns];
        });
      },
      chart);
  return values;
}

std::vector<float> from_both(const Chart &chart, const Chart &other) {
  const std::size_t count = cell_count(chart);
  std::vector<float> values(count, kNone);
  std::visit(
      [&](const auto &a, const auto &b) {
        for (std::size_t cell = 0; cell < count; ++cell)
          if (a.is_cut(cell) && b.is_cut(cell))
            values[cell] = (b.residual_mm(cell) - a.residual_mm(cell)) * 1e3f;
      },
      chart, other);
  return values;
}

struct Title {
  const char *name, *unit;
};

Title title_of(Measure measure) {
  switch (measure) {
  case Measure::roughness:
    return {"local Ra, tooth marks included", "um"};
  case Measure::bending:
    return {"bending at the tip, away from the wall", "um"};
  case Measure::chip_load:
    return {"chip load", "um"};
  case Measure::speed:
    break;
  }
  return {"speed along the path", "mm/min"};
}

} // namespace

double half_span(const CellQuantity &quantity) {
  constexpr double kShare = 0.995;
  std::vector<float> sizes;
  for (const std::vector<float> &values : quantity.of_feature)
    for (const float value : values)
      if (std::isfinite(value))
        sizes.push_back(std::abs(value));
  if (sizes.empty())
    return kLeastSpan_um;
  const auto at = sizes.begin() + static_cast<std::ptrdiff_t>(kShare * static_cast<double>(sizes.size() - 1));
  std::nth_element(sizes.begin(), at, sizes.end());
  return std::max(static_cast<double>(*at), kLeastSpan_um);
}

CellQuantity cell_quantity(const Outcome &outcome, Measure measure) {
  const Title title = title_of(measure);
  CellQuantity quantity{title.name, title.unit, {}};
  const SamplesOfPieces samples(outcome.cut.samples, outcome.path.pieces.size());
  for (std::size_t i = 0; i < outcome.charts.size(); ++i) {
    const Chart &chart = outcome.charts[i];
    if (measure != Measure::roughness)
      quantity.of_feature.push_back(from_samples(chart, samples, measure));
    else if (i < outcome.roughness.size())
      quantity.of_feature.push_back(from_roughness(chart, outcome.roughness[i]));
  }
  return quantity;
}

CellQuantity difference(const Outcome &a, const Outcome &b) {
  CellQuantity quantity{"residual, B minus A", "um", {}};
  for (std::size_t i = 0; i < a.charts.size(); ++i)
    quantity.of_feature.push_back(charts_match(a, b, i) ? from_both(a.charts[i], b.charts[i])
                                                        : std::vector<float>{});
  return quantity;
}

bool charts_match(const Outcome &a, const Outcome &b, std::size_t feature) {
  if (feature >= a.charts.size() || feature >= b.charts.size())
    return false;
  if (const auto *wall = std::get_if<WallChart>(&a.charts[feature])) {
    const auto *other = std::get_if<WallChart>(&b.charts[feature]);
    return other && wall->s_mm == other->s_mm && wall->z_mm == other->z_mm && wall->foot == other->foot &&
           wall->inside == other->inside;
  }
  const auto &floor = std::get<FloorChart>(a.charts[feature]);
  const auto *other = std::get_if<FloorChart>(&b.charts[feature]);
  return other && floor.nx == other->nx && floor.ny == other->ny && floor.origin_mm == other->origin_mm &&
         floor.spacing_mm == other->spacing_mm && floor.base_mm == other->base_mm;
}

} // namespace asperity
