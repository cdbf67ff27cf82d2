// A chart boiled down to what fits in a table.
#include "chart_profile.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <limits>

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

double percentile(std::vector<float> &values, double share) {
  const auto rank = static_cast<std::size_t>(std::lround(share * static_cast<double>(values.size() - 1)));
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(rank), values.end());
  return um_from_mm(static_cast<double>(values[rank]));
}

template <class AnyChart> ResidualStatistics statistics_of(const AnyChart &chart) {
  ResidualStatistics result;
  std::vector<float> cut;
  double sum = 0.0;
  for (std::size_t cell = 0; cell < chart.envelope_mm.size(); ++cell) {
    if (!is_in_feature(chart, cell))
      continue;
    ++result.cells;
    const float e = chart.residual_mm(cell);
    if (chart.is_cut(cell) && std::isfinite(e)) {
      cut.push_back(e);
      sum += static_cast<double>(e);
    }
  }
  result.cut_cells = cut.size();
  if (cut.empty()) {
    result.mean_um = result.deviation_um = result.lowest_um = result.highest_um = kNone;
    result.percentile_1_um = result.median_um = result.percentile_99_um = kNone;
    return result;
  }
  const double mean = sum / static_cast<double>(cut.size());
  double squares = 0.0;
  for (float e : cut)
    squares += (static_cast<double>(e) - mean) * (static_cast<double>(e) - mean);
  result.mean_um = um_from_mm(mean);
  result.deviation_um = um_from_mm(std::sqrt(squares / static_cast<double>(cut.size())));
  const auto [low, high] = std::minmax_element(cut.begin(), cut.end());
  result.lowest_um = um_from_mm(static_cast<double>(*low));
  result.highest_um = um_from_mm(static_cast<double>(*high));
  result.percentile_1_um = percentile(cut, 0.01);
  result.median_um = percentile(cut, 0.50);
  result.percentile_99_um = percentile(cut, 0.99);
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
