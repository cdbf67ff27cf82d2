// Are two values the same, bit for bit and field by field?
#pragma once

#include "struct_fields.h"

#include "asperity/job/blank.h"
#include "asperity/job/feature.h"
#include "asperity/job/pass.h"
#include "asperity/shape/cutter_profile.h"
#include "asperity/shape/mesh.h"
#include "asperity/shape/outline.h"

#include <array>
#include <bit>
#include <cstdint>
#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

namespace asperity {

template <class T> bool same_bits(const T &a, const T &b);

inline bool same_bits(float a, float b) {
  return std::bit_cast<std::uint32_t>(a) == std::bit_cast<std::uint32_t>(b);
}
inline bool same_bits(double a, double b) {
  return std::bit_cast<std::uint64_t>(a) == std::bit_cast<std::uint64_t>(b);
}
inline bool same_bits(const Vec2 &a, const Vec2 &b) { return same_bits(a.x, b.x) && same_bits(a.y, b.y); }
inline bool same_bits(const Vec3 &a, const Vec3 &b) {
  return same_bits(plan(a), plan(b)) && same_bits(a.z, b.z);
}
inline bool same_bits(const std::string &a, const std::string &b) { return a == b; }
inline bool same_bits(const std::filesystem::path &a, const std::filesystem::path &b) {
  return a.native() == b.native();
}
/// All of an outline follows from its elements.
inline bool same_bits(const Outline &a, const Outline &b) { return same_bits(a.elements(), b.elements()); }
/// Rays follow from the mesh; the copies of one mesh share it. Both must have one.
inline bool same_bits(const MeshRays &a, const MeshRays &b) {
  return &a.mesh() == &b.mesh() || same_bits(a.mesh().triangles, b.mesh().triangles);
}
/// All of a silhouette follows from these four.
inline bool same_bits(const CutterProfile &a, const CutterProfile &b) {
  return same_bits(a.radius_mm(), b.radius_mm()) && same_bits(a.tip_flat_mm(), b.tip_flat_mm()) &&
         same_bits(a.corner_mm(), b.corner_mm()) &&
         same_bits(a.cone_half_angle_rad(), b.cone_half_angle_rad());
}

namespace fields {

template <class T> inline constexpr bool kIsOptional = false;
template <class T> inline constexpr bool kIsOptional<std::optional<T>> = true;
template <class T> inline constexpr bool kIsVariant = false;
template <class... T> inline constexpr bool kIsVariant<std::variant<T...>> = true;
template <class T> inline constexpr bool kIsMap = false;
template <class... T> inline constexpr bool kIsMap<std::map<T...>> = true;
template <class T> inline constexpr bool kIsList = false;
template <class T, class A> inline constexpr bool kIsList<std::vector<T, A>> = true;
template <class T, std::size_t N> inline constexpr bool kIsList<std::array<T, N>> = true;

template <class... A, class... B, std::size_t... I>
bool same_each(const std::tuple<A...> &a, const std::tuple<B...> &b, std::index_sequence<I...>) {
  return (same_bits(std::get<I>(a), std::get<I>(b)) && ...);
}
template <class... A> bool same_each(const std::tuple<A...> &a, const std::tuple<A...> &b) {
  return same_each(a, b, std::index_sequence_for<A...>{});
}

template <class List> bool same_items(const List &a, const List &b) {
  if (a.size() != b.size())
    return false;
  for (std::size_t i = 0; i < a.size(); ++i)
    if (!same_bits(a[i], b[i]))
      return false;
  return true;
}

} // namespace fields

/// More fields than fields::tie() knows; no stage reads passes, the program says it all.
inline bool same_bits(const PlannedPass &, const PlannedPass &) { return false; }
/// Only a mesh blank has a mesh to look at.
inline bool same_bits(const Blank &a, const Blank &b) {
  const auto parts = [](const Blank &blank) {
    const auto &[shape, centre, bottom, top, diameter, size, profile, grown_from, allowance, rounds, mesh,
                 layer, foot, foot_height] = blank;
    return std::tie(shape, centre, bottom, top, diameter, size, profile, grown_from, allowance, rounds, layer,
                    foot, foot_height);
  };
  return fields::same_each(parts(a), parts(b)) && (a.shape != BlankShape::mesh || same_bits(a.mesh, b.mesh));
}
/// Holds a C array, which fields::tie() cannot take apart.
inline bool same_bits(const WallFeature &a, const WallFeature &b) {
  const auto parts = [](const WallFeature &wall) {
    const auto &[name, kind, outline, centre, diameter, width, side, bottom, top, size, finish] = wall;
    return std::tie(name, kind, outline, centre, diameter, width, side, bottom, top, size[0], size[1],
                    finish);
  };
  return fields::same_each(parts(a), parts(b));
}

/// Numbers, lists, choices and plain structs, new fields included; any other class needs a line above.
template <class T> bool same_bits(const T &a, const T &b) {
  if constexpr (std::is_integral_v<T> || std::is_enum_v<T>) {
    return a == b;
  } else if constexpr (fields::kIsOptional<T>) {
    return a.has_value() == b.has_value() && (!a || same_bits(*a, *b));
  } else if constexpr (fields::kIsVariant<T>) {
    return a.index() == b.index() &&
           std::visit(
               [&b](const auto &held) { return same_bits(held, std::get<std::decay_t<decltype(held)>>(b)); },
               a);
  } else if constexpr (fields::kIsMap<T>) {
    return a == b;
  } else if constexpr (fields::kIsList<T>) {
    return fields::same_items(a, b);
  } else {
    static_assert(std::is_aggregate_v<T>, "say how two of these are compared");
    return fields::same_each(fields::tie(a), fields::tie(b));
  }
}

} // namespace asperity
