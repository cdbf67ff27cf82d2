#include "engagement.h"

#include "asperity/base/units.h"
#include "asperity/base/wide_vectors.h"

#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <cstdint>

namespace asperity {

namespace {

/// Depths run straight between grid points and change by no more than these are apart where one of them is in
/// air; on a cell's slant and beside what no stroke reached by a little more. So around a place in air all
/// that is nearer than its depth over this lies in air too.
constexpr double kSteepest = 4.0;

/// What the marks of one circle show.
struct Look {
  std::uint64_t in_stock = 0; ///< a bit for each mark
  double highest_mm = 0;      ///< depth of the deepest in stock, or of the one nearest to it
};

/// None for the places that only fill up.
constexpr std::array<std::uint64_t, Stock::kPlaces> kBits = [] {
  std::array<std::uint64_t, Stock::kPlaces> bits{};
  for (std::size_t i = 0; i <= kMarksPerPi; ++i)
    bits[i] = std::uint64_t{1} << i;
  return bits;
}();

ASPERITY_WIDE void look_over(const Stock::Depths &depths, Look &look) {
  std::uint64_t in_stock = 0;
  double highest = depths[0];
#pragma omp simd reduction(| : in_stock) reduction(max : highest)
  for (std::size_t i = 0; i < Stock::kPlaces; ++i) {
    const double depth = depths[i];
    in_stock |= depth - kSkin_mm > 0.0 ? kBits[i] : 0;
    highest = depth > highest ? depth : highest;
  }
  look = {in_stock, highest};
}

/// Marks between which and the next one the stock's side is crossed.
std::uint64_t crossed(std::uint64_t in_stock) {
  constexpr std::uint64_t kBetween = (std::uint64_t{1} << kMarksPerPi) - 1;
  return (in_stock ^ (in_stock >> 1)) & kBetween;
}

/// Adds the marks that lie no deeper in stock or air than so much.
ASPERITY_WIDE void find_thin(const Stock::Depths &depths, double thickness_mm, std::uint64_t &thin) {
  std::uint64_t found = 0;
#pragma omp simd reduction(| : found)
  for (std::size_t i = 0; i < Stock::kPlaces; ++i) {
    const double depth = depths[i] - kSkin_mm;
    found |= (depth < 0.0 ? -depth : depth) <= thickness_mm ? kBits[i] : 0;
  }
  thin |= found;
}

} // namespace

Vec2 offset_at(const BendNodes &nodes, const SweptCutter &cutter, double height_mm) {
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

void ContactSearch::begin(Vec2 feed) {
  feed_ = feed;
  marks_ = front_marks(feed);
  seen_.resize(stock_.layers());
  for (Seen &seen : seen_)
    seen.room_mm = 0.0, seen.is_new = true;
}

const Contact &ContactSearch::find(const SweptCutter &cutter, Vec3 tip_mm, const BendNodes &nodes) {
  fronts_.clear();
  crossings_.clear();
  for (std::size_t l = 0; l < stock_.layers(); ++l) {
    // The part of the layer beside the flutes.
    const double low = std::max(stock_.bottom_mm(l), tip_mm.z);
    const double high = std::min(stock_.top_mm(l), tip_mm.z + cutter.flute_length_mm);
    if (high - low < 1e-9)
      continue;
    const double height = 0.5 * (low + high) - tip_mm.z;
    const double radius = cutter.profile.radius_at(height);
    if (radius > 0.0)
      look_at({l, plan(tip_mm) + offset_at(nodes, cutter, height), radius}, low, high);
  }
  find_crossings(stock_, marks_, crossings_, angles_);

  contact_.clear();
  const Turn *crossing = angles_.data();
  for (const Front &front : fronts_)
    add_slices(front, tip_mm.z, crossing);
  if (contact_.axial_depth_mm > 0.0)
    contact_.radial_depth_mm /= contact_.axial_depth_mm;
  return contact_;
}

void ContactSearch::look_at(const FrontCircle &circle, double low_mm, double high_mm) {
  Seen &seen = seen_[circle.layer];
  const double shift_mm =
      glm::distance(circle.centre_mm, seen.centre_mm) + std::abs(circle.radius_mm - seen.radius_mm);
  if (shift_mm < seen.room_mm)
    return;
  const bool again = !seen.is_new && see_again(circle, shift_mm, seen);
  if (!again)
    see(circle, seen);
  if (seen.in_stock == 0)
    return;
  const Stock::Depths &depths = again ? again_mm_ : seen.depths_mm;
  Front front{circle, low_mm, high_mm, (seen.in_stock & 1) != 0, 0};
  for (std::uint64_t sides = crossed(seen.in_stock); sides != 0; sides &= sides - 1) {
    const auto i = static_cast<std::size_t>(std::countr_zero(sides));
    crossings_.push_back({circle, static_cast<int>(i), depths[i] - kSkin_mm, depths[i + 1] - kSkin_mm});
    ++front.crossings;
  }
  fronts_.push_back(front);
}

void ContactSearch::see(const FrontCircle &circle, Seen &seen) {
  stock_.depths_mm(circle.layer, circle.centre_mm, circle.radius_mm, marks_, seen.depths_mm);
  Look look;
  look_over(seen.depths_mm, look);
  seen.centre_mm = circle.centre_mm;
  seen.radius_mm = circle.radius_mm;
  seen.is_new = false;
  seen.in_stock = look.in_stock;
  const double depth_in_air_mm = std::min(kSkin_mm - look.highest_mm, beyond_grid_mm());
  seen.room_mm = look.in_stock == 0 ? depth_in_air_mm / kSteepest : 0.0;
}

bool ContactSearch::see_again(const FrontCircle &circle, double shift_mm, const Seen &seen) {
  if (kSteepest * shift_mm > beyond_grid_mm())
    return false;
  const std::uint64_t sides = crossed(seen.in_stock);
  std::uint64_t unsure = sides | sides << 1;
  find_thin(seen.depths_mm, kSteepest * shift_mm, unsure);
  const int count = std::popcount(unsure);
  if (count == 0 || count > static_cast<int>(kEight))
    return count == 0;
  std::array<std::size_t, kEight> marks{}, layers;
  layers.fill(circle.layer);
  Eight x_mm, y_mm, depths_mm;
  for (std::size_t k = 0; k < kEight; ++k, unsure &= unsure - 1) {
    const std::size_t i = unsure != 0 ? static_cast<std::size_t>(std::countr_zero(unsure)) : marks[0];
    marks[k] = i;
    x_mm[k] = circle.centre_mm.x + circle.radius_mm * marks_.x[i];
    y_mm[k] = circle.centre_mm.y + circle.radius_mm * marks_.y[i];
  }
  stock_.depths_mm(layers, x_mm, y_mm, depths_mm);
  for (std::size_t k = 0; k < kEight; ++k)
    if ((depths_mm[k] - kSkin_mm > 0.0) != ((seen.in_stock >> marks[k] & 1) != 0))
      return false;
  for (std::size_t k = 0; k < kEight; ++k)
    again_mm_[marks[k]] = depths_mm[k];
  return true;
}

void ContactSearch::add_slices(const Front &front, double tip_mm, const Turn *&crossing) {
  // At most the first and the last of the immersed arcs.
  struct Arc {
    Turn entry, exit;
  } arcs[2];
  int count = 0;
  bool is_in_stock = front.begins_in_stock;
  Turn entry = mark(0);
  const auto close = [&](const Turn &exit) {
    arcs[std::min(count, 1)] = {entry, exit};
    count = std::min(count + 1, 2);
  };
  for (int i = 0; i < front.crossings; ++i, ++crossing) {
    if (is_in_stock)
      close(*crossing);
    else
      entry = *crossing;
    is_in_stock = !is_in_stock;
  }
  if (is_in_stock)
    close(mark(kMarksPerPi));

  double longest = 0.0;
  for (int i = 0; i < count; ++i)
    longest = std::max(longest, add_slice(front, tip_mm, arcs[i].entry, arcs[i].exit));
  contact_.axial_depth_mm += longest;
}

double ContactSearch::add_slice(const Front &front, double tip_mm, const Turn &entry, const Turn &exit) {
  // An earlier pass may have taken the layer's upper part.
  const double ahead_mm = 0.75 * stock_.grid().cell_mm; // so that the height read is not the one just cut
  const FrontCircle &circle = front.circle;
  const Turn middle = turn_at(0.5 * (entry.rad + exit.rad));
  const Vec2 at = circle.centre_mm + circle.radius_mm * (middle.sin * feed_ + middle.cos * left_of(feed_));
  const double surface = stock_.surface_mm(at + ahead_mm * feed_);
  const double high = std::isfinite(surface) ? std::min(front.high_mm, surface) : front.high_mm;
  const double length = high - front.low_mm;
  if (length < 1e-6)
    return 0.0;
  const ImmersedSlice slice{front.low_mm - tip_mm, high - tip_mm, {entry.rad, exit.rad}};
  contact_.radial_depth_mm += length * circle.radius_mm * (entry.cos - exit.cos);
  if (slice.arc.span_rad() > contact_.widest.span_rad())
    contact_.widest = slice.arc;
  contact_.makes_left_wall |= slice.arc.entry_rad <= 0.0;
  contact_.makes_right_wall |= slice.arc.exit_rad >= kPi;
  contact_.slices.push_back(slice);
  return length;
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
  for (int i = 0; i < 2 * kMarksPerPi; ++i) {
    const double phi = kPi * (i + 0.5) / kMarksPerPi;
    const Vec2 out(std::sin(phi), std::cos(phi));
    // Clockwise tooth at `out` moves along (cos, -sin); the stock pushes back.
    const double covered = std::clamp(stock.depth_mm(l, plan(tip_mm) + radius * out), 0.0, radius);
    force +=
        Vec3(-std::cos(phi) * tangential * covered, std::sin(phi) * tangential * covered, -thrust * covered);
  }
  return force * (static_cast<double>(flutes) / (2.0 * kMarksPerPi));
}

} // namespace asperity
