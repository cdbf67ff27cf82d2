// e of one plan minus e of another on the same cells.
#include "asperity/compare/difference_chart.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace asperity {

namespace {

constexpr float kNone = std::numeric_limits<float>::quiet_NaN();
constexpr double kSamePlace = 1e-6; ///< [mm] between cells that are the same
constexpr double kSameWanted_mm = 1e-4;

template <typename C> float cut_residual_mm(const C &chart, std::size_t cell) {
  return chart.is_cut(cell) ? chart.residual_mm(cell) : kNone;
}

/// Cell before a place on a rising axis, and how far past it [0, 1).
struct Between {
  std::size_t low = 0, high = 0;
  double share = 0;
};

Between between(const std::vector<double> &places, double at, double wrap_mm) {
  const std::size_t n = places.size();
  const auto above =
      static_cast<std::size_t>(std::upper_bound(places.begin(), places.end(), at) - places.begin());
  if (wrap_mm > 0.0 && (above == 0 || above == n)) {
    const double gap = places.front() + wrap_mm - places.back();
    const double past = above == 0 ? at + wrap_mm - places.back() : at - places.back();
    return {n - 1, 0, gap > 0.0 ? past / gap : 0.0};
  }
  if (above == 0)
    return {0, 0, 0.0};
  if (above == n)
    return {n - 1, n - 1, 0.0};
  return {above - 1, above, (at - places[above - 1]) / (places[above] - places[above - 1])};
}

/// Between four cells; a corner of no weight has no say.
float mixed(const Between &x, const Between &y, const std::function<float(std::size_t, std::size_t)> &at) {
  double sum = 0.0;
  const auto add = [&](std::size_t i, std::size_t j, double weight) {
    if (weight > 1e-9)
      sum += weight * static_cast<double>(at(i, j));
  };
  add(x.low, y.low, (1.0 - x.share) * (1.0 - y.share));
  add(x.high, y.low, x.share * (1.0 - y.share));
  add(x.low, y.high, (1.0 - x.share) * y.share);
  add(x.high, y.high, x.share * y.share);
  return static_cast<float>(sum);
}

struct Axes {
  std::vector<double> across, up;
  double wrap_mm = 0; ///< of the across axis; 0 = open
};

Axes axes_of(const WallChart &chart) { return {chart.s_mm, chart.z_mm, chart.outline.length_mm()}; }
Axes axes_of(const FloorChart &chart) {
  Axes axes;
  for (std::size_t i = 0; i < chart.nx; ++i)
    axes.across.push_back(chart.x_mm(i));
  for (std::size_t j = 0; j < chart.ny; ++j)
    axes.up.push_back(chart.y_mm(j));
  return axes;
}

bool is_same(const std::vector<double> &a, const std::vector<double> &b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](double p, double q) { return std::abs(p - q) <= kSamePlace; });
}

bool in_feature(const WallChart &, std::size_t) { return true; }
bool in_feature(const FloorChart &chart, std::size_t cell) { return chart.in_feature(cell); }

/// Heights count from the wanted surface; where both charts disagree about that, nothing can be said.
float offset_mm(const WallChart &, std::size_t) { return 0.0f; }
float offset_mm(const FloorChart &chart, std::size_t cell) {
  return static_cast<float>(chart.base_mm) + chart.wanted_mm[cell];
}

template <typename C> std::vector<float> other_on_first(const C &first, const C &other, bool &is_resampled) {
  const Axes to = axes_of(first), from = axes_of(other);
  is_resampled = !is_same(to.across, from.across) || !is_same(to.up, from.up);
  std::vector<float> e(to.across.size() * to.up.size(), kNone);
  if (from.across.empty() || from.up.empty())
    return e;
  const auto residual = [&](std::size_t i, std::size_t j) { return cut_residual_mm(other, other.at(i, j)); };
  const auto wanted = [&](std::size_t i, std::size_t j) { return offset_mm(other, other.at(i, j)); };
  std::vector<Between> across;
  for (const double place : to.across)
    across.push_back(between(from.across, place, from.wrap_mm));
  for (std::size_t j = 0; j < to.up.size(); ++j) {
    const Between up = between(from.up, to.up[j], 0.0);
    for (std::size_t i = 0; i < to.across.size(); ++i) {
      const std::size_t cell = first.at(i, j);
      const float there = mixed(across[i], up, wanted);
      if (std::abs(there - offset_mm(first, cell)) <= kSameWanted_mm)
        e[cell] = mixed(across[i], up, residual);
    }
  }
  return e;
}

void sum_up(DifferenceChart &chart) {
  double count = 0, sum = 0, squares = 0;
  chart.lowest_um = std::numeric_limits<double>::infinity();
  chart.highest_um = -chart.lowest_um;
  for (const float value : chart.difference_um) {
    if (std::isnan(value))
      continue;
    const double d = static_cast<double>(value);
    count += 1;
    sum += d;
    squares += d * d;
    chart.lowest_um = std::min(chart.lowest_um, d);
    chart.highest_um = std::max(chart.highest_um, d);
  }
  if (count == 0)
    chart.lowest_um = chart.highest_um = std::numeric_limits<double>::quiet_NaN();
  chart.mean_um = sum / count;
  chart.rms_um = std::sqrt(squares / count);
}

template <typename C> void fill(DifferenceChart &chart, const C &first, const C &other) {
  const std::vector<float> theirs = other_on_first(first, other, chart.is_resampled);
  chart.difference_um.assign(theirs.size(), kNone);
  double cells = 0, both = 0, first_only = 0, other_only = 0;
  for (std::size_t cell = 0; cell < theirs.size(); ++cell) {
    if (!in_feature(first, cell))
      continue;
    const float mine = cut_residual_mm(first, cell);
    cells += 1;
    both += !std::isnan(mine) && !std::isnan(theirs[cell]) ? 1 : 0;
    first_only += !std::isnan(mine) && std::isnan(theirs[cell]) ? 1 : 0;
    other_only += std::isnan(mine) && !std::isnan(theirs[cell]) ? 1 : 0;
    chart.difference_um[cell] = 1000.0f * (theirs[cell] - mine);
  }
  if (cells > 0) {
    chart.both_share = both / cells;
    chart.first_only_share = first_only / cells;
    chart.other_only_share = other_only / cells;
  }
}

} // namespace

DifferenceChart difference_chart(const Chart &first, const Chart &other) {
  DifferenceChart chart;
  chart.grid = &first;
  if (const auto *wall = std::get_if<WallChart>(&first); wall && std::holds_alternative<WallChart>(other))
    fill(chart, *wall, std::get<WallChart>(other));
  else if (const auto *floor = std::get_if<FloorChart>(&first);
           floor && std::holds_alternative<FloorChart>(other))
    fill(chart, *floor, std::get<FloorChart>(other));
  sum_up(chart);
  return chart;
}

} // namespace asperity
