// The cause of a line from the path that made it.
#include "../../src/finding/line_cause.h"
#include "rim_scene.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

PathPiece straight(Vec3 from, Vec3 to) { return feed_piece(Curve::line(from, to), 1); }

PathPiece dwell_at(Vec3 p) {
  PathPiece piece = straight(p, p);
  piece.kind = MoveKind::dwell;
  return piece;
}

LineCause cause_of(LargeArray<PathPiece> pieces, std::uint32_t owner, Vec2 foot) {
  TimedPath path;
  path.pieces = std::move(pieces);
  return line_cause(path, owner, foot);
}

TEST(LineCause, SteepMovesArePlungesAndLifts) {
  EXPECT_EQ(cause_of({straight({0, 0, 5}, {0, 0, 0})}, 0, {0, 3}), LineCause::plunge);
  EXPECT_EQ(cause_of({straight({0, 0, 0}, {0, 0, 5})}, 0, {0, 3}), LineCause::lift_out);
}

TEST(LineCause, TheEndBesideAPlungeIsThePlungesLine) {
  const LargeArray<PathPiece> pieces{straight({0, 0, 5}, {0, 0, 0}), straight({0, 0, 0}, {50, 0, 0})};
  EXPECT_EQ(cause_of(pieces, 1, {0.5, 3}), LineCause::plunge);
}

TEST(LineCause, StandingStillIsADwell) {
  const LargeArray<PathPiece> pieces{straight({0, 0, 0}, {20, 0, 0}), dwell_at({20, 0, 0}),
                                     straight({20, 0, 0}, {40, 0, 0})};
  EXPECT_EQ(cause_of(pieces, 1, {20, 3}), LineCause::dwell);
  EXPECT_EQ(cause_of(pieces, 2, {20.1, 3}), LineCause::dwell);
}

TEST(LineCause, ARampThatTurnsBackIsAReversal) {
  const LargeArray<PathPiece> pieces{straight({0, 0, 2}, {30, 0, 1}), straight({30, 0, 1}, {0, 0, 0})};
  EXPECT_EQ(cause_of(pieces, 0, {29.5, 3}), LineCause::reversal);
  EXPECT_EQ(cause_of(pieces, 1, {29.5, 3}), LineCause::reversal);
}

TEST(LineCause, AxisThatTurnsRoundWithPlayIsLostMotion) {
  // A full circle from +x: at the top and bottom y turns round, at the left x.
  TimedPath path;
  path.pieces = {feed_piece(Curve::plan_arc({34, 0, 0}, {34, 0, 0}, {0, 0}, 2 * kPi), 1)};
  EXPECT_EQ(line_cause(path, 0, {0, 31}, {0.0, 0.02}), LineCause::lost_motion);
  EXPECT_EQ(line_cause(path, 0, {-31, 0}, {0.02, 0.0}), LineCause::lost_motion);
  EXPECT_EQ(line_cause(path, 0, {-31, 0}, {0.0, 0.02}), LineCause::unknown) << "no play in x";
  EXPECT_EQ(line_cause(path, 0, {-22, 22}, {0.02, 0.02}), LineCause::unknown) << "no axis turns round here";
}

TEST(LineCause, SquareTurnsAreCornersAndSlightOnesJoints) {
  const PathPiece on = straight({30, 30, 0}, {0, 30, 0});
  EXPECT_EQ(cause_of({straight({0, 0, 0}, {30, 0, 0}), straight({30, 0, 0}, {30, 30, 0}), on}, 0, {29, 3}),
            LineCause::corner);
  EXPECT_EQ(cause_of({straight({0, 0, 0}, {30, 0, 0}), straight({30, 0, 0}, {60, 1, 0}), on}, 0, {30, 3}),
            LineCause::joint);
}

TEST(LineCause, ASquareMoveToOrFromTheWallIsEntryOrExit) {
  PathPiece rapid = straight({0, -9, 20}, {0, -9, 0});
  rapid.kind = MoveKind::rapid;
  const LargeArray<PathPiece> pieces{rapid, straight({0, -9, 0}, {0, 0, 0}), straight({0, 0, 0}, {30, 0, 0}),
                                     straight({30, 0, 0}, {30, -9, 0}), straight({30, -9, 0}, {30, -9, 20})};
  EXPECT_EQ(cause_of(pieces, 2, {0.5, 3}), LineCause::entry);
  EXPECT_EQ(cause_of(pieces, 2, {29.5, 3}), LineCause::exit);
}

TEST(LineCause, AnExactStopBetweenTangentMovesIsAStop) {
  LargeArray<PathPiece> pieces{straight({0, 0, 0}, {30, 0, 0}), straight({30, 0, 0}, {60, 0, 0})};
  EXPECT_EQ(cause_of(pieces, 0, {30, 3}), LineCause::unknown);
  pieces[0].v_out_mm_per_s = pieces[1].v_in_mm_per_s = 0;
  EXPECT_EQ(cause_of(pieces, 0, {30, 3}), LineCause::stop);
}

TEST(LineCause, TheEndsOfACutAreEntryAndExit) {
  PathPiece rapid = straight({-50, 0, 0}, {0, 0, 0});
  rapid.kind = MoveKind::rapid;
  const LargeArray<PathPiece> pieces{rapid, straight({0, 0, 0}, {30, 0, 0}),
                                     straight({30, 0, 0}, {30, 0, 9})};
  EXPECT_EQ(cause_of(pieces, 1, {1, 3}), LineCause::entry);
  EXPECT_EQ(cause_of(pieces, 1, {29, 3}), LineCause::exit);
}

TEST(LineCause, EveryCauseHasWordsAndACure) {
  for (const LineCause cause : {LineCause::plunge, LineCause::lift_out, LineCause::dwell, LineCause::reversal,
                                LineCause::entry, LineCause::exit, LineCause::corner, LineCause::stop,
                                LineCause::joint, LineCause::slow, LineCause::unknown}) {
    EXPECT_FALSE(cause_words(cause, false).empty());
    EXPECT_FALSE(remedy_words(cause).empty());
  }
}

TEST(LineCause, AnOwnerOutsideThePathIsUnknown) {
  EXPECT_EQ(cause_of({}, kNobody, {0, 0}), LineCause::unknown);
}

} // namespace
} // namespace asperity::test
