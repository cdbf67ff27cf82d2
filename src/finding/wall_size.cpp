// What a gauge reads on a wall: diameter, width across flats, offset; roundness and taper.
#include "asperity/finding/measure.h"
#include "least_squares_circle.h"
#include "verdict.h"
#include "wall_reference.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace asperity {

namespace {

/// A row is measured only where at least this share of the columns asked for is cut.
constexpr double kLeastCutShare = 0.9;
/// Share of the cut rows taken at either end for the taper.
constexpr double kEndShare = 0.1;
/// Middle part of a flat that the gauge's jaws touch: corners are left out.
constexpr double kJawShare = 0.8;

/// Cell is cut and not part of the lip at the base.
class GaugeRows {
public:
  GaugeRows(const WallChart &chart, const BaseRows &base) : chart_(chart), base_(base) {}

  /// e [mm]; NaN where nothing was cut or a lip stands.
  double at(std::size_t column, std::size_t row) const {
    const std::size_t cell = chart_.at(column, row), clean = base_.first_clean[column];
    if (!chart_.is_cut(cell) || clean == BaseRows::kNone || row < clean)
      return std::numeric_limits<double>::quiet_NaN();
    return chart_.envelope_mm[cell];
  }

private:
  const WallChart &chart_;
  const BaseRows &base_;
};

/// Sums up sizes of rows, from the bottom up.
SizeMeasure over_rows(std::string what, const std::vector<double> &sizes, std::optional<SizeWanted> wanted) {
  SizeMeasure measure;
  measure.what = std::move(what);
  measure.wanted = std::move(wanted);
  if (sizes.empty()) {
    measure.verdict = measure.wanted ? Verdict::not_measured : Verdict::not_asked;
    return measure;
  }
  double sum = 0, bottom = 0, top = 0;
  for (const double size : sizes)
    sum += size;
  measure.mean_mm = sum / static_cast<double>(sizes.size());
  measure.smallest_mm = *std::min_element(sizes.begin(), sizes.end());
  measure.largest_mm = *std::max_element(sizes.begin(), sizes.end());
  const std::size_t end =
      std::max<std::size_t>(1, static_cast<std::size_t>(kEndShare * double(sizes.size())));
  for (std::size_t k = 0; k < end; ++k) {
    bottom += sizes[k];
    top += sizes[sizes.size() - 1 - k];
  }
  measure.taper_mm = (bottom - top) / static_cast<double>(end);
  measure.verdict = verdict_of(measure);
  return measure;
}

/// Diameter grows by twice the stock left on an outside wall and shrinks by it on an inside wall.
double size_change(bool inside, double e) { return inside ? -e : e; }

SizeMeasure measure_circle(const WallFeature &wall, const WallChart &chart, const GaugeRows &gauge) {
  std::vector<Vec2> direction;
  for (const Vec2 foot : chart.foot)
    direction.push_back(glm::normalize(foot - wall.centre));
  std::vector<double> e(chart.columns()), sizes;
  double roundness = 0;
  for (std::size_t j = 0; j < chart.rows(); ++j) {
    for (std::size_t i = 0; i < chart.columns(); ++i)
      e[i] = gauge.at(i, j);
    const CircleFit fit = fit_circle(direction, e);
    if (static_cast<double>(fit.points) < kLeastCutShare * static_cast<double>(chart.columns()))
      continue;
    sizes.push_back(wall.diameter_mm + 2.0 * size_change(chart.inside, fit.mean_mm));
    roundness = std::max(roundness, fit.roundness_mm);
  }
  SizeMeasure measure = over_rows("diameter", sizes, wall.size[0]);
  measure.roundness_mm = roundness;
  return measure;
}

/// Columns in the middle of the flat whose outward direction is `outward`.
std::vector<std::size_t> flat_columns(const WallChart &chart, Vec2 outward, Vec2 centre) {
  std::vector<std::size_t> columns;
  const Vec2 along = left_of(outward);
  double half = 0;
  for (std::size_t i = 0; i < chart.columns(); ++i)
    if (std::abs(glm::dot(chart.normal[i], outward)) > 1.0 - 1e-9 &&
        glm::dot(chart.foot[i] - centre, outward) > 0.0) {
      columns.push_back(i);
      half = std::max(half, std::abs(glm::dot(chart.foot[i] - centre, along)));
    }
  std::erase_if(columns, [&](std::size_t i) {
    return std::abs(glm::dot(chart.foot[i] - centre, along)) > kJawShare * half;
  });
  return columns;
}

/// Mean e over the columns in row j; nothing if too few are cut.
std::optional<double> mean_over(const GaugeRows &gauge, const std::vector<std::size_t> &columns,
                                std::size_t row) {
  double sum = 0, count = 0;
  for (const std::size_t i : columns)
    if (const double e = gauge.at(i, row); !std::isnan(e))
      sum += e, count += 1;
  if (columns.empty() || count < kLeastCutShare * static_cast<double>(columns.size()))
    return std::nullopt;
  return sum / count;
}

SizeMeasure measure_width(const WallFeature &wall, const WallChart &chart, const GaugeRows &gauge, int axis) {
  const Vec2 outward = axis == 0 ? Vec2(1, 0) : Vec2(0, 1);
  const double nominal = wall.width_mm[axis];
  const auto high = flat_columns(chart, outward, wall.centre);
  const auto low = flat_columns(chart, -outward, wall.centre);
  std::vector<double> sizes;
  for (std::size_t j = 0; j < chart.rows(); ++j) {
    const auto a = mean_over(gauge, high, j), b = mean_over(gauge, low, j);
    if (a && b)
      sizes.push_back(nominal + size_change(chart.inside, *a + *b));
  }
  return over_rows(axis == 0 ? "width along x" : "width along y", sizes, wall.size[axis]);
}

/// Free form: stock left along the normal. The extremes are those of single cells, as a profile limit asks.
SizeMeasure measure_offset(const WallFeature &wall, const WallChart &chart, const GaugeRows &gauge) {
  std::vector<std::size_t> all(chart.columns());
  for (std::size_t i = 0; i < all.size(); ++i)
    all[i] = i;
  std::vector<double> means;
  double low = std::numeric_limits<double>::infinity(), high = -low;
  for (std::size_t j = 0; j < chart.rows(); ++j) {
    const auto mean = mean_over(gauge, all, j);
    if (!mean)
      continue;
    means.push_back(*mean);
    for (const std::size_t i : all)
      if (const double e = gauge.at(i, j); !std::isnan(e))
        low = std::min(low, e), high = std::max(high, e);
  }
  SizeMeasure measure = over_rows("offset", means, wall.size[0]);
  if (!means.empty()) {
    measure.smallest_mm = low;
    measure.largest_mm = high;
    measure.verdict = verdict_of(measure);
  }
  return measure;
}

} // namespace

std::vector<SizeMeasure> measure_wall(const WallFeature &wall, const WallChart &chart,
                                      const WallReference *reference) {
  std::optional<WallReference> made;
  if (!reference)
    reference = &made.emplace(wall_reference(chart, 1));
  const GaugeRows gauge(chart, reference->base);
  switch (wall.kind) {
  case OutlineKind::circle:
    return {measure_circle(wall, chart, gauge)};
  case OutlineKind::rounded_rectangle:
    return {measure_width(wall, chart, gauge, 0), measure_width(wall, chart, gauge, 1)};
  case OutlineKind::free_form:
    break;
  }
  return {measure_offset(wall, chart, gauge)};
}

} // namespace asperity
