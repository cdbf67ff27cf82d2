// Contact found in vectors, and found again for the next bending, against plane geometry and a fresh search.
#include "engagement.h"
#include "walk_scene.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

using namespace asperity;
using test::bar_job;

namespace {

constexpr double kCell_mm = 0.1;

SweptCutter six_millimetre() {
  SweptCutter cutter;
  cutter.profile = CutterProfile::flat(3.0);
  cutter.flute_length_mm = 20.0;
  cutter.node_height_mm = {0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 20.0};
  return cutter;
}

/// All nodes bent sideways by y.
BendNodes bent(double y) {
  BendNodes nodes;
  nodes.fill(Vec2(0.0, y));
  return nodes;
}

void expect_same(const Contact &a, const Contact &b) {
  ASSERT_EQ(a.slices.size(), b.slices.size());
  for (std::size_t s = 0; s < a.slices.size(); ++s) {
    EXPECT_EQ(a.slices[s].z_low_mm, b.slices[s].z_low_mm);
    EXPECT_EQ(a.slices[s].arc.entry_rad, b.slices[s].arc.entry_rad);
    EXPECT_EQ(a.slices[s].arc.exit_rad, b.slices[s].arc.exit_rad);
  }
  EXPECT_EQ(a.radial_depth_mm, b.radial_depth_mm);
}

} // namespace

TEST(ContactSearch, StraightSideIsCutOverTheArcOfItsDepth) {
  const Job job = bar_job(0.0);
  const Stock stock(job.blank, layer_bounds(0, 10, {5.0}, 1.0, 20), kCell_mm);
  const double side_y = job.blank.high_mm().y;
  // False position's five steps on a straight side read without error, plus the skin that does not count.
  constexpr double kSkinAtMost_mm = 1.5 * kSkin_mm;
  ContactSearch search(stock);
  for (const double depth_mm : {0.05, 0.3, 1.0, 2.9}) {
    search.begin({1.0, 0.0}); // the stock lies to the right
    const double y = side_y + 3.0 - depth_mm;
    const Contact &contact = search.find(six_millimetre(), {30.0, y, 5.0}, bent(0.0));
    ASSERT_TRUE(contact.any()) << depth_mm;
    EXPECT_TRUE(contact.makes_right_wall);
    EXPECT_FALSE(contact.makes_left_wall);
    EXPECT_NEAR(contact.radial_depth_mm, depth_mm, kSkinAtMost_mm);
    EXPECT_NEAR(contact.axial_depth_mm, 5.0, 1e-9);
  }
}

TEST(ContactSearch, NextBendingFindsWhatAFreshSearchFinds) {
  const Job job = bar_job(0.0);
  Stock stock(job.blank, layer_bounds(0, 10, {5.0}, 1.0, 20), kCell_mm);
  // The upper half has been cut to the same side before, bent away by a few micrometres.
  const double y = job.blank.high_mm().y + 2.5;
  stock.carve({{-10.0, y + 0.004}, {0, 0.0003}, 7.0}, {{70.0, y + 0.002}, {0, 0.0003}, 7.0},
              CutterProfile::flat(3.0), 20.0);
  const SweptCutter cutter = six_millimetre();
  for (const double x : {10.0, 30.03, 41.7}) {
    ContactSearch search(stock);
    search.begin({1.0, 0.0});
    for (const double bend_mm : {0.0, 0.006, 0.0061, 0.003, 0.0030002, -0.002, 0.2, 3.0, 0.0}) {
      const Contact again = search.find(cutter, {x, y, 5.0}, bent(bend_mm));
      ContactSearch fresh(stock);
      fresh.begin({1.0, 0.0});
      expect_same(again, fresh.find(cutter, {x, y, 5.0}, bent(bend_mm)));
    }
  }
}

TEST(FrontCrossing, ManyAtATimeAreThoseFoundOneByOne) {
  const Job job = bar_job(0.0);
  const Stock stock(job.blank, layer_bounds(0, 10, {5.0}, 1.0, 20), kCell_mm);
  const Stock::Places marks = front_marks({0.6, 0.8});
  std::vector<Crossing> crossings;
  for (double x = 2.0; x < 58.0; x += 2.3)
    for (int m = 0; m < kMarksPerPi; ++m) {
      const FrontCircle circle{1, {x, job.blank.high_mm().y + 1.0}, 3.0};
      const auto depth_mm = [&](int at) {
        const auto i = static_cast<std::size_t>(at);
        return stock.depth_mm(1, circle.centre_mm + 3.0 * Vec2(marks.x[i], marks.y[i])) - kSkin_mm;
      };
      if ((depth_mm(m) > 0.0) != (depth_mm(m + 1) > 0.0))
        crossings.push_back({circle, m, depth_mm(m), depth_mm(m + 1)});
    }
  ASSERT_GT(crossings.size(), 2 * kEight);
  std::vector<Turn> together, alone;
  find_crossings(stock, marks, crossings, together);
  ASSERT_EQ(together.size(), crossings.size());
  constexpr double kClosedIn_mm = 1e-5; // five steps from 5 degrees
  for (std::size_t i = 0; i < crossings.size(); ++i) {
    find_crossings(stock, marks, {crossings[i]}, alone);
    EXPECT_EQ(together[i].rad, alone[0].rad);
    const Turn &at = together[i];
    const Vec2 feed(0.6, 0.8), out = at.sin * feed + at.cos * left_of(feed);
    EXPECT_NEAR(stock.depth_mm(1, crossings[i].circle.centre_mm + 3.0 * out), kSkin_mm, kClosedIn_mm);
  }
}
