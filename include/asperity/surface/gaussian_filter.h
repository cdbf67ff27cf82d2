// The Gaussian profile filter of ISO 16610-21: splits a profile into its mean line and its roughness.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace asperity {

/// Open: ends lie where the measurement stopped; the kernel is scaled up to unit area over what it still
/// covers. Closed: the last sample is followed by the first (unrolled closed walls); no end effect.
enum class ProfileEnds { open, closed };

/// sqrt(ln 2 / pi): makes the filter pass one half at the cutoff.
inline constexpr double kGaussAlpha = 0.46971863934982566;

/// s(x) = exp(-pi (x / (alpha lc))^2) / (alpha lc) [1/mm]. [ISO 16610-21:2011, 4.1]
double gaussian_weight_per_mm(double x_mm, double cutoff_mm);
/// Share of a sine of this wavelength left in the mean line: exp(-pi (alpha lc / l)^2) = 2^-((lc/l)^2).
/// [ISO 16610-21:2011, 4.2]
double gaussian_transmission(double wavelength_mm, double cutoff_mm);
/// Area of the weight within +- this many cutoffs: erf(reach sqrt(pi) / alpha).
double gaussian_kernel_area(double reach_in_cutoffs);

/// A kernel for one cutoff and one spacing, cut off at +- one cutoff (misses 1e-7 of the area; half a cutoff
/// would read 2 % wrong at the cutoff). Heights may be in any unit; the mean line comes in the same.
/// A cutoff below the spacing changes nothing.
class GaussianFilter {
public:
  GaussianFilter(double cutoff_mm, double spacing_mm);

  double cutoff_mm() const { return cutoff_mm_; }
  double spacing_mm() const { return spacing_mm_; }
  /// weights()[k]: of each of the two samples k places away. First plus twice the rest is 1.
  std::span<const double> weights() const { return weights_; }

  /// Samples to either side that a mean rests on.
  std::size_t reach() const { return weights_.size() - 1; }

  std::vector<double> mean_line(std::span<const double> heights, ProfileEnds ends) const;
  std::vector<double> mean_line(std::span<const float> heights, ProfileEnds ends) const;
  /// heights - mean_line(heights).
  std::vector<double> roughness(std::span<const double> heights, ProfileEnds ends) const;
  std::vector<double> roughness(std::span<const float> heights, ProfileEnds ends) const;

  /// Of lines side by side, sample i of line l at [i * lines + l]; padded has reach() more samples before the
  /// first and after the last. No end scaling.
  void mean_lines(std::span<const double> padded, std::size_t lines, std::span<double> mean) const;

private:
  void scale_ends(std::span<double> mean) const;
  template <typename Height>
  std::vector<double> mean_line_of(std::span<const Height> heights, ProfileEnds ends) const;

  double cutoff_mm_, spacing_mm_;
  std::vector<double> weights_;
};

/// What lies between the two nesting indices: shorter is noise, longer is waviness.
struct Bandwidth {
  double cutoff_mm = 0.8; ///< lc, ISO 21920 L-filter Nic
  double short_mm = 0;    ///< ls, S-filter Nis; 0 = no S-filter
};

/// Primary profile (after the S-filter) minus its mean line.
std::vector<double> roughness_profile(std::span<const double> heights, double spacing_mm,
                                      const Bandwidth &band, ProfileEnds ends);

} // namespace asperity
