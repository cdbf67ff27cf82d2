// Random numbers by counter: each is a function of seed, draw and name alone, the same on every machine and
// thread.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

namespace asperity {

/// Philox-4x32 with 10 rounds [Salmon, Moraes, Dror, Shaw, Parallel random numbers: as easy as 1, 2, 3, SC11
/// 2011].
std::array<std::uint32_t, 4> philox(std::array<std::uint32_t, 4> counter, std::array<std::uint32_t, 2> key);

/// Standard normal quantile of p in (0, 1), to some 1e-16 relative [Wichura 1988, Applied Statistics 37, 477,
/// algorithm AS 241, PPND16].
double normal_quantile(double p);
/// Standard normal distribution function.
double normal_share_below(double g);

/// Uniform in (0, 1), never 0 or 1.
double uniform_draw(std::uint64_t seed, std::uint64_t draw, std::string_view name);
/// Standard normal.
double normal_draw(std::uint64_t seed, std::uint64_t draw, std::string_view name);

} // namespace asperity
