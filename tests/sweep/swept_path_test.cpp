// What a path packs away comes out again: curves bit for bit, offsets within a hundredth of a nanometre, and
// in little room.
#include "asperity/base/units.h"
#include "asperity/sweep/swept_path.h"

#include <gtest/gtest.h>

#include <random>
#include <utility>

namespace asperity {
namespace {

/// Half of the 0.01 nm that offsets are multiples of, and the last digit of a double of 1 mm.
constexpr double kRounded_mm = 0.5e-8 + 1e-15;

AxisOffset random_offset(std::mt19937 &random, double most_mm) {
  std::uniform_real_distribution<double> draw(-most_mm, most_mm);
  AxisOffset offset;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    offset.left[i] = {draw(random), draw(random)};
    offset.right[i] = {draw(random), draw(random)};
  }
  offset.axial_mm = draw(random);
  return offset;
}

double largest_change_mm(const AxisOffset &a, const AxisOffset &b) {
  double most = std::abs(a.axial_mm - b.axial_mm);
  for (std::size_t i = 0; i < kBendNodes; ++i)
    for (const int axis : {0, 1})
      most = std::max(
          {most, std::abs(a.left[i][axis] - b.left[i][axis]), std::abs(a.right[i][axis] - b.right[i][axis])});
  return most;
}

std::size_t bytes_of(const SweptPath &path) {
  return path.pieces.size() * sizeof(SweptPiece) + path.offsets.size() * sizeof(PackedOffset) +
         path.arcs.size() * sizeof(Curve);
}

TEST(SweptPath, OffsetsUpToAMillimetreAreKeptWithinAHundredthOfANanometre) {
  std::mt19937 random(3);
  double worst = 0;
  for (int i = 0; i < 10000; ++i) {
    const AxisOffset offset = random_offset(random, 1.0);
    worst = std::max(worst, largest_change_mm(PackedOffset::of(offset).unpacked(), offset));
  }
  EXPECT_LE(worst, kRounded_mm);
  EXPECT_GE(worst, 0.9 * kRounded_mm) << "the limit is not the right one";
}

TEST(SweptPath, DecimalOffsetsAreKeptExactly) {
  AxisOffset offset;
  offset.left[3] = {0.025, -0.00012345};
  offset.axial_mm = 0.3;
  EXPECT_EQ(largest_change_mm(PackedOffset::of(offset).unpacked(), offset), 0.0);
}

TEST(SweptPath, AnAbsurdOffsetStopsAtTheLargestThatIsKept) {
  AxisOffset offset;
  offset.right[0] = {1e6, -1e6};
  EXPECT_NEAR(PackedOffset::of(offset).right(0).x, 21.47483647, 1e-12);
  EXPECT_NEAR(PackedOffset::of(offset).right(0).y, -21.47483647, 1e-12);
}

TEST(SweptPath, TheBoundInPlanHoldsEveryNode) {
  std::mt19937 random(5);
  for (int i = 0; i < 1000; ++i) {
    const PackedOffset packed = PackedOffset::of(random_offset(random, 0.1));
    double most = 0;
    for (std::size_t node = 0; node < kBendNodes; ++node)
      most = std::max({most, glm::length(packed.left(node)), glm::length(packed.right(node))});
    EXPECT_GE(packed.plan_bound_mm(), most);
    EXPECT_LE(packed.plan_bound_mm(), 2.0 * most);
    EXPECT_NEAR(packed.longest_mm(), most, kRounded_mm * std::sqrt(2.0));
  }
}

TEST(SweptPath, PortionsOfALineAndOfAnArcComeOutAsTheCurveGivesThem) {
  const Curve curves[] = {Curve::line({1, 2, 3}, {4.1, 5.7, 3.3}),
                          Curve::plan_arc({10, 0, 1}, {0, 10, 2}, {0, 0}, 0.5 * kPi)};
  SweptPath path;
  for (const Curve &curve : curves)
    for (int i = 0; i < 7; ++i)
      path.add({curve, {}, {}, 0, 0, i > 0}, i / 7.0, (i + 1) / 7.0);
  for (std::size_t i = 0; i < path.pieces.size(); ++i) {
    const double part = static_cast<double>(i % 7);
    EXPECT_EQ(path.curve(path.pieces[i]), curves[i / 7].portion(part / 7.0, (part + 1) / 7.0));
  }
  EXPECT_EQ(path.arcs.size(), 1u) << "portions of one arc share it";
}

TEST(SweptPath, JoinedPiecesShareTheirOffsetAndTakeAtMost250BytesEach) {
  std::mt19937 random(7);
  SweptPath path;
  AxisOffset at = random_offset(random, 0.02);
  for (int i = 0; i < 1000; ++i) {
    const AxisOffset next = random_offset(random, 0.02);
    path.add({Curve::line({i, 0, 0}, {i + 1, 0, 0}), at, next, 0, 0, i > 0});
    at = next;
  }
  EXPECT_EQ(path.offsets.size(), 1001u);
  EXPECT_LE(bytes_of(path), 250u * path.pieces.size());
}

TEST(SweptPath, UnbentPiecesShareOneOffsetAndTakeAtMost100BytesEach) {
  SweptPath path;
  for (int i = 0; i < 1000; ++i)
    path.add({Curve::line({i, 0, 0}, {i + 1, 0, 0}), {}, {}, 0, 0, i > 0});
  EXPECT_EQ(path.offsets.size(), 1u);
  EXPECT_LE(bytes_of(path), 100u * path.pieces.size());
}

TEST(SweptPath, AStretchHoldsThePiecesOfItsOwnersAndWhatTheyNeed) {
  std::mt19937 random(5);
  SweptPath path;
  path.cutters.resize(3);
  Vec3 at(0.0);
  AxisOffset offset = random_offset(random, 0.1);
  for (std::uint32_t i = 0; i < 40; ++i) {
    BentPiece piece;
    piece.curve = i % 3 == 0 ? Curve::plan_arc(at, at, {at.x + 1.0 + i, 0.0}, 2.0 * kPi)
                             : Curve::line(at, at + Vec3(1.0, 0.0, 0.0));
    piece.begin = offset;
    offset = i % 4 == 0 ? random_offset(random, 0.1) : offset;
    piece.end = offset;
    piece.owner = i / 2; // two pieces each
    piece.joins_previous = i > 0;
    piece.cutter = static_cast<std::uint16_t>(i / 14);
    path.add(piece);
    at = piece.curve.end;
  }
  for (const auto &[first_owner, end_owner] : {std::pair{0u, 0u},
                                               {0u, 1u},
                                               {0u, 7u},
                                               {0u, 19u},
                                               {0u, 20u},
                                               {0u, 99u},
                                               {3u, 11u},
                                               {11u, 99u},
                                               {8u, 8u}}) {
    const SweptPath part = path.stretch(first_owner, end_owner);
    const std::size_t first = 2 * first_owner, end = std::min<std::size_t>(2 * end_owner, 40);
    ASSERT_EQ(part.pieces.size(), end - first);
    EXPECT_EQ(part.cutters.size(), first == end ? 0 : (end - 1) / 14 + 1);
    for (std::size_t i = first; i < end; ++i) {
      const BentPiece a = part.bent(part.pieces[i - first]), b = path.bent(path.pieces[i]);
      EXPECT_EQ(a.joins_previous, b.joins_previous && i > first);
      EXPECT_EQ(a.curve, b.curve);
      EXPECT_EQ(largest_change_mm(a.begin, b.begin) + largest_change_mm(a.end, b.end), 0.0);
      EXPECT_EQ(a.owner, b.owner);
    }
  }
  EXPECT_LT(path.up_to(7).offsets.size(), path.offsets.size());
  EXPECT_LT(path.up_to(7).arcs.size(), path.arcs.size());
  EXPECT_LT(path.stretch(7, 99).offsets.size(), path.offsets.size());
  EXPECT_LT(path.stretch(7, 99).arcs.size(), path.arcs.size());
}

} // namespace
} // namespace asperity
