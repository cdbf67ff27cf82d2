// Presses shorter than a frame are not lost, and happen where they were made.
#include "input_queue.h"

#include <gtest/gtest.h>

using namespace asperity;

TEST(InputQueue, APressAndItsReleaseTakeAFrameEach) {
  ImGuiIO io;
  InputQueue queue;
  queue.key(65, true, false, false, false);
  queue.key(65, false, false, false, false);
  queue.hand_over(io);
  EXPECT_TRUE(io.KeysDown[65]);
  EXPECT_FALSE(queue.is_empty());
  queue.hand_over(io);
  EXPECT_FALSE(io.KeysDown[65]);
  EXPECT_TRUE(queue.is_empty());
}

TEST(InputQueue, AClickHappensWhereItWasMadeThoughThePointerWentOn) {
  ImGuiIO io;
  InputQueue queue;
  queue.move(10, 20);
  queue.move(30, 40);
  queue.button(0, true);
  queue.move(300, 400);
  queue.button(0, false);
  queue.move(500, 500);
  queue.hand_over(io);
  EXPECT_TRUE(io.MouseDown[0]);
  EXPECT_EQ(io.MousePos.x, 30.0f);
  queue.hand_over(io);
  EXPECT_FALSE(io.MouseDown[0]);
  EXPECT_EQ(io.MousePos.x, 300.0f);
  queue.hand_over(io);
  EXPECT_EQ(io.MousePos.x, 500.0f);
}

TEST(InputQueue, LosingTheKeyboardLetsEverythingGo) {
  ImGuiIO io;
  InputQueue queue;
  queue.key(65, true, true, true, false);
  queue.hand_over(io);
  queue.let_go();
  queue.hand_over(io);
  EXPECT_FALSE(io.KeysDown[65]);
  EXPECT_FALSE(io.KeyCtrl);
}

TEST(InputQueue, KeysAndButtonsThatDoNotExistAreNoHarm) {
  ImGuiIO io;
  InputQueue queue;
  queue.key(-1, true, false, false, false); // GLFW_KEY_UNKNOWN
  queue.button(7, true);
  queue.hand_over(io);
  EXPECT_TRUE(queue.is_empty());
}
