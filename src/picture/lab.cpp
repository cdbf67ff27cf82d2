// CIE 1976 L*a*b* and sRGB.
#include "lab.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

// White D65 and the sRGB primaries in CIE XYZ, [IEC 61966-2-1].
constexpr double kWhiteX = 0.95047, kWhiteZ = 1.08883;
constexpr double kDelta = 6.0 / 29.0;

double lab_root(double t) {
  return t > kDelta * kDelta * kDelta ? std::cbrt(t) : t / (3 * kDelta * kDelta) + 4.0 / 29.0;
}
double lab_cube(double t) { return t > kDelta ? t * t * t : 3 * kDelta * kDelta * (t - 4.0 / 29.0); }

double linear_from_byte(std::uint8_t byte) {
  const double v = byte / 255.0;
  return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

std::uint8_t byte_from_linear(double linear) {
  const double c = std::clamp(linear, 0.0, 1.0);
  const double v = c <= 0.0031308 ? 12.92 * c : 1.055 * std::pow(c, 1.0 / 2.4) - 0.055;
  return static_cast<std::uint8_t>(std::lround(255.0 * v));
}

} // namespace

Lab lab_from_lch(double lightness, double chroma, double hue_deg) {
  const double hue = rad_from_deg(hue_deg);
  return {lightness, chroma * std::cos(hue), chroma * std::sin(hue)};
}

double difference(const Lab &p, const Lab &q) { return std::hypot(p.l - q.l, p.a - q.a, p.b - q.b); }

std::array<double, 3> linear_from_lab(const Lab &colour) {
  const double fy = (colour.l + 16.0) / 116.0;
  const double x = kWhiteX * lab_cube(fy + colour.a / 500.0);
  const double y = lab_cube(fy);
  const double z = kWhiteZ * lab_cube(fy - colour.b / 200.0);
  return {3.2404542 * x - 1.5371385 * y - 0.4985314 * z, -0.9692660 * x + 1.8760108 * y + 0.0415560 * z,
          0.0556434 * x - 0.2040259 * y + 1.0572252 * z};
}

Lab lab_from_linear(const std::array<double, 3> &c) {
  const double x = 0.4124564 * c[0] + 0.3575761 * c[1] + 0.1804375 * c[2];
  const double y = 0.2126729 * c[0] + 0.7151522 * c[1] + 0.0721750 * c[2];
  const double z = 0.0193339 * c[0] + 0.1191920 * c[1] + 0.9503041 * c[2];
  const double fx = lab_root(x / kWhiteX), fy = lab_root(y), fz = lab_root(z / kWhiteZ);
  return {116.0 * fy - 16.0, 500.0 * (fx - fy), 200.0 * (fy - fz)};
}

std::array<double, 3> linear_from_rgb(Rgb colour) {
  return {linear_from_byte(colour.r), linear_from_byte(colour.g), linear_from_byte(colour.b)};
}

Rgb rgb_from_linear(const std::array<double, 3> &linear) {
  return {byte_from_linear(linear[0]), byte_from_linear(linear[1]), byte_from_linear(linear[2])};
}

} // namespace asperity
