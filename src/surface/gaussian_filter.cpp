// The Gaussian profile filter: direct convolution, blocked so that it runs at the speed of the vector units.
#include "asperity/surface/gaussian_filter.h"

#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace asperity {

double gaussian_weight_per_mm(double x_mm, double cutoff_mm) {
  const double width_mm = kGaussAlpha * cutoff_mm;
  const double t = x_mm / width_mm;
  return std::exp(-kPi * t * t) / width_mm;
}

double gaussian_transmission(double wavelength_mm, double cutoff_mm) {
  const double ratio = cutoff_mm / wavelength_mm;
  return std::exp2(-ratio * ratio);
}

double gaussian_kernel_area(double reach_in_cutoffs) {
  return std::erf(reach_in_cutoffs * std::sqrt(kPi) / kGaussAlpha);
}

GaussianFilter::GaussianFilter(double cutoff_mm, double spacing_mm)
    : cutoff_mm_(cutoff_mm), spacing_mm_(spacing_mm), weights_{1.0} {
  assert(spacing_mm > 0);
  // A sample exactly one cutoff away belongs to the kernel even where the quotient rounds down.
  constexpr double kRounding = 1e-9;
  const double reach = std::floor(std::max(0.0, cutoff_mm) / spacing_mm + kRounding);
  if (reach < 1)
    return;

  double area = 1.0;
  for (std::size_t k = 1; k <= static_cast<std::size_t>(reach); ++k) {
    const double t = static_cast<double>(k) * spacing_mm / (kGaussAlpha * cutoff_mm);
    weights_.push_back(std::exp(-kPi * t * t));
    area += 2.0 * weights_.back();
  }
  for (double &weight : weights_)
    weight /= area;
}

/// Whole blocks take some weights at a time: every sum keeps its own order, so vectors change no digit.
/// `padded` begins where the first sum's kernel does; neighbouring samples of a line lie `apart` places
/// apart.
ASPERITY_WIDE static void convolve_with(std::span<const double> weights, const double *padded,
                                        std::size_t apart, double *out, std::size_t length) {
  constexpr std::size_t kBlock = 512, kTogether = 4;
  for (std::size_t begin = 0; begin < length; begin += kBlock) {
    const std::size_t count = std::min(kBlock, length - begin);
    const double *middle = padded + begin + (weights.size() - 1) * apart;
    double *sum = out + begin;
    for (std::size_t i = 0; i < count; ++i)
      sum[i] = weights[0] * middle[i];
    std::size_t k = 1;
    for (; k + kTogether <= weights.size(); k += kTogether) {
      const double w0 = weights[k], w1 = weights[k + 1], w2 = weights[k + 2], w3 = weights[k + 3];
      const double *left = middle - k * apart, *right = middle + k * apart;
#pragma GCC ivdep
      for (std::size_t i = 0; i < count; ++i) {
        double here = sum[i] + w0 * (left[i] + right[i]);
        here += w1 * (left[i - apart] + right[i + apart]);
        here += w2 * (left[i - 2 * apart] + right[i + 2 * apart]);
        sum[i] = here + w3 * (left[i - 3 * apart] + right[i + 3 * apart]);
      }
    }
    for (; k < weights.size(); ++k) {
      const double weight = weights[k];
      const double *left = middle - k * apart, *right = middle + k * apart;
#pragma GCC ivdep
      for (std::size_t i = 0; i < count; ++i)
        sum[i] += weight * (left[i] + right[i]);
    }
  }
}

void GaussianFilter::mean_lines(std::span<const double> padded, std::size_t lines,
                                std::span<double> mean) const {
  assert(padded.size() == mean.size() + 2 * reach() * lines);
  convolve_with(weights_, padded.data(), lines, mean.data(), mean.size());
}

void GaussianFilter::scale_ends(std::span<double> mean) const {
  const std::size_t count = mean.size();
  // covered[k]: kernel area from its centre to k samples out, the centre counted half.
  std::vector<double> covered(weights_.size());
  double area = covered[0] = weights_[0] / 2.0;
  for (std::size_t k = 1; k < weights_.size(); ++k)
    covered[k] = area += weights_[k];
  const auto scale = [&](std::size_t i) {
    mean[i] /= covered[std::min(i, reach())] + covered[std::min(count - 1 - i, reach())];
  };
  const std::size_t left = std::min(reach(), count);
  for (std::size_t i = 0; i < left; ++i)
    scale(i);
  for (std::size_t i = std::max(left, count - std::min(reach(), count)); i < count; ++i)
    scale(i);
}

template <typename Height>
std::vector<double> GaussianFilter::mean_line_of(std::span<const Height> heights, ProfileEnds ends) const {
  const std::size_t count = heights.size();
  std::vector<double> mean(count);
  if (count == 0)
    return mean;

  std::vector<double> padded(count + 2 * reach(), 0.0);
  std::copy(heights.begin(), heights.end(), padded.begin() + static_cast<std::ptrdiff_t>(reach()));
  if (ends == ProfileEnds::closed) {
    // A kernel longer than the profile goes round more than once.
    const std::size_t whole_turns = (reach() + count - 1) / count * count;
    for (std::size_t i = 0; i < reach(); ++i) {
      padded[i] = heights[(whole_turns + i - reach()) % count];
      padded[reach() + count + i] = heights[i % count];
    }
  }
  mean_lines(padded, 1, mean);
  if (ends == ProfileEnds::open)
    scale_ends(mean);
  return mean;
}

std::vector<double> GaussianFilter::mean_line(std::span<const double> heights, ProfileEnds ends) const {
  return mean_line_of(heights, ends);
}

std::vector<double> GaussianFilter::mean_line(std::span<const float> heights, ProfileEnds ends) const {
  return mean_line_of(heights, ends);
}

std::vector<double> GaussianFilter::roughness(std::span<const double> heights, ProfileEnds ends) const {
  std::vector<double> rough = mean_line_of(heights, ends);
  for (std::size_t i = 0; i < rough.size(); ++i)
    rough[i] = heights[i] - rough[i];
  return rough;
}

std::vector<double> GaussianFilter::roughness(std::span<const float> heights, ProfileEnds ends) const {
  std::vector<double> rough = mean_line_of(heights, ends);
  for (std::size_t i = 0; i < rough.size(); ++i)
    rough[i] = static_cast<double>(heights[i]) - rough[i];
  return rough;
}

std::vector<double> roughness_profile(std::span<const double> heights, double spacing_mm,
                                      const Bandwidth &band, ProfileEnds ends) {
  const GaussianFilter long_wave(band.cutoff_mm, spacing_mm);
  if (band.short_mm < spacing_mm)
    return long_wave.roughness(heights, ends);
  const std::vector<double> primary = GaussianFilter(band.short_mm, spacing_mm).mean_line(heights, ends);
  return long_wave.roughness(primary, ends);
}

} // namespace asperity
