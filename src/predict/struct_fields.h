// The fields of any plain struct as a tuple, found without naming them: what walks over them cannot forget
// one that is added later.
#pragma once

#include <cstddef>
#include <tuple>
#include <utility>

namespace asperity::fields {

/// Stands for a value of any type when fields are counted; never made.
struct Anything {
  std::size_t place;
  template <class T> operator T() const;
};

template <class T, std::size_t... I> consteval bool takes(std::index_sequence<I...>) {
  return requires { T{Anything{I}...}; };
}

inline constexpr std::size_t kMostFields = 24;

/// Fields of an aggregate that has neither bases nor C arrays.
template <class T, std::size_t N = kMostFields> consteval std::size_t count() {
  static_assert(!takes<T>(std::make_index_sequence<kMostFields + 1>{}), "more fields than tie() knows");
  if constexpr (N == 0 || takes<T>(std::make_index_sequence<N>{}))
    return N;
  else
    return count<T, N - 1>();
}

/// References to all of them. A structured binding must spell its names, hence a line for every number.
template <class T> auto tie(const T &whole) {
  constexpr std::size_t kCount = count<T>();
  if constexpr (kCount == 0)
    return std::tuple<>();
  else if constexpr (kCount == 1) {
    const auto &[a] = whole;
    return std::tie(a);
  } else if constexpr (kCount == 2) {
    const auto &[a, b] = whole;
    return std::tie(a, b);
  } else if constexpr (kCount == 3) {
    const auto &[a, b, c] = whole;
    return std::tie(a, b, c);
  } else if constexpr (kCount == 4) {
    const auto &[a, b, c, d] = whole;
    return std::tie(a, b, c, d);
  } else if constexpr (kCount == 5) {
    const auto &[a, b, c, d, e] = whole;
    return std::tie(a, b, c, d, e);
  } else if constexpr (kCount == 6) {
    const auto &[a, b, c, d, e, f] = whole;
    return std::tie(a, b, c, d, e, f);
  } else if constexpr (kCount == 7) {
    const auto &[a, b, c, d, e, f, g] = whole;
    return std::tie(a, b, c, d, e, f, g);
  } else if constexpr (kCount == 8) {
    const auto &[a, b, c, d, e, f, g, h] = whole;
    return std::tie(a, b, c, d, e, f, g, h);
  } else if constexpr (kCount == 9) {
    const auto &[a, b, c, d, e, f, g, h, i] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i);
  } else if constexpr (kCount == 10) {
    const auto &[a, b, c, d, e, f, g, h, i, j] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j);
  } else if constexpr (kCount == 11) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k);
  } else if constexpr (kCount == 12) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l);
  } else if constexpr (kCount == 13) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m);
  } else if constexpr (kCount == 14) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n);
  } else if constexpr (kCount == 15) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o);
  } else if constexpr (kCount == 16) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p);
  } else if constexpr (kCount == 17) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q);
  } else if constexpr (kCount == 18) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r);
  } else if constexpr (kCount == 19) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s);
  } else if constexpr (kCount == 20) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t);
  } else if constexpr (kCount == 21) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u);
  } else if constexpr (kCount == 22) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v);
  } else if constexpr (kCount == 23) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w);
  } else if constexpr (kCount == 24) {
    const auto &[a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w, x] = whole;
    return std::tie(a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s, t, u, v, w, x);
  }
}

} // namespace asperity::fields
