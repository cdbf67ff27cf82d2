// The state and what each wish makes of it, without a window.
#include "small_outcome.h"

using namespace asperity;
using namespace asperity::test_support;

TEST(Runs, OpeningAFileAsksForAPredictionAndKeepsThePlaceFree) {
  AppState state;
  apply(state, OpenFile{0, "/workshop/bush.toml"});
  EXPECT_TRUE(state.seats[0].run.is_wanted);
  EXPECT_FALSE(state.seats[0].run.is_running);
  EXPECT_FALSE(state.seats[1].is_taken());
  EXPECT_EQ(state.folder, "/workshop");
}

TEST(Runs, AnOutcomeIsShownAndAFailedReadingKeepsTheOldOne) {
  AppState state = state_with_bush();
  ASSERT_NE(state.outcome(0), nullptr);
  const Outcome *before = state.outcome(0);
  auto failed = std::make_shared<RunResult>();
  failed->problems.push_back({Severity::error, "bush.toml", 3, 1, "no program", "name one"});
  apply(state, RunStarted{0});
  apply(state, RunEnded{0, failed});
  EXPECT_EQ(state.outcome(0), before);
  EXPECT_FALSE(state.seats[0].fault.empty());
  EXPECT_EQ(state.look.sheet, Sheet::problems);
  EXPECT_FALSE(state.is_closing);
}

TEST(Runs, AJobTooLargeSaysWhyAndTheWindowLives) {
  AppState state;
  apply(state, OpenFile{0, "/workshop/huge.toml"});
  auto result = std::make_shared<RunResult>();
  auto outcome = std::make_shared<Outcome>();
  outcome->status = Status::too_large;
  outcome->why = "The charts need 90 GB.";
  result->outcome = outcome;
  apply(state, RunStarted{0});
  apply(state, RunEnded{0, result});
  EXPECT_EQ(state.outcome(0), nullptr);
  EXPECT_EQ(state.seats[0].fault, "The charts need 90 GB.");
}

TEST(Runs, AStoppedRunChangesNothingAndAnotherWishStartsAfterIt) {
  AppState state = state_with_bush();
  apply(state, Predict{0});
  apply(state, RunStarted{0});
  apply(state, Predict{0}); // while it runs
  EXPECT_TRUE(state.seats[0].run.is_stopping);
  EXPECT_TRUE(state.seats[0].run.is_wanted);
  const Outcome *before = state.outcome(0);
  apply(state, RunEnded{0, bush_with_large_cutter()});
  EXPECT_EQ(state.outcome(0), before) << "what was told to stop is thrown away";
  EXPECT_TRUE(state.seats[0].run.is_wanted);
  EXPECT_FALSE(state.seats[0].run.is_running);
}

TEST(Runs, ResultsOfAFileThatWasLeftAreThrownAway) {
  AppState state;
  apply(state, OpenFile{0, "/workshop/bush.toml"});
  apply(state, RunStarted{0});
  apply(state, LeaveSeat{0});
  apply(state, RunEnded{0, bush_result()});
  EXPECT_EQ(state.outcome(0), nullptr);
}

TEST(Runs, TwoJobsStandBesideEachOtherWhicheverIsReadySooner) {
  for (const int first : {0, 1}) {
    AppState state;
    for (int i = 0; i < 2; ++i) {
      apply(state, OpenFile{i, "/workshop/bush.toml"});
      apply(state, RunStarted{i});
    }
    apply(state, RunEnded{first, bush_result()});
    EXPECT_EQ(state.space.front, first) << "what is there is shown";
    apply(state, RunEnded{1 - first, bush_with_large_cutter()});
    EXPECT_EQ(state.space.arrangement, Arrangement::beside);
    EXPECT_EQ(state.space.front, 0);
  }
}

TEST(Space, ExaggerationStaysBetweenOneAndAThousandAndZeroMeansChosen) {
  AppState state;
  apply(state, SetExaggeration{5000});
  EXPECT_EQ(state.space.exaggeration, 1000.0);
  apply(state, SetExaggeration{0.2});
  EXPECT_EQ(state.space.exaggeration, 1.0);
  apply(state, SetExaggeration{0});
  EXPECT_EQ(state.space.exaggeration, 0.0);
}

TEST(Space, PlayingMovesTheMomentAndStopsAtTheEnd) {
  AppState state = state_with_bush();
  const double end_s = state.outcome(0)->path.duration_s;
  apply(state, SetMoment{0});
  apply(state, SetPlayRate{10});
  apply(state, SetPlaying{true});
  EXPECT_TRUE(state.space.things.cutter);
  apply(state, Tick{0.1});
  EXPECT_DOUBLE_EQ(state.space.moment_s, 1.0);
  apply(state, Tick{1e6});
  EXPECT_DOUBLE_EQ(state.space.moment_s, end_s);
  EXPECT_FALSE(state.space.is_playing);
}

TEST(Space, AFlightEndsAtItsGoalTheShorterWayRound) {
  AppState state;
  state.space.camera.azimuth_rad = rad_from_deg(170);
  Camera goal = state.space.camera;
  goal.azimuth_rad = rad_from_deg(-170);
  goal.target_mm = {1, 2, 3};
  apply(state, FlyTo{goal});
  apply(state, Tick{0.225}); // half of it
  EXPECT_NEAR(state.space.camera.azimuth_rad, rad_from_deg(180), 1e-9) << "through the back, not the front";
  apply(state, Tick{1});
  EXPECT_FALSE(state.space.flight);
  EXPECT_EQ(state.space.camera.azimuth_rad, goal.azimuth_rad);
  EXPECT_EQ(state.space.camera.target_mm, goal.target_mm);
}

TEST(Space, DraggingTheViewEndsAFlight) {
  AppState state;
  apply(state, FlyTo{{}});
  apply(state, SetCamera{state.space.camera});
  EXPECT_FALSE(state.space.flight);
}

TEST(Space, ComparingNeedsBothJobs) {
  AppState one = state_with_bush();
  apply(one, SetArrangement{Arrangement::wipe});
  apply(one, SetColour{Colour::difference});
  EXPECT_EQ(one.space.arrangement, Arrangement::front);
  EXPECT_NE(one.space.colour, Colour::difference);
  AppState both = state_with_bush(true);
  EXPECT_EQ(both.space.arrangement, Arrangement::beside);
  apply(both, SetColour{Colour::difference});
  EXPECT_EQ(both.space.colour, Colour::difference);
  apply(both, LeaveSeat{1});
  EXPECT_EQ(both.space.arrangement, Arrangement::front);
  EXPECT_NE(both.space.colour, Colour::difference);
}

TEST(Look, TheSameSheetAskedForTwiceClosesIt) {
  AppState state;
  apply(state, ShowSheet{Sheet::help});
  EXPECT_EQ(state.look.sheet, Sheet::help);
  apply(state, ShowSheet{Sheet::help});
  EXPECT_EQ(state.look.sheet, Sheet::none);
}

TEST(Look, EveryWishIsSeenByTheRevision) {
  AppState state;
  const auto before = state.revision;
  apply(state, SetDark{true});
  apply(state, SetDark{true});
  EXPECT_EQ(state.revision, before + 2);
}
