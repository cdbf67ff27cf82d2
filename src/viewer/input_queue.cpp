// What mouse and keyboard did, in order.
#include "input_queue.h"

#include <algorithm>
#include <iterator>

namespace asperity {

void InputQueue::move(double x, double y) {
  events_.push_back({.kind = Kind::move, .x = static_cast<float>(x), .y = static_cast<float>(y)});
}

void InputQueue::button(int which, bool is_down) {
  if (which >= 0 && which < static_cast<int>(std::size(buttons_)))
    events_.push_back({.kind = Kind::button, .code = which, .is_down = is_down});
}

void InputQueue::wheel(double across, double up) {
  events_.push_back({.kind = Kind::wheel, .x = static_cast<float>(across), .y = static_cast<float>(up)});
}

void InputQueue::key(int key, bool is_down, bool shift, bool control, bool alt) {
  if (key >= 0 && key < IM_ARRAYSIZE(ImGuiIO::KeysDown))
    events_.push_back({Kind::key, key, is_down, shift, control, alt});
}

void InputQueue::character(unsigned code) {
  events_.push_back({.kind = Kind::character, .code = static_cast<int>(code)});
}

void InputQueue::let_go() { events_.push_back({.kind = Kind::let_go}); }

void InputQueue::put(ImGuiIO &io, const Event &event) {
  switch (event.kind) {
  case Kind::move:
    mouse_ = {event.x, event.y};
    return;
  case Kind::button:
    buttons_[event.code] = event.is_down;
    return;
  case Kind::wheel:
    io.MouseWheelH += event.x;
    io.MouseWheel += event.y;
    return;
  case Kind::key:
    io.KeysDown[event.code] = event.is_down;
    io.KeyShift = event.shift;
    io.KeyCtrl = event.control;
    io.KeyAlt = event.alt;
    return;
  case Kind::character:
    io.AddInputCharacter(static_cast<unsigned>(event.code));
    return;
  case Kind::let_go:
    std::fill(std::begin(io.KeysDown), std::end(io.KeysDown), false);
    std::fill(std::begin(buttons_), std::end(buttons_), false);
    io.KeyShift = io.KeyCtrl = io.KeyAlt = false;
    return;
  }
}

void InputQueue::hand_over(ImGuiIO &io) {
  bool has_pressed = false;
  while (!events_.empty()) {
    const Event event = events_.front();
    const bool is_press = event.kind == Kind::button || event.kind == Kind::key;
    // A move after a press belongs to the frame after it, or the press would seem to be made elsewhere.
    if (has_pressed && (is_press || event.kind == Kind::move))
      break;
    put(io, event);
    has_pressed = has_pressed || is_press;
    events_.pop_front();
  }
  io.MousePos = mouse_;
  std::copy(std::begin(buttons_), std::end(buttons_), io.MouseDown);
}

} // namespace asperity
