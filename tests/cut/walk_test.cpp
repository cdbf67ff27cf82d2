// The walk against the closed forms of a single straight pass, and what each switch takes away.
#include "walk_scene.h"

#include "asperity/base/units.h"
#include "asperity/cut/wall_error.h"

#include <gtest/gtest.h>

namespace asperity::test {
namespace {

// Runs of 2 rev: 18000 rpm, 2 flutes: 30 mm/s is 0.05 mm per tooth.
constexpr double kFeed_mm_per_s = 30.0;
constexpr double kAllowance_mm = 0.3;
constexpr double kDepth_mm = 3.0;

/// The pass at the bottom 3 mm of a 10 mm bar would rub above: the bar is cut down to 3 mm height for it.
Job low_bar_job() {
  Job job = bar_job(kAllowance_mm);
  job.blank.z_top_mm = kDepth_mm;
  return job;
}

/// Climb: the wall y = 0 with the bar at y > 0 lies to the right of a cutter moving towards -x on its -y
/// side.
LargeArray<PathPiece> climb_pass() { return {straight({70, -3, 0}, {-10, -3, 0}, kFeed_mm_per_s, 0.0)}; }
LargeArray<PathPiece> conventional_pass() {
  return {straight({-10, -3, 0}, {70, -3, 0}, kFeed_mm_per_s, 0.0)};
}

const CutSample &sample_at_x(const CutRecord &record, double x_mm) {
  const CutSample *best = &record.samples.front();
  for (const CutSample &s : record.samples)
    if (std::abs(s.position_mm.x - x_mm) < std::abs(best->position_mm.x - x_mm))
      best = &s;
  return *best;
}

WallCut same_pass(const Job &job, bool climb) {
  const Cutter &c = job.cutters.front();
  const Material &m = job.material;
  WallCut cut;
  cut.k = {m.ktc_N_per_mm2, m.krc_N_per_mm2, m.kac_N_per_mm2, m.kte_N_per_mm, m.kre_N_per_mm, m.kae_N_per_mm};
  cut.teeth = {3.0, c.flutes, rad_from_deg(c.helix_deg)};
  cut.beam = {c.stick_out_mm, c.flute_length_mm, 0.8 * c.diameter_mm, c.shank_diameter_mm,
              c.elastic_modulus_MPa()};
  cut.steady_compliance_mm_per_N = machine_compliance_mm_per_N(job.machine.stiffness_xy_N_per_um);
  cut.axial_depth_mm = kDepth_mm;
  cut.radial_depth_mm = kAllowance_mm;
  cut.feed_per_tooth_mm = 0.05;
  cut.climb = climb;
  return cut;
}

TEST(Walk, SteadyPassKnowsItsEngagement) {
  Job job = low_bar_job();
  job.effects.machine_bending = job.effects.cutter_bending = false;
  const CutSample s = sample_at_x(walk(job, climb_pass()), 30.0);
  EXPECT_TRUE(s.in_contact);
  EXPECT_TRUE(s.climb);
  EXPECT_NEAR(s.axial_depth_mm, kDepth_mm, 1e-6);
  // The stock reads distances linearly between grid points and needs 1 um to see contact.
  EXPECT_NEAR(s.radial_depth_mm, kAllowance_mm, 2e-3);
  EXPECT_NEAR(s.exit_rad, kPi, 1e-6); // float storage
  EXPECT_NEAR(s.entry_rad, kPi - std::acos(1.0 - kAllowance_mm / 3.0), 3e-3);
  EXPECT_NEAR(s.feed_per_tooth_mm, 0.05, 1e-6);
}

// Every height's wall error equals the settled closed-form pass (linear-edge force on a cantilever, see
// wall_error.h). 2 %: the radial depth is known to 1-2 um of 300, the slices are 0.5 mm thick here and 0.1 mm
// there.
TEST(Walk, SteadyClimbPassBendsLikeTheSinglePassFormula) {
  const Job job = low_bar_job();
  const CutRecord record = walk(job, climb_pass());
  const CutSample s = sample_at_x(record, 30.0);
  const WallError expected = wall_error(same_pass(job, true), 0.0);
  EXPECT_GT(expected.error_mm, 4e-3);
  EXPECT_NEAR(s.tip_bend_mm, expected.error_mm, 0.02 * expected.error_mm);
}

TEST(Walk, SteadyConventionalPassBendsLikeTheSinglePassFormula) {
  const Job job = low_bar_job();
  const CutSample s = sample_at_x(walk(job, conventional_pass()), 30.0);
  EXPECT_FALSE(s.climb);
  const WallError expected = wall_error(same_pass(job, false), 0.0);
  EXPECT_NEAR(s.tip_bend_mm, expected.error_mm, 0.02 * std::abs(expected.error_mm) + 1e-4);
}

/// Largest distance of the tip's bending from a value, well inside the bar.
double bend_error_mm(const CutRecord &record, double wanted_mm) {
  double most_mm = 0.0;
  int count = 0;
  for (const CutSample &s : record.samples)
    if (s.position_mm.x > 8.0 && s.position_mm.x < 52.0) {
      most_mm = std::max(most_mm, std::abs(static_cast<double>(s.tip_bend_mm) - wanted_mm));
      ++count;
    }
  return count > 0 ? most_mm : HUGE_VAL;
}

// The bar's full 10 mm in one pass, on machines that yield by a twentieth and by half of the thickness that
// is cut, with straight teeth and helical ones.
TEST(Walk, DeepPassBendsLikeTheSinglePassFormulaHoweverItIsDivided) {
  struct Case {
    double stiffness_N_per_um, helix_deg;
  };
  for (const Case &with : {Case{0.3, 0.0}, Case{0.3, 30.0}, Case{0.03, 0.0}, Case{0.03, 30.0}}) {
    Job job = bar_job(kAllowance_mm);
    job.machine.stiffness_xy_N_per_um = with.stiffness_N_per_um;
    job.cutters.front().helix_deg = with.helix_deg;
    WallCut cut = same_pass(job, true);
    cut.axial_depth_mm = 10.0;
    const double expected_mm = wall_error(cut, 0.0).error_mm;
    for (const int moves : {1, 100, 800, 4000}) {
      LargeArray<PathPiece> pass;
      for (int i = 0; i < moves; ++i)
        pass.push_back(straight({70.0 - 80.0 * i / moves, -3, 0}, {70.0 - 80.0 * (i + 1) / moves, -3, 0},
                                kFeed_mm_per_s, 80.0 / kFeed_mm_per_s * i / moves));
      EXPECT_LT(bend_error_mm(walk(job, pass), expected_mm), 0.02 * expected_mm)
          << moves << " moves, helix " << with.helix_deg << " deg, " << expected_mm << " mm";
    }
  }
}

PathPiece arc(Vec3 from, Vec3 to, Vec2 centre, double sweep_rad, double start_s) {
  PathPiece piece = straight(from, to, kFeed_mm_per_s, start_s);
  piece.curve = Curve::plan_arc(from, to, centre, sweep_rad);
  piece.length_mm = piece.curve.length_mm();
  piece.duration_s = piece.length_mm / kFeed_mm_per_s;
  return piece;
}

Job round_bar_job(double diameter_mm) {
  Job job = bar_job(0.0);
  job.blank.shape = BlankShape::cylinder;
  job.blank.centre = {0.0, 0.0};
  job.blank.diameter_mm = diameter_mm;
  return job;
}

struct LeastAndMost {
  float least_mm = 1, most_mm = -1;
};
/// Of the tip's bending on laps, away from their ends.
LeastAndMost bending_on_laps(const CutRecord &record, const LargeArray<PathPiece> &path) {
  LeastAndMost bending;
  for (const CutSample &s : record.samples)
    if (path[s.piece].length_mm > 200.0 && s.u > 0.1 && s.u < 0.9) {
      bending.least_mm = std::min(bending.least_mm, s.tip_bend_mm);
      bending.most_mm = std::max(bending.most_mm, s.tip_bend_mm);
    }
  return bending;
}

// Entered by a tangent arc, as deep as a tenth of the cutter: where contact changes sides the cutter cannot
// spring out of the stock within one short step. It comes to bend all the same, as far as entered from afar.
TEST(Walk, DeepLapEnteredByAnArcBendsLikeOneEnteredFromAfar) {
  Job job = round_bar_job(62.8);
  job.blank.z_top_mm = 14.0;
  job.cutters.front().helix_deg = 30.0;
  job.cutters.front().runout_mm = 0.02;
  const Vec3 begin(34, 0, 0);
  const PathPiece lap = arc(begin, begin, {0, 0}, -2.0 * kPi, 1.0);
  const LargeArray<PathPiece> from_afar{straight({34, 40, 0}, begin, kFeed_mm_per_s, 0.0), lap};
  const LargeArray<PathPiece> by_arc{arc({38, 4, 0}, begin, {38, 0}, 0.5 * kPi, 0.0), lap};
  const LeastAndMost wanted = bending_on_laps(walk(job, from_afar), from_afar);
  EXPECT_GT(wanted.least_mm, 20e-3F);
  EXPECT_LT(wanted.most_mm, 1.02F * wanted.least_mm);
  const LeastAndMost got = bending_on_laps(walk(job, by_arc), by_arc);
  EXPECT_NEAR(got.least_mm, wanted.least_mm, 0.02F * wanted.least_mm);
  EXPECT_NEAR(got.most_mm, wanted.most_mm, 0.02F * wanted.most_mm);
}

// Three levels round a rim, each a third of the height: 6.6667 mm lies a third of a micrometre below the
// height its level is kept at, 3.3333 above. Each meets the same, so each bends the same way round.
TEST(Walk, LevelsBetweenMicrometresAllBendAlike) {
  LargeArray<PathPiece> path;
  for (int level = 1; level <= 3; ++level) {
    const double start_s = 20.0 * level;
    const Vec3 begin(34.4, 0, 10.0 - level * 10.0 / 3.0), aside(50, 0, begin.z); // leaves 31.4 of 31.5
    path.push_back(straight(aside, begin, kFeed_mm_per_s, start_s));
    path.push_back(arc(begin, begin, {0, 0}, -2.0 * kPi, start_s + 1.0));
    path.push_back(straight(begin, aside, kFeed_mm_per_s, start_s + 15.0));
  }
  const LeastAndMost bending = bending_on_laps(walk(round_bar_job(63.0), path), path);
  EXPECT_GT(bending.least_mm, 2e-3F);
  EXPECT_LT(bending.most_mm, 1.1F * bending.least_mm);
}

// Chords of 0.23 mm, two to a step: as on the arc, with every move in the bent path and no gap between two.
TEST(Walk, LapInShortChordsBendsLikeTheArc) {
  const Job job = round_bar_job(62.8);
  const Vec3 begin(34, 0, 0), far_away(34, 40, 0);
  const LargeArray<PathPiece> whole{straight(far_away, begin, kFeed_mm_per_s, 0.0),
                                    arc(begin, begin, {0, 0}, -2.0 * kPi, 1.0)};
  LargeArray<PathPiece> divided{whole[0]};
  constexpr std::uint32_t kChords = 930;
  const auto end = [&](std::uint32_t i) { return whole[1].curve.point(double(i) / kChords); };
  for (std::uint32_t i = 0; i < kChords; ++i)
    divided.push_back(straight(end(i), end(i + 1), kFeed_mm_per_s, 1.0 + 7.2 * i / kChords));
  const LeastAndMost wanted = bending_on_laps(walk(job, whole), whole);
  const CutRecord record = walk(job, divided);
  std::vector<std::uint32_t> swept_by(kChords + 1, 0), sampled(kChords + 1, 0);
  for (const SweptPiece &piece : record.swept.pieces) {
    ++swept_by[piece.owner];
    if (piece.owner > 1 && piece.joins_previous) {
      EXPECT_EQ(record.swept.begin_offset(piece), record.swept.end_offset(*(&piece - 1))) << piece.owner;
    }
  }
  for (const CutSample &s : record.samples) {
    ++sampled[s.piece];
    if (s.piece > kChords / 10 && s.piece < kChords * 9 / 10) {
      EXPECT_NEAR(s.tip_bend_mm, wanted.most_mm, 0.02F * wanted.most_mm) << s.piece;
    }
  }
  EXPECT_GE(*std::min_element(swept_by.begin(), swept_by.end()), 1U);
  EXPECT_GE(*std::min_element(sampled.begin(), sampled.end()), 1U);
}

TEST(Walk, WithoutBendingThePathIsSweptAsCommanded) {
  Job job = low_bar_job();
  job.effects.machine_bending = job.effects.cutter_bending = false;
  const CutRecord record = walk(job, climb_pass());
  for (const SweptPiece &piece : record.swept.pieces)
    for (std::size_t i = 0; i < kBendNodes; ++i)
      EXPECT_EQ(glm::length(record.swept.begin_offset(piece).right(i)) +
                    glm::length(record.swept.end_offset(piece).left(i)),
                0.0);
  EXPECT_EQ(record.swept.pieces.size(), 1U) << "a straight unbent move stays one piece";
}

TEST(Walk, SpringPassFindsOnlyWhatTheFirstPassLeft) {
  const Job job = low_bar_job();
  LargeArray<PathPiece> twice = climb_pass();
  twice.push_back(straight({-10, -3, 0}, {-10, -20, 0}, kFeed_mm_per_s, 3.0));
  twice.push_back(straight({-10, -20, 0}, {70, -20, 0}, kFeed_mm_per_s, 4.0));
  twice.push_back(straight({70, -20, 0}, {70, -3, 0}, kFeed_mm_per_s, 7.0));
  const CutRecord once_more = walk(job, [&] {
    auto all = twice;
    all.push_back(straight({70, -3, 0}, {-10, -3, 0}, kFeed_mm_per_s, 8.0));
    return all;
  }());
  float first = 0, second = 0;
  for (const CutSample &s : once_more.samples)
    if (std::abs(s.position_mm.x - 30.0) < 0.3 && s.in_contact)
      (s.piece == 0 ? first : second) = s.tip_bend_mm;
  EXPECT_GT(first, 4e-3F);
  EXPECT_LT(second, 0.5F * first);
  EXPECT_GE(second, 0.0F);
}

TEST(Walk, SpringPassesComeToStandStraightAndStayThere) {
  // Derived: each pass meets what the one before left. Once that is so thin that the cutter would be free of
  // it bent, it counts as straight, and passes after that find nothing.
  LargeArray<PathPiece> passes;
  constexpr int kPasses = 6;
  for (int k = 0; k < kPasses; ++k) {
    const double start_s = 8.0 * k;
    passes.push_back(straight({70, -3, 0}, {-10, -3, 0}, kFeed_mm_per_s, start_s));
    passes.push_back(straight({-10, -3, 0}, {-10, -20, 0}, kFeed_mm_per_s, start_s + 3.0));
    passes.push_back(straight({-10, -20, 0}, {70, -20, 0}, kFeed_mm_per_s, start_s + 4.0));
    passes.push_back(straight({70, -20, 0}, {70, -3, 0}, kFeed_mm_per_s, start_s + 7.0));
  }
  double most_mm[kPasses] = {};
  const CutRecord record = walk(low_bar_job(), passes);
  for (const CutSample &s : record.samples)
    if (s.piece % 4 == 0 && s.position_mm.x > 10.0 && s.position_mm.x < 50.0)
      most_mm[s.piece / 4] = std::max(most_mm[s.piece / 4], std::abs(static_cast<double>(s.tip_bend_mm)));
  EXPECT_GT(most_mm[0], 4e-3);
  for (int k = 1; k < kPasses; ++k)
    EXPECT_LE(most_mm[k], most_mm[k - 1]) << k;
  EXPECT_EQ(most_mm[kPasses - 1], 0.0);
}

TEST(Walk, PlungeBesideTheWallLetsTheCutterStandStraight) {
  const Job job = low_bar_job();
  const CutRecord record = walk(job, {straight({30, -3, 8}, {30, -3, 0}, 5.0, 0.0)});
  // End edges push along the wall, not across it: the sector over the stock lies symmetrical about the wall's
  // normal.
  for (const CutSample &s : record.samples) {
    EXPECT_TRUE(s.plunging);
    EXPECT_LT(std::abs(s.mean_force_N[1]), 0.2 * std::abs(s.mean_force_N[0]) + 0.05);
  }
}

TEST(Walk, CutterOfGrownDiameterIsSweptGrown) {
  Job job = low_bar_job();
  job.cutters.front().diameter_error_mm = 0.04;
  job.cutters.front().runout_mm = 0.02;
  EXPECT_NEAR(walk(job, climb_pass()).swept.cutters.front().profile.radius_mm(), 3.03, 1e-12);
  job.effects.diameter_error = false;
  EXPECT_NEAR(walk(job, climb_pass()).swept.cutters.front().profile.radius_mm(), 3.01, 1e-12);
  job.effects.runout = false;
  EXPECT_NEAR(walk(job, climb_pass()).swept.cutters.front().profile.radius_mm(), 3.0, 1e-12);
}

// Lost motion: after a reversal the slide stands still until the command has crossed the gap.
TEST(Walk, LostMotionShiftsThePathAgainstItsDirection) {
  Job job = low_bar_job();
  job.effects.machine_bending = job.effects.cutter_bending = false;
  job.machine.backlash_mm = {0.05, 0.0, 0.0};
  const CutRecord record =
      walk(job, {straight({70, -3, 0}, {-10, -3, 0}, 30, 0), straight({-10, -3, 0}, {70, -3, 0}, 30, 3)});
  EXPECT_NEAR(record.swept.end_offset(record.swept.pieces.front()).left(0).x, 0.025, 1e-12);
  EXPECT_NEAR(record.swept.end_offset(record.swept.pieces.back()).left(0).x, -0.025, 1e-12);
}

TEST(Walk, StopsAreCalledOnceWhatLiesBeforeThemIsCut) {
  TimedPath path;
  path.pieces = {straight({70, -3, 0}, {30, -3, 0}, kFeed_mm_per_s, 0.0)};
  // Short moves that run on are walked several at a time.
  for (int i = 0; i < 40; ++i)
    path.pieces.push_back(straight(path.pieces.back().curve.end,
                                   path.pieces.back().curve.end - Vec3(0.1, 0, 0), kFeed_mm_per_s, 0.0));
  const Job job = bar_job(0.5);
  Stock stock = make_stock(job, path);
  std::vector<std::size_t> called;
  std::vector<SweptPath> parts;
  std::vector<WalkStop> stops;
  for (const std::size_t piece : {1u, 7u, 7u, 30u, 41u})
    stops.push_back({piece, [&, piece](const SweptPath &so_far) {
                       called.push_back(piece);
                       parts.push_back(so_far.up_to(static_cast<std::uint32_t>(piece)));
                     }});
  const CutRecord record = walk_path(job, path, stock, Progress{}, stops);
  ASSERT_EQ(called, (std::vector<std::size_t>{1, 7, 7, 30})) << "none at the end";
  for (std::size_t i = 0; i < called.size(); ++i) {
    const SweptPath later = record.swept.up_to(static_cast<std::uint32_t>(called[i]));
    EXPECT_EQ(parts[i].pieces.size(), later.pieces.size());
    EXPECT_EQ(parts[i].pieces.back().owner + 1, called[i]);
  }
}

} // namespace
} // namespace asperity::test
