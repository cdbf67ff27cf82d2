#include "front_crossing.h"

#include <algorithm>

namespace asperity {

namespace {

constexpr int kRounds = 5;

/// Eight crossings being closed in on: angles from the mark, depths at both ends.
struct alignas(64) Closing {
  Eight a, b, depth_a, depth_b, middle;
  Eight mark_x, mark_y, centre_x, centre_y, radius;
};

Closing closing_of(const Crossing *crossings, std::size_t count, const Stock::Places &marks,
                   std::array<std::size_t, kEight> &layers) {
  Closing c;
  for (std::size_t i = 0; i < kEight; ++i) {
    const Crossing &of = crossings[std::min(i, count - 1)]; // the last one fills up
    const auto mark_index = static_cast<std::size_t>(of.mark);
    c.a[i] = 0.0;
    c.b[i] = mark(of.mark + 1).rad - mark(of.mark).rad;
    c.depth_a[i] = of.depth_mm, c.depth_b[i] = of.next_depth_mm;
    c.mark_x[i] = marks.x[mark_index], c.mark_y[i] = marks.y[mark_index];
    c.centre_x[i] = of.circle.centre_mm.x, c.centre_y[i] = of.circle.centre_mm.y;
    c.radius[i] = of.circle.radius_mm;
    layers[i] = of.circle.layer;
  }
  return c;
}

/// Where to look next, as far from either end as keeps both closing in.
ASPERITY_WIDE void look_between(Closing &c, Eight &x_mm, Eight &y_mm) {
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double share = c.depth_a[i] / (c.depth_a[i] - c.depth_b[i]);
    const double m = c.a[i] + (c.b[i] - c.a[i]) * std::min(std::max(share, 0.05), 0.95);
    const Turn on = small_turn(m);
    c.middle[i] = m;
    // Clockwise from the mark.
    x_mm[i] = c.centre_x[i] + c.radius[i] * (c.mark_x[i] * on.cos + c.mark_y[i] * on.sin);
    y_mm[i] = c.centre_y[i] + c.radius[i] * (c.mark_y[i] * on.cos - c.mark_x[i] * on.sin);
  }
}

ASPERITY_WIDE void close_in(Closing &c, const Eight &depths_mm) {
#pragma omp simd
  for (std::size_t i = 0; i < kEight; ++i) {
    const double depth = depths_mm[i] - kSkin_mm, m = c.middle[i];
    const double at_a = c.depth_a[i], at_b = c.depth_b[i], a = c.a[i], b = c.b[i];
    const bool is_like_a = depth > 0.0 ? at_a > 0.0 : !(at_a > 0.0);
    c.a[i] = is_like_a ? m : a;
    c.depth_a[i] = is_like_a ? depth : at_a;
    c.b[i] = is_like_a ? b : m;
    c.depth_b[i] = is_like_a ? at_b : depth;
  }
}

} // namespace

Stock::Places front_marks(Vec2 feed) {
  static_assert(kMarksPerPi < Stock::kPlaces);
  Stock::Places places;
  const Vec2 left = left_of(feed);
  for (std::size_t i = 0; i < Stock::kPlaces; ++i) {
    const Turn &at = mark(std::min(static_cast<int>(i), kMarksPerPi)); // the last one fills up
    const Vec2 place = at.sin * feed + at.cos * left;
    places.x[i] = place.x, places.y[i] = place.y;
  }
  return places;
}

void find_crossings(const Stock &stock, const Stock::Places &marks, const std::vector<Crossing> &crossings,
                    std::vector<Turn> &angles) {
  angles.clear();
  std::array<std::size_t, kEight> layers;
  Eight x_mm, y_mm, depths_mm;
  for (std::size_t first = 0; first < crossings.size(); first += kEight) {
    const std::size_t count = std::min(crossings.size() - first, kEight);
    Closing c = closing_of(crossings.data() + first, count, marks, layers);
    for (int round = 0; round < kRounds; ++round) {
      look_between(c, x_mm, y_mm);
      stock.depths_mm(layers, x_mm, y_mm, depths_mm);
      close_in(c, depths_mm);
    }
    for (std::size_t i = 0; i < count; ++i) {
      const double on = c.a[i] + (c.b[i] - c.a[i]) * c.depth_a[i] / (c.depth_a[i] - c.depth_b[i]);
      angles.push_back(sum_of(mark(crossings[first + i].mark), small_turn(on)));
    }
  }
}

} // namespace asperity
