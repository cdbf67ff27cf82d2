// A chart boiled down to what fits in a table.
#include "chart_profile.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

namespace asperity {

namespace {

constexpr double kNone = std::numeric_limits<double>::quiet_NaN();

std::size_t columns_in(const WallChart &chart) { return chart.columns(); }
std::size_t columns_in(const FloorChart &chart) { return chart.nx; }
std::size_t rows_in(const WallChart &chart) { return chart.rows(); }
std::size_t rows_in(const FloorChart &chart) { return chart.ny; }
bool is_in_feature(const WallChart &, std::size_t) { return true; }
bool is_in_feature(const FloorChart &chart, std::size_t cell) { return chart.in_feature(cell); }
double column_place_mm(const WallChart &chart, std::size_t i) { return chart.s_mm[i]; }
double column_place_mm(const FloorChart &chart, std::size_t i) { return chart.x_mm(i); }
double row_place_mm(const WallChart &chart, std::size_t j) { return chart.z_mm[j]; }
double row_place_mm(const FloorChart &chart, std::size_t j) { return chart.y_mm(j); }

/// Calls take(e) with the residual of every cell a pass has cut.
template <class AnyChart, class Take> void for_each_cut(const AnyChart &chart, const Take &take) {
  for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell)
    if (is_in_feature(chart, cell) && chart.is_cut(cell) && std::isfinite(chart.residual_mm(cell)))
      take(chart.residual_mm(cell));
}

/// Bits that rise with the number.
std::uint32_t rising_bits(float value) {
  const auto bits = std::bit_cast<std::uint32_t>(value);
  return (bits & 0x80000000U) != 0 ? ~bits : bits | 0x80000000U;
}
float from_rising_bits(std::uint32_t bits) {
  return std::bit_cast<float>((bits & 0x80000000U) != 0 ? bits & 0x7fffffffU : ~bits);
}

/// The value that so many cut cells lie below, found by counting upper and lower halves of bits, so that no
/// copy of the chart is sorted.
template <class AnyChart> float cut_residual_of_rank(const AnyChart &chart, std::size_t rank) {
  constexpr std::uint32_t kHalf = 16, kMask = 0xffffU;
  std::vector<std::size_t> count(kMask + 1, 0);
  const auto take_rank = [&] {
    std::uint32_t bucket = 0;
    for (; rank >= count[bucket]; ++bucket)
      rank -= count[bucket];
    return bucket;
  };
  for_each_cut(chart, [&](float e) { ++count[rising_bits(e) >> kHalf]; });
  const std::uint32_t upper = take_rank();
  std::fill(count.begin(), count.end(), 0);
  for_each_cut(chart, [&](float e) {
    if (rising_bits(e) >> kHalf == upper)
      ++count[rising_bits(e) & kMask];
  });
  return from_rising_bits(upper << kHalf | take_rank());
}

template <class AnyChart> double percentile_um(const AnyChart &chart, std::size_t cut_cells, double share) {
  const auto rank = static_cast<std::size_t>(std::lround(share * static_cast<double>(cut_cells - 1)));
  return um_from_mm(static_cast<double>(cut_residual_of_rank(chart, rank)));
}

template <class AnyChart> ResidualStatistics statistics_of(const AnyChart &chart) {
  ResidualStatistics result;
  for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell)
    result.cells += is_in_feature(chart, cell) ? 1 : 0;
  double sum = 0.0, squares = 0.0;
  float low = std::numeric_limits<float>::infinity(), high = -low;
  for_each_cut(chart, [&](float e) {
    ++result.cut_cells;
    sum += static_cast<double>(e);
    low = std::min(low, e);
    high = std::max(high, e);
  });
  if (result.cut_cells == 0) {
    result.mean_um = result.deviation_um = result.lowest_um = result.highest_um = kNone;
    result.percentile_1_um = result.median_um = result.percentile_99_um = kNone;
    return result;
  }
  const auto cut = static_cast<double>(result.cut_cells);
  const double mean = sum / cut;
  for_each_cut(
      chart, [&](float e) { squares += (static_cast<double>(e) - mean) * (static_cast<double>(e) - mean); });
  result.mean_um = um_from_mm(mean);
  result.deviation_um = um_from_mm(std::sqrt(squares / cut));
  result.lowest_um = um_from_mm(static_cast<double>(low));
  result.highest_um = um_from_mm(static_cast<double>(high));
  result.percentile_1_um = percentile_um(chart, result.cut_cells, 0.01);
  result.median_um = percentile_um(chart, result.cut_cells, 0.50);
  result.percentile_99_um = percentile_um(chart, result.cut_cells, 0.99);
  return result;
}

/// Sums over stretches of columns or rows, turned into means at the end.
class ProfileSum {
public:
  ProfileSum(std::size_t lanes, std::size_t most)
      : lanes_per_stretch_(std::max<std::size_t>(1, (lanes + most - 1) / std::max<std::size_t>(1, most))) {
    const std::size_t stretches = (lanes + lanes_per_stretch_ - 1) / lanes_per_stretch_;
    for (auto *values : {&place_, &lanes_in_, &sum_, &cut_, &cells_})
      values->assign(stretches, 0.0);
  }
  void place(std::size_t lane, double place_mm) {
    place_[lane / lanes_per_stretch_] += place_mm;
    lanes_in_[lane / lanes_per_stretch_] += 1.0;
  }
  void cell(std::size_t lane, bool is_cut, double e_mm) {
    const std::size_t k = lane / lanes_per_stretch_;
    cells_[k] += 1.0;
    if (is_cut) {
      cut_[k] += 1.0;
      sum_[k] += e_mm;
    }
  }
  Profile profile() const {
    Profile out;
    for (std::size_t k = 0; k < sum_.size(); ++k) {
      out.place_mm.push_back(place_[k] / lanes_in_[k]);
      out.mean_um.push_back(cut_[k] > 0.0 ? um_from_mm(sum_[k] / cut_[k]) : kNone);
      out.cut_share.push_back(cells_[k] > 0.0 ? cut_[k] / cells_[k] : kNone);
    }
    return out;
  }

private:
  std::size_t lanes_per_stretch_;
  std::vector<double> place_, lanes_in_, sum_, cut_, cells_;
};

template <class AnyChart> ChartProfiles profiles_of(const AnyChart &chart, std::size_t most) {
  const std::size_t columns = columns_in(chart), rows = rows_in(chart);
  ProfileSum across(columns, most), up(rows, most);
  for (std::size_t i = 0; i < columns; ++i)
    across.place(i, column_place_mm(chart, i));
  for (std::size_t j = 0; j < rows; ++j)
    up.place(j, row_place_mm(chart, j));
  for (std::size_t j = 0; j < rows; ++j)
    for (std::size_t i = 0; i < columns; ++i) {
      const std::size_t cell = chart.at(i, j);
      if (!is_in_feature(chart, cell))
        continue;
      const auto e_mm = static_cast<double>(chart.residual_mm(cell));
      const bool is_cut = chart.is_cut(cell) && std::isfinite(e_mm);
      across.cell(i, is_cut, e_mm);
      up.cell(j, is_cut, e_mm);
    }
  return {across.profile(), up.profile()};
}

} // namespace

ResidualStatistics residual_statistics(const Chart &chart) {
  return std::visit([](const auto &c) { return statistics_of(c); }, chart);
}

ChartProfiles chart_profiles(const Chart &chart, std::size_t most) {
  return std::visit([most](const auto &c) { return profiles_of(c, most); }, chart);
}

} // namespace asperity
