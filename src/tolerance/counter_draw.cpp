// Philox rounds, and AS 241 for the normal quantile.
#include "asperity/tolerance/counter_draw.h"

#include <cmath>
#include <numbers>

namespace asperity {

namespace {

/// Value of a polynomial, highest power first.
template <std::size_t kCount> double polynomial(const double (&coefficients)[kCount], double x) {
  double value = 0.0;
  for (const double c : coefficients)
    value = value * x + c;
  return value;
}

// Coefficients of AS 241, highest power first; from memory, checked against an independent quantile.
constexpr double kA[] = {2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4,
                         4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3,
                         1.3314166789178437745e2, 3.3871328727963666080e0};
constexpr double kB[] = {
    5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4, 2.1213794301586595867e4,
    5.3941960214247511077e3, 6.8718700749205790830e2, 4.2313330701600911252e1, 1.0};
constexpr double kC[] = {7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1,
                         1.27045825245236838258e0,  3.64784832476320460504e0,  5.76949722146069140550e0,
                         4.63033784615654529590e0,  1.42343711074968357734e0};
constexpr double kD[] = {1.05075007164441684324e-9, 5.47593808499534494600e-4,
                         1.51986665636164571966e-2, 1.48103976427480074590e-1,
                         6.89767334985100004550e-1, 1.67638483018380384940e0,
                         2.05319162663775882187e0,  1.0};
constexpr double kE[] = {2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3,
                         2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580e0,
                         5.46378491116411436990e0,  6.65790464350110377720e0};
constexpr double kF[] = {2.04426310338993978564e-15, 1.42151175831644588870e-7,
                         1.84631831751005468180e-5,  7.86869131145613259100e-4,
                         1.48753612908506148525e-2,  1.36929880922735805310e-1,
                         5.99832206555887937690e-1,  1.0};
constexpr double kCentral = 0.425, kCentralSquared = 0.180625, kFar = 5.0, kNear = 1.6;

/// FNV-1a, 64 bits.
std::uint64_t hash_of(std::string_view name) {
  std::uint64_t hash = 0xcbf29ce484222325u;
  for (const char c : name)
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001b3u;
  return hash;
}

constexpr std::uint32_t low_half(std::uint64_t x) { return static_cast<std::uint32_t>(x); }
constexpr std::uint32_t high_half(std::uint64_t x) { return static_cast<std::uint32_t>(x >> 32); }

} // namespace

std::array<std::uint32_t, 4> philox(std::array<std::uint32_t, 4> counter, std::array<std::uint32_t, 2> key) {
  constexpr int kRounds = 10;
  constexpr std::uint64_t kMultiplier0 = 0xD2511F53u, kMultiplier1 = 0xCD9E8D57u;
  constexpr std::uint32_t kWeyl0 = 0x9E3779B9u, kWeyl1 = 0xBB67AE85u;
  for (int round = 0; round < kRounds; ++round) {
    const std::uint64_t product0 = kMultiplier0 * counter[0], product1 = kMultiplier1 * counter[2];
    counter = {high_half(product1) ^ counter[1] ^ key[0], low_half(product1),
               high_half(product0) ^ counter[3] ^ key[1], low_half(product0)};
    key = {key[0] + kWeyl0, key[1] + kWeyl1};
  }
  return counter;
}

double normal_quantile(double p) {
  const double q = p - 0.5;
  if (std::abs(q) <= kCentral) {
    const double r = kCentralSquared - q * q;
    return q * polynomial(kA, r) / polynomial(kB, r);
  }
  const double r = std::sqrt(-std::log(q < 0.0 ? p : 1.0 - p));
  const double tail = r <= kFar ? polynomial(kC, r - kNear) / polynomial(kD, r - kNear)
                                : polynomial(kE, r - kFar) / polynomial(kF, r - kFar);
  return q < 0.0 ? -tail : tail;
}

double normal_share_below(double g) { return 0.5 * std::erfc(-g / std::numbers::sqrt2); }

double uniform_draw(std::uint64_t seed, std::uint64_t draw, std::string_view name) {
  const std::uint64_t hash = hash_of(name);
  const auto words = philox({low_half(draw), high_half(draw), low_half(hash), high_half(hash)},
                            {low_half(seed), high_half(seed)});
  const std::uint64_t bits = (static_cast<std::uint64_t>(words[0]) << 32 | words[1]) >> 12;
  return (static_cast<double>(bits) + 0.5) * 0x1p-52; // 52 bits, so that neither end is reached
}

double normal_draw(std::uint64_t seed, std::uint64_t draw, std::string_view name) {
  return normal_quantile(uniform_draw(seed, draw, name));
}

} // namespace asperity
