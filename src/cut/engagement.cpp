#include "engagement.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

namespace asperity {

namespace {

constexpr int kAngles = 36;       // 5 degree steps, crossings refined
constexpr double kSkin_mm = 1e-3; // thinner than this the linear reading of the stock cannot tell contact

/// The probing angles seen from the cutter's axis, x along left, y along the feed: phi = 0 to pi.
const std::array<Vec2, kAngles + 1> kDirections = [] {
  std::array<Vec2, kAngles + 1> directions;
  for (int i = 0; i <= kAngles; ++i)
    directions[static_cast<std::size_t>(i)] = {std::sin(kPi * i / kAngles), std::cos(kPi * i / kAngles)};
  return directions;
}();

/// The same in the part frame; the rest stands at the centre.
Stock::Places front_places(Vec2 feed) {
  static_assert(kAngles < Stock::kPlaces);
  const Vec2 left = left_of(feed);
  Stock::Places places;
  for (std::size_t i = 0; i <= kAngles; ++i) {
    const Vec2 place = kDirections[i].x * feed + kDirections[i].y * left;
    places.x[i] = place.x, places.y[i] = place.y;
  }
  return places;
}

/// Depth of the stock along the front half of one circle.
class FrontHalf {
public:
  FrontHalf(const Stock &stock, std::size_t layer, Vec2 centre, double radius_mm, Vec2 feed)
      : stock_(stock), layer_(layer), centre_(centre), radius_mm_(radius_mm), feed_(feed),
        left_(left_of(feed)) {}

  Vec2 point(double phi) const {
    return centre_ + radius_mm_ * (std::sin(phi) * feed_ + std::cos(phi) * left_);
  }

  /// The immersed arcs: at most the first and the last one.
  int find_arcs(const Stock::Places &places, Immersion (&arcs)[2]) const {
    Stock::Depths depths;
    stock_.depths_mm(layer_, centre_, radius_mm_, places, depths);
    const std::uint64_t in_stock = steps_in_stock(depths);
    int count = 0;
    double begin = in_stock & 1 ? 0.0 : -1.0;
    const auto close = [&](double end) {
      arcs[std::min(count, 1)] = {begin, end};
      count = std::min(count + 1, 2);
      begin = -1.0;
    };
    constexpr std::uint64_t kBetween = (std::uint64_t{1} << kAngles) - 1;
    for (std::uint64_t sides = (in_stock ^ (in_stock >> 1)) & kBetween; sides != 0; sides &= sides - 1) {
      const auto i = static_cast<std::size_t>(std::countr_zero(sides));
      const double at = crossing(i, depths[i] - kSkin_mm, depths[i + 1] - kSkin_mm);
      if (begin < 0.0)
        begin = at;
      else
        close(at);
    }
    if (begin >= 0.0)
      close(kPi);
    return count;
  }

private:
  double depth(double phi) const { return stock_.depth_mm(layer_, point(phi)) - kSkin_mm; }

  /// A bit for each step.
  static std::uint64_t steps_in_stock(const Stock::Depths &depths) {
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i <= kAngles; ++i)
      bits |= std::uint64_t{depths[i] - kSkin_mm > 0.0} << i;
    return bits;
  }

  /// Angle between step i and the next one (depths of opposite sign) where the stock's side is crossed.
  double crossing(std::size_t i, double da, double db) const {
    double a = kPi * static_cast<double>(i) / kAngles, b = kPi * static_cast<double>(i + 1) / kAngles;
    for (int round = 0; round < 5; ++round) {
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

  const Stock &stock_;
  std::size_t layer_;
  Vec2 centre_;
  double radius_mm_;
  Vec2 feed_, left_;
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
  const Stock::Places places = front_places(feed);
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
    const int count = front.find_arcs(places, arcs);
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
