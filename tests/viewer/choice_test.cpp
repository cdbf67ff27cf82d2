// Pointing at a finding, a line, a place, a trace.
#include "small_outcome.h"

#include "finding_rows.h"

#include "asperity/compare/matched_finding.h"
#include "number_rows.h"
#include "support/sheave_outcome.h"

using namespace asperity;
using namespace asperity::test_support;

namespace {

/// First cutting move of the lower level: line 9 of the program (counted in its text).
constexpr std::uint32_t kLowerLevelLine = 9;

AppState state_with_rim() {
  AppState state;
  auto result = std::make_shared<RunResult>();
  auto outcome = std::make_shared<Outcome>(rim_outcome());
  result->outcome = outcome;
  apply(state, OpenFile{0, "/workshop/sheave.toml"});
  apply(state, RunStarted{0});
  apply(state, RunEnded{0, result});
  return state;
}

} // namespace

TEST(Choice, AFindingLightsItsFirstLineAndIsFlownTo) {
  AppState state = state_with_rim();
  const std::size_t witness = 1; // of the rim's three, on the rim, made by a line
  const Finding &finding = state.outcome(0)->findings[witness];
  ASSERT_FALSE(finding.lines.empty());
  const int scroll = state.choice.scroll;
  apply(state, ChooseFinding{0, static_cast<int>(witness)});
  EXPECT_EQ(state.choice.finding, static_cast<int>(witness));
  EXPECT_EQ(state.choice.line, finding.lines.front());
  EXPECT_GT(state.choice.scroll, scroll);
  ASSERT_TRUE(state.space.flight);
  EXPECT_DOUBLE_EQ(state.space.flight->to.target_mm.x, finding.place_mm.x);
}

TEST(Choice, SteppingGoesRoundTheFindingsBothWays) {
  AppState state = state_with_rim();
  const int count = static_cast<int>(state.outcome(0)->findings.size());
  apply(state, Picked{0, {}}); // nothing is chosen any longer
  apply(state, StepFinding{1});
  EXPECT_EQ(state.choice.finding, 0);
  apply(state, StepFinding{-1});
  EXPECT_EQ(state.choice.finding, count - 1);
  apply(state, StepFinding{1});
  EXPECT_EQ(state.choice.finding, 0);
}

TEST(Choice, APickedPlaceLightsTheLineThatMadeIt) {
  AppState state = state_with_bush();
  const Outcome &outcome = *state.outcome(0);
  const auto &wall = std::get<WallChart>(outcome.charts[0]);
  const std::size_t cell = wall.at(wall.columns() / 2, 2); // low on the wall
  ASSERT_TRUE(wall.is_cut(cell));
  Pick pick{.what = Pick::What::surface, .feature = 0};
  pick.cell = cell;
  pick.piece = static_cast<int>(wall.owner[cell]);
  apply(state, Picked{0, pick});
  EXPECT_EQ(state.choice.line, kLowerLevelLine);
  ASSERT_TRUE(state.choice.cell);
  apply(state, Picked{0, Pick{}});
  EXPECT_EQ(state.choice.line, 0u);
  EXPECT_FALSE(state.choice.cell);
}

TEST(Choice, AClickedLineChoosesItsCuttingPieceAndShowsThePath) {
  AppState state = state_with_bush();
  apply(state, ChooseLine{0, kLowerLevelLine});
  ASSERT_GE(state.choice.piece, 0);
  const PathPiece &piece = state.outcome(0)->path.pieces[static_cast<std::size_t>(state.choice.piece)];
  EXPECT_EQ(piece.line, kLowerLevelLine);
  EXPECT_EQ(piece.kind, MoveKind::feed);
  EXPECT_TRUE(state.space.things.path);
  EXPECT_DOUBLE_EQ(state.space.moment_s, piece.start_s);
}

TEST(Choice, ALineWithoutAMoveLightsButHasNoPiece) {
  AppState state = state_with_bush();
  apply(state, ChooseLine{0, 1});
  EXPECT_EQ(state.choice.line, 1u);
  EXPECT_EQ(state.choice.piece, -1);
}

TEST(Choice, WrongNumbersAreNoHarm) {
  AppState state = state_with_bush();
  apply(state, ChooseFinding{0, 4711});
  EXPECT_EQ(state.choice.finding, -1);
  apply(state, ChooseFinding{1, 0});
  EXPECT_EQ(state.choice.finding, -1);
  apply(state, ShowFeature{99});
  EXPECT_EQ(state.strip.feature, 0);
}

TEST(TraceWish, IsLaidOnEverySeatThatHasTheSurface) {
  AppState state = state_with_bush(true);
  apply(state, TraceBetween{{10, 1}, {16, 1.1}});
  EXPECT_TRUE(state.trace.is_wanted[0]);
  EXPECT_TRUE(state.trace.is_wanted[1]);
  EXPECT_EQ(state.trace.request.along, "s");
  apply(state, TraceStarted{0});
  Trace trace;
  trace.along = "s";
  trace.at_mm = 1;
  trace.spacing_mm = 0.01;
  trace.profile_mm.assign(100, 0.0);
  apply(state, TraceLaid{0, trace, ""});
  EXPECT_TRUE(state.trace.laid[0]);
  EXPECT_FALSE(state.trace.line_mm[0].empty());
  for (const Vec3 &p : state.trace.line_mm[0])
    EXPECT_NEAR(glm::length(plan(p)), 10.0, 1e-9) << "it lies on the disc of 20 mm";
}

TEST(Rows, TheSameFlawOfBothJobsStandsInOneRow) {
  const Outcome a = rim_outcome();
  Outcome b = rim_outcome();
  b.findings.erase(b.findings.begin());
  const std::vector<FindingRow> rows = finding_rows(&a, &b);
  ASSERT_EQ(rows.size(), 3u);
  EXPECT_EQ(rows[0].finding, (std::array<int, 2>{0, -1}));
  EXPECT_EQ(rows[1].finding, (std::array<int, 2>{1, 0}));
  b.findings[0].place_mm.x += 2 * kSamePlace_mm;
  EXPECT_EQ(finding_rows(&a, &b).size(), 4u) << "far apart they are two";
}

TEST(Rows, WantedValuesAndNumbersOfBothStandSideBySide) {
  const Outcome a = rim_outcome();
  Outcome b = rim_outcome();
  b.checks[1].met = true;
  const std::vector<WantedRow> wanted = wanted_rows(&a, &b);
  ASSERT_EQ(wanted.size(), 2u);
  EXPECT_FALSE(wanted[1].check[0]->met);
  EXPECT_TRUE(wanted[1].check[1]->met);
  for (const NumberRow &row : number_rows(key_numbers(a), key_numbers(b)))
    if (row.what != "wanted, but not met") {
      EXPECT_EQ(row.value[0], row.value[1]) << row.what;
    }
}

TEST(Rows, TheBetterNumberIsNamedUnlessBothReadTheSame) {
  const KeyNumber time{"time_s", "", "time on the machine", "s", 100, Better::lower, 0};
  KeyNumber sooner = time, same = time, other = time;
  sooner.value = 90;
  same.value = 100.0001;
  other.id = "peak_power_W";
  EXPECT_EQ(number_rows({time}, {sooner})[0].better, 1);
  EXPECT_EQ(number_rows({sooner}, {time})[0].better, 0);
  EXPECT_EQ(number_rows({time}, {same})[0].better, -1);
  const auto rows = number_rows({time}, {other});
  ASSERT_EQ(rows.size(), 2u);
  EXPECT_TRUE(rows[0].value[1].empty());
  EXPECT_TRUE(rows[1].value[0].empty());
  EXPECT_EQ(rows[1].better, -1);
}
