// Sampled periodic profiles whose parameters are known in closed form.
#pragma once

#include "asperity/base/units.h"

#include <cmath>
#include <cstddef>
#include <functional>
#include <vector>

namespace asperity {

/// Height against the place in the period, 0 <= u < 1.
using Shape = std::function<double(double)>;

/// `periods` of a shape, each in `samples` midpoints.
inline std::vector<double> sampled(const Shape &shape, std::size_t samples, std::size_t periods = 1) {
  std::vector<double> heights;
  for (std::size_t i = 0; i < samples * periods; ++i)
    heights.push_back(shape((static_cast<double>(i % samples) + 0.5) / static_cast<double>(samples)));
  return heights;
}

inline Shape sine(double amplitude) {
  return [=](double u) { return amplitude * std::sin(2.0 * kPi * u); };
}
inline Shape triangle(double amplitude) {
  return [=](double u) { return amplitude * (4.0 * std::abs(u - 0.5) - 1.0); };
}
inline Shape sawtooth(double amplitude) {
  return [=](double u) { return amplitude * (2.0 * u - 1.0); };
}
/// High over the share `duty` of the period.
inline Shape pulse(double height, double duty) {
  return [=](double u) { return u < duty ? height : 0.0; };
}
/// Hollows of x^2, sharp peaks up.
inline Shape parabolic_cusp(double height) {
  return [=](double u) { return height * (2.0 * u - 1.0) * (2.0 * u - 1.0); };
}
inline Shape rectified_sine(double height) {
  return [=](double u) { return height * std::sin(kPi * u); };
}
/// Hollows of a circle of radius 1 at this pitch.
inline Shape arc_cusp(double pitch) {
  return [=](double u) { return 1.0 - std::sqrt(1.0 - std::pow(pitch * (u - 0.5), 2)); };
}

} // namespace asperity
