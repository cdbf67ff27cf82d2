// What mouse and keyboard did, handed to ImGui in the order in which it happened.
#pragma once

#include <imgui.h>

#include <deque>

namespace asperity {

/// ImGui looks at buttons and keys once a frame: a press and its release within one slow frame would be lost.
/// Here every frame takes the moves up to the next press or release and that one, and the rest waits.
class InputQueue {
public:
  void move(double x, double y);
  void button(int which, bool is_down);
  void wheel(double across, double up);
  void key(int key, bool is_down, bool shift, bool control, bool alt);
  void character(unsigned code);
  /// The window lost the keyboard: nothing is held any longer.
  void let_go();

  /// Between the platform's and ImGui's NewFrame.
  void hand_over(ImGuiIO &io);
  bool is_empty() const { return events_.empty(); }

private:
  enum class Kind { move, button, wheel, key, character, let_go };
  struct Event {
    Kind kind = Kind::move;
    int code = 0;
    bool is_down = false, shift = false, control = false, alt = false;
    float x = 0, y = 0;
  };
  void put(ImGuiIO &io, const Event &event);

  std::deque<Event> events_;
  ImVec2 mouse_{-FLT_MAX, -FLT_MAX};
  bool buttons_[5] = {};
};

} // namespace asperity
