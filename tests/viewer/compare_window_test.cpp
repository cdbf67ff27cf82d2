// The window driven by mouse and keys, two jobs at the table; other sizes, grounds and scales.
#include "window_scene.h"

#include <GLFW/glfw3.h>

using namespace asperity;
using namespace asperity::test_support;

class TwoJobs : public Window {
protected:
  void SetUp() override {
    Window::SetUp();
    open(2);
  }
};

TEST_F(TwoJobs, StandBesideEachOtherUnderOneEye) {
  EXPECT_EQ(state().space.arrangement, Arrangement::beside);
  const Camera before = state().space.camera;
  const Vec2 from = at("picture B");
  window().drag(from.x, from.y, from.x - 90, from.y);
  EXPECT_NEAR(state().space.camera.azimuth_rad, before.azimuth_rad + rad_from_deg(45), 1e-6);
  window().settle();
  keep_picture("beside");
}

TEST_F(TwoJobs, TheWipeLineIsDragged) {
  window().press(GLFW_KEY_W);
  ASSERT_EQ(state().space.arrangement, Arrangement::wipe);
  window().frames(2);
  const Vec2 line = at("wipe line"), goal = at("wiped picture", 0.25);
  window().drag(line.x, line.y, goal.x, goal.y);
  // The bar is grabbed anywhere on its width.
  EXPECT_NEAR(state().space.wipe, 0.25, 0.02);
  window().settle();
  keep_picture("wipe");
}

TEST_F(TwoJobs, TheDifferenceIsColouredAndTheSameJobDiffersNowhere) {
  window().press(GLFW_KEY_9);
  ASSERT_EQ(state().space.colour, Colour::difference);
  ASSERT_TRUE(window().settle());
  keep_picture("difference");
}

TEST_F(TwoJobs, TabBringsTheOtherToTheFrontAndATraceIsLaidOnBoth) {
  window().press(GLFW_KEY_TAB);
  EXPECT_EQ(state().space.front, 1);
  window().frames(3);
  const Vec2 from = at("strip picture", 0.3), to = at("strip picture", 0.6);
  window().drag(from.x, from.y, to.x, to.y);
  ASSERT_TRUE(window().settle());
  ASSERT_TRUE(state().trace.laid[0]);
  ASSERT_TRUE(state().trace.laid[1]);
  EXPECT_EQ(state().trace.laid[0]->profile_mm, state().trace.laid[1]->profile_mm) << "the jobs are the same";
  keep_picture("trace_both");
}

class OtherLooks : public Window {};

TEST_F(OtherLooks, SmallDarkAndLargeScaleAreDrawn) {
  open(1, {1024, 700});
  keep_picture("small_light");
  window().app().take(SetDark{true});
  ASSERT_TRUE(window().settle());
  keep_picture("small_dark");
  window().app().take(SetScale{1.5});
  ASSERT_TRUE(window().settle());
  EXPECT_FALSE(window().app().wants_fonts());
  keep_picture("small_dark_large");
}

TEST_F(OtherLooks, TwiceAsLargeThereAreTwoColumnsAndTheSheetTakesThePartsPlace) {
  open(1, {1280, 800});
  window().app().take(SetScale{2});
  ASSERT_TRUE(window().settle());
  keep_picture("twice");
  EXPECT_EQ(window().app().places().count("strip picture"), 0u) << "no room below the part";
  click("tab numbers");
  window().frames(2);
  keep_picture("twice_numbers");
  window().press(GLFW_KEY_U);
  window().frames(2);
  EXPECT_EQ(window().app().places().count("strip picture"), 1u);
  EXPECT_EQ(window().app().places().count("picture A"), 0u);
  keep_picture("twice_flat");
}

TEST_F(OtherLooks, AnEmptyWindowSaysWhatToDo) {
  std::string fault;
  const auto window = HeadlessWindow::make({}, {1024, 700}, 0, fault);
  if (!window)
    GTEST_SKIP() << fault;
  window->settle();
  window->app().drop({job_file()});
  EXPECT_EQ(window->app().state().seats[0].file, job_file());
  ASSERT_TRUE(window->settle());
  EXPECT_NE(window->app().state().outcome(0), nullptr);
}
