// What a gauge reads on floors and domes: height, and error along the normal.
#include "asperity/finding/measure.h"
#include "surface_slope.h"
#include "verdict.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

namespace {

/// Mean and extremes of a row of values.
class Spread {
public:
  void add(double value) {
    sum_ += value;
    count_ += 1;
    low_ = std::min(low_, value);
    high_ = std::max(high_, value);
  }
  void write_to(SizeMeasure &measure, double base_mm) const {
    if (count_ == 0) {
      measure.verdict = Verdict::not_measured;
      return;
    }
    measure.mean_mm = base_mm + sum_ / count_;
    measure.smallest_mm = base_mm + low_;
    measure.largest_mm = base_mm + high_;
    measure.verdict = verdict_of(measure);
  }

private:
  double sum_ = 0, count_ = 0;
  double low_ = std::numeric_limits<double>::infinity(), high_ = -low_;
};

} // namespace

std::vector<SizeMeasure> measure_floor(const FloorFeature &floor, const FloorChart &chart) {
  Spread height;
  for (std::size_t cell = 0; cell < chart.wanted_mm.size(); ++cell)
    if (chart.in_feature(cell) && chart.is_cut(cell))
      height.add(chart.residual_mm(cell));
  SizeMeasure measure;
  measure.what = "height";
  measure.wanted = floor.height;
  height.write_to(measure, floor.z_mm - floor.measured_from_z_mm);
  return {measure};
}

std::vector<SizeMeasure> measure_dome(const DomeFeature &dome, const FloorChart &chart) {
  // The height of a dome is that of its highest point; its shape is judged along the normal.
  double top = -std::numeric_limits<double>::infinity();
  Spread along_normal;
  for (std::size_t j = 0; j < chart.ny; ++j)
    for (std::size_t i = 0; i < chart.nx; ++i) {
      const std::size_t cell = chart.at(i, j);
      if (!chart.in_feature(cell) || !chart.is_cut(cell))
        continue;
      const double e = chart.residual_mm(cell);
      top = std::max(top, chart.base_mm + chart.wanted_mm[cell] + e);
      along_normal.add(e * cos_slope(chart, i, j));
    }
  SizeMeasure height, shape;
  height.what = "height";
  height.wanted = dome.height;
  Spread highest;
  if (std::isfinite(top))
    highest.add(top);
  highest.write_to(height, -dome.measured_from_z_mm);
  shape.what = "error along the normal";
  along_normal.write_to(shape, 0.0);
  return {height, shape};
}

} // namespace asperity
