// Grooves and ridges in one row of a wall: deviations from the row's own trend.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

inline constexpr double kLeastRound = 0.9;

/// Takes mean, eccentricity and ovality (orders 0, 1 and 2 round the outline) out of a round wall's rows: a
/// moving median follows slopes exactly but cuts the crests of such slow waves.
class SlowWaves {
public:
  explicit SlowWaves(std::size_t columns);
  /// `e` has one value a column. The fit leaves out what stands far from it. A row less than kLeastRound cut
  /// is returned as it is.
  std::vector<float> taken_out_of(std::span<const float> e) const;

  static constexpr std::size_t kTerms = 5; ///< 1, cos t, sin t, cos 2t, sin 2t
  using Terms = std::array<double, kTerms>;

private:
  std::vector<Terms> terms_; ///< of every column
};

/// e minus its moving median over 2 half + 1 columns, round the closed outline; NaN stays NaN (not cut).
std::vector<float> deviation_from_trend(std::span<const float> e, std::size_t half_columns);

/// One dent (groove, e below trend) or bump (ridge) in a row. Columns may run past the end, round the
/// outline.
struct Dent {
  bool ridge = false;
  std::size_t first = 0, last = 0; ///< columns beyond the threshold, first <= last
  std::size_t deepest = 0;         ///< column, wrapped
  double centre = 0;               ///< column with fraction, midway between the flanks
  double depth_mm = 0;
  double width_mm = 0; ///< where the flanks meet the trend
};

/// Shallowest deviation that stands clear of the row's own waviness [mm]: at least `least_mm`, and kClear
/// times the robust deviation, so that facets and tooth marks of the whole row are not taken for lines.
double clear_threshold_mm(std::span<const float> deviation, double least_mm);
inline constexpr double kClear = 4.0;

std::vector<Dent> dents_in_row(std::span<const float> deviation, double threshold_mm, double spacing_mm);

} // namespace asperity
