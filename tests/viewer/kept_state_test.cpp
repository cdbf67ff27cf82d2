// What is kept between runs comes back; damaged files change nothing.
#include "kept_state.h"
#include "small_outcome.h"

#include <cstdlib>

using namespace asperity;
using namespace asperity::test_support;

class KeptState : public Bench {};

TEST_F(KeptState, ComesBackAsItWas) {
  AppState state;
  state.look.is_dark = true;
  state.look.scale = 1.5;
  state.space.things.path = true;
  state.space.colour = Colour::bending;
  state.space.path_kind = {true, false, true, false};
  state.look.lower = Lower::section;
  const auto file = folder() / "deep" / "viewer.json";
  ASSERT_EQ(save_kept_state(file, state, {1024, 700}), "");
  AppState back;
  WindowSize size;
  load_kept_state(file, back, size);
  EXPECT_TRUE(back.look.is_dark);
  EXPECT_EQ(back.look.scale, 1.5);
  EXPECT_TRUE(back.space.things.path);
  EXPECT_EQ(back.space.colour, Colour::bending);
  EXPECT_EQ(back.space.path_kind, state.space.path_kind);
  EXPECT_EQ(back.look.lower, Lower::section);
  EXPECT_EQ(size.width, 1024);
  EXPECT_EQ(size.height, 700);
}

TEST_F(KeptState, DamagedOrMissingFilesAreNoHarm) {
  for (const char *text :
       {"", "{", "[1, 2]", R"({"width": "wide"})",
        R"({"width": -5, "scale": 1e9, "colour": 99, "lower": -3, "play_rate": -1, "path_kinds": [1]})"}) {
    write("viewer.json", text);
    AppState state;
    WindowSize size;
    load_kept_state(folder() / "viewer.json", state, size);
    load_kept_state(folder() / "none.json", state, size);
    EXPECT_GE(size.width, 640) << text;
    EXPECT_LE(state.look.scale, 2.0) << text;
  }
}

TEST_F(KeptState, TheFolderFollowsTheXdgBaseDirectorySpecification) {
  // XDG Base Directory Specification 0.8: $XDG_STATE_HOME, if set and absolute, else $HOME/.local/state.
  ASSERT_EQ(setenv("HOME", "/home/clockmaker", 1), 0);
  ASSERT_EQ(setenv("XDG_STATE_HOME", "/kept", 1), 0);
  EXPECT_EQ(kept_state_file(), "/kept/asperity/viewer.json");
  ASSERT_EQ(setenv("XDG_STATE_HOME", "relative", 1), 0);
  EXPECT_EQ(kept_state_file(), "/home/clockmaker/.local/state/asperity/viewer.json");
  ASSERT_EQ(unsetenv("XDG_STATE_HOME"), 0);
  EXPECT_EQ(kept_state_file(), "/home/clockmaker/.local/state/asperity/viewer.json");
}
