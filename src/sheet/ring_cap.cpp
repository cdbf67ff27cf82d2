// Holes are joined to the outside by bridges, then ears are cut off one by one [Meisters 1975, Polygons have
// ears].
#include "ring_cap.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace asperity {

namespace {

struct Corner {
  Vec2 place{0.0};
  std::size_t index = 0;
};
using Ring = std::vector<Corner>;

double turn(Vec2 a, Vec2 b, Vec2 c) { return cross(b - a, c - b); }

bool is_inside(Vec2 p, Vec2 a, Vec2 b, Vec2 c) {
  return turn(a, b, p) >= 0.0 && turn(b, c, p) >= 0.0 && turn(c, a, p) >= 0.0;
}

/// Do the open stretches p-q and a-b cross?
bool crosses(Vec2 p, Vec2 q, Vec2 a, Vec2 b) {
  const double d1 = turn(p, q, a), d2 = turn(p, q, b), d3 = turn(a, b, p), d4 = turn(a, b, q);
  return d1 * d2 < 0.0 && d3 * d4 < 0.0;
}

bool is_clear(Vec2 p, Vec2 q, const Ring &ring) {
  for (std::size_t k = 0; k < ring.size(); ++k)
    if (crosses(p, q, ring[k].place, ring[(k + 1) % ring.size()].place))
      return false;
  return true;
}

/// The hole's rightmost corner is joined to the nearest corner of the ring that it sees.
bool bridge(Ring &ring, Ring hole, const std::vector<Ring> &others) {
  std::reverse(hole.begin(), hole.end());
  const auto right = std::max_element(hole.begin(), hole.end(),
                                      [](const Corner &a, const Corner &b) { return a.place.x < b.place.x; });
  std::rotate(hole.begin(), right, hole.end());
  const Vec2 from = hole.front().place;
  std::vector<std::size_t> order(ring.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return glm::length(ring[a].place - from) < glm::length(ring[b].place - from);
  });
  for (const std::size_t at : order) {
    const Vec2 to = ring[at].place;
    const bool sees =
        is_clear(from, to, ring) && is_clear(from, to, hole) &&
        std::all_of(others.begin(), others.end(), [&](const Ring &o) { return is_clear(from, to, o); });
    if (!sees)
      continue;
    Ring joined(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(at) + 1);
    joined.insert(joined.end(), hole.begin(), hole.end());
    joined.push_back(hole.front());
    joined.insert(joined.end(), ring.begin() + static_cast<std::ptrdiff_t>(at), ring.end());
    ring = std::move(joined);
    return true;
  }
  return false;
}

bool is_ear(const Ring &ring, std::size_t k) {
  const std::size_t n = ring.size();
  const Vec2 a = ring[(k + n - 1) % n].place, b = ring[k].place, c = ring[(k + 1) % n].place;
  if (!(turn(a, b, c) > 0.0))
    return false;
  const auto is_corner = [&](Vec2 p) { return p == a || p == b || p == c; };
  return std::none_of(ring.begin(), ring.end(), [&](const Corner &corner) {
    return !is_corner(corner.place) && is_inside(corner.place, a, b, c);
  });
}

} // namespace

std::vector<std::array<std::size_t, 3>> ring_cap(const std::vector<Vec2> &outer,
                                                 const std::vector<std::vector<Vec2>> &holes) {
  std::size_t count = 0;
  const auto numbered = [&](const std::vector<Vec2> &points) {
    Ring ring;
    for (const Vec2 p : points)
      ring.push_back({p, count++});
    return ring;
  };
  Ring ring = numbered(outer);
  std::vector<Ring> open;
  for (const std::vector<Vec2> &hole : holes)
    open.push_back(numbered(hole));
  // From the right, so that a bridge meets what is already joined.
  std::sort(open.begin(), open.end(), [](const Ring &a, const Ring &b) {
    const auto right = [](const Ring &r) {
      double most = -std::numeric_limits<double>::infinity();
      for (const Corner &corner : r)
        most = std::max(most, corner.place.x);
      return most;
    };
    return right(a) > right(b);
  });
  while (!open.empty()) {
    const Ring hole = open.front();
    open.erase(open.begin());
    if (hole.size() < 3 || !bridge(ring, hole, open))
      return {};
  }
  std::vector<std::array<std::size_t, 3>> triangles;
  std::size_t at = 0, tries = 0;
  while (ring.size() > 3) {
    if (tries++ > ring.size())
      return {};
    const std::size_t n = ring.size(), k = at % n;
    if (!is_ear(ring, k)) {
      ++at;
      continue;
    }
    triangles.push_back({ring[(k + n - 1) % n].index, ring[k].index, ring[(k + 1) % n].index});
    ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(k));
    tries = 0;
    at = k + 1; // skips one corner, so that ears are taken all round and stay stout
  }
  if (ring.size() == 3)
    triangles.push_back({ring[0].index, ring[1].index, ring[2].index});
  return triangles;
}

} // namespace asperity
