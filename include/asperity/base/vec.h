// Points and directions in the plane and in space [mm, or unit length where said].
#pragma once

#include <glm/geometric.hpp>
#include <glm/vec2.hpp>
#include <glm/vec3.hpp>

namespace asperity {

using Vec2 = glm::dvec2;
using Vec3 = glm::dvec3;

/// z component of a x b; positive when b lies to the left of a.
inline double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }

/// a turned by +90 degrees (to its left).
inline Vec2 left_of(Vec2 a) { return {-a.y, a.x}; }

inline Vec2 plan(Vec3 a) { return {a.x, a.y}; }

} // namespace asperity
