#include "engagement.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

constexpr int kAngles = 36;       // 5 degree steps, crossings refined
constexpr double kSkin_mm = 1e-3; // thinner than this the linear reading of the stock cannot tell contact

/// (sin, cos) of the probing angles, phi = 0 to pi.
const std::array<Vec2, kAngles + 1> kDirections = [] {
  std::array<Vec2, kAngles + 1> directions;
  for (int i = 0; i <= kAngles; ++i)
    directions[static_cast<std::size_t>(i)] = {std::sin(kPi * i / kAngles), std::cos(kPi * i / kAngles)};
  return directions;
}();

/// Depth of the stock along the front half of one circle.
class FrontHalf {
public:
  FrontHalf(const Stock &stock, std::size_t layer, Vec2 centre, double radius_mm, Vec2 feed)
      : stock_(stock), layer_(layer), centre_(centre), radius_mm_(radius_mm), feed_(feed),
        left_(left_of(feed)), step_mm_(radius_mm * kPi / kAngles) {}

  Vec2 point(double phi) const {
    return centre_ + radius_mm_ * (std::sin(phi) * feed_ + std::cos(phi) * left_);
  }
  double depth(double phi) const { return stock_.depth_mm(layer_, point(phi)) - kSkin_mm; }
  double depth_at_step(int i) const {
    const Vec2 direction = kDirections[static_cast<std::size_t>(i)];
    return stock_.depth_mm(layer_, centre_ + radius_mm_ * (direction.x * feed_ + direction.y * left_)) -
           kSkin_mm;
  }

  /// How many steps on from one of this depth are surely in air.
  int steps_in_air(double depth) const {
    const double air_mm = stock_.sure_air_mm(depth + kSkin_mm);
    return air_mm > step_mm_ ? static_cast<int>(std::min(air_mm / step_mm_, double{kAngles})) : 0;
  }

  /// Angle between a and b (depths of opposite sign) where the stock's side is crossed.
  double crossing(double a, double da, double b, double db) const {
    for (int i = 0; i < 5; ++i) {
      const double m = a + (b - a) * std::clamp(da / (da - db), 0.05, 0.95);
      const double dm = depth(m);
      if ((dm > 0.0) == (da > 0.0)) {
        a = m;
        da = dm;
      } else {
        b = m;
        db = dm;
      }
    }
    return a + (b - a) * da / (da - db);
  }

private:
  const Stock &stock_;
  std::size_t layer_;
  Vec2 centre_;
  double radius_mm_;
  Vec2 feed_, left_;
  double step_mm_; ///< along the circle
};

/// The immersed arcs of the front half: at most the first and the last one.
class ImmersedArcs {
public:
  explicit ImmersedArcs(const FrontHalf &front) : front_(front) {}

  /// Steps that lie in air for certain are not looked at; where the side is crossed both steps beside it are.
  int find(Immersion (&arcs)[2]) {
    double depth = front_.depth_at_step(0);
    if (depth > 0.0)
      begin_ = 0.0;
    for (int i = 0; i < kAngles;) {
      const int skipped = depth > 0.0 ? 0 : std::min(front_.steps_in_air(depth), kAngles - i);
      if (skipped > 0)
        i += skipped;
      if (i == kAngles)
        break;
      const double next_depth = front_.depth_at_step(i + 1);
      if ((depth > 0.0) != (next_depth > 0.0))
        cross(i, skipped > 0 ? front_.depth_at_step(i) : depth, next_depth, arcs);
      depth = next_depth;
      ++i;
    }
    if (begin_ >= 0.0)
      close(kPi, arcs);
    return count_;
  }

private:
  /// Between step i and the next one.
  void cross(int i, double depth, double next_depth, Immersion (&arcs)[2]) {
    const double phi = kPi * i / kAngles, next = kPi * (i + 1) / kAngles;
    const double at = front_.crossing(phi, depth, next, next_depth);
    if (next_depth > 0.0)
      begin_ = at;
    else
      close(at, arcs);
  }
  void close(double end, Immersion (&arcs)[2]) {
    arcs[std::min(count_, 1)] = {begin_, end};
    count_ = std::min(count_ + 1, 2);
    begin_ = -1.0;
  }

  const FrontHalf &front_;
  int count_ = 0;
  double begin_ = -1.0;
};

void add_slice(Contact &contact, const ImmersedSlice &slice, double radius_mm) {
  const double length = slice.z_high_mm - slice.z_low_mm;
  contact.radial_depth_mm +=
      length * radius_mm * (std::cos(slice.arc.entry_rad) - std::cos(slice.arc.exit_rad));
  if (slice.arc.span_rad() > contact.widest.span_rad())
    contact.widest = slice.arc;
  contact.makes_left_wall |= slice.arc.entry_rad <= 0.0;
  contact.makes_right_wall |= slice.arc.exit_rad >= kPi;
  contact.slices.push_back(slice);
}

} // namespace

Vec2 offset_at(const std::array<Vec2, kBendNodes> &nodes, const SweptCutter &cutter, double height_mm) {
  const auto &heights = cutter.node_height_mm;
  if (height_mm <= heights.front())
    return nodes.front();
  for (std::size_t i = 1; i < kBendNodes; ++i) {
    if (height_mm < heights[i]) {
      const double share = (height_mm - heights[i - 1]) / (heights[i] - heights[i - 1]);
      return nodes[i - 1] + share * (nodes[i] - nodes[i - 1]);
    }
  }
  return nodes.back();
}

Contact contact_of_moving(const Stock &stock, const SweptCutter &cutter, Vec3 tip_mm, Vec2 feed,
                          const std::array<Vec2, kBendNodes> &nodes) {
  Contact contact;
  const double ahead_mm = 0.75 * stock.grid().cell_mm; // so that the height read is not the one just cut
  for (std::size_t l = 0; l < stock.layers(); ++l) {
    // The part of the layer beside the flutes.
    const double low = std::max(stock.bottom_mm(l), tip_mm.z);
    double high = std::min(stock.top_mm(l), tip_mm.z + cutter.flute_length_mm);
    if (high - low < 1e-9)
      continue;
    const double height = 0.5 * (low + high) - tip_mm.z;
    const double radius = cutter.profile.radius_at(height);
    if (radius <= 0.0)
      continue;
    const FrontHalf front(stock, l, plan(tip_mm) + offset_at(nodes, cutter, height), radius, feed);
    Immersion arcs[2];
    const int count = ImmersedArcs(front).find(arcs);
    double longest = 0.0;
    for (int i = 0; i < count; ++i) {
      // An earlier pass may have taken the layer's upper part.
      const Vec2 middle = front.point(0.5 * (arcs[i].entry_rad + arcs[i].exit_rad));
      const double surface = stock.surface_mm(middle + ahead_mm * feed);
      const double slice_high = std::isfinite(surface) ? std::min(high, surface) : high;
      if (slice_high - low < 1e-6)
        continue;
      add_slice(contact, {low - tip_mm.z, slice_high - tip_mm.z, arcs[i]}, radius);
      longest = std::max(longest, slice_high - low);
    }
    contact.axial_depth_mm += longest;
  }
  if (contact.axial_depth_mm > 0.0)
    contact.radial_depth_mm /= contact.axial_depth_mm;
  return contact;
}

Vec3 plunge_force_N(const Stock &stock, const SweptCutter &cutter, Vec3 tip_mm, const ForceCoefficients &k,
                    int flutes, double axial_feed_per_tooth_mm) {
  // The layer the end edges are about to cut.
  std::size_t l = 0;
  while (l + 1 < stock.layers() && stock.top_mm(l) <= tip_mm.z + 1e-9)
    ++l;
  if (stock.top_mm(l) <= tip_mm.z || stock.bottom_mm(l) > tip_mm.z + 1e-6)
    return Vec3(0.0);
  const double radius = cutter.profile.radius_mm();
  const double tangential = k.ktc * axial_feed_per_tooth_mm + k.kte,
               thrust = k.krc * axial_feed_per_tooth_mm + k.kre;
  Vec3 force(0.0);
  for (int i = 0; i < 2 * kAngles; ++i) {
    const double phi = kPi * (i + 0.5) / kAngles;
    const Vec2 out(std::sin(phi), std::cos(phi));
    // Clockwise tooth at `out` moves along (cos, -sin); the stock pushes back.
    const double covered = std::clamp(stock.depth_mm(l, plan(tip_mm) + radius * out), 0.0, radius);
    force +=
        Vec3(-std::cos(phi) * tangential * covered, std::sin(phi) * tangential * covered, -thrust * covered);
  }
  return force * (static_cast<double>(flutes) / (2.0 * kAngles));
}

} // namespace asperity
