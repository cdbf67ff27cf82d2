// What is in force from one line to the next: units, plane, distance mode, feed, spindle, cycle.
#pragma once

#include "arc.h"
#include "asperity/gcode/program.h"
#include "codes.h"

namespace asperity::gcode {

enum class FeedMode : std::uint8_t { per_minute, inverse_time, per_turn };

/// Words of a drilling cycle that hold until another cycle begins [mm, s], as programmed.
struct CycleWords {
  Code code = kNoCode;     ///< of the cycle they were given for
  double initial_mm = 0.0; ///< height before the first hole of the row
  double bottom_mm = 0.0;
  double retract_mm = 0.0;
  double peck_mm = 0.0;
  double dwell_s = 0.0;
  bool has_peck = false;
  bool has_dwell = false;
};

struct ModalState {
  Code motion = kNoCode;
  Plane plane = Plane::xy;
  bool is_absolute = true;
  bool has_absolute_centres = false;
  bool is_inch = false;
  bool units_said = false;
  FeedMode feed_mode = FeedMode::per_minute;
  double feed = 0.0; ///< mm/min, 1/min or mm per turn by feed_mode; 0 = not given
  double spindle_rpm = 0.0;
  SpindleTurn turn = SpindleTurn::off;
  PathControl control = PathControl::exact_path;
  double blend_tolerance_mm = -1.0;
  bool returns_to_retract_height = false; ///< G99
  int selected_tool = 0;
  int tool = 0;
  bool tool_was_changed = false;
  CycleWords cycle;

  double mm(double length) const { return is_inch ? length * 25.4 : length; }
};

} // namespace asperity::gcode
