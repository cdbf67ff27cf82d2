// Work offsets, the G92 shift and tool length offsets: from programmed coordinates to the tip in the G54
// frame.
#pragma once

#include "asperity/base/vec.h"
#include "parameters.h"

namespace asperity::gcode {

/// The output frame is G54 as it stands at the first move; it stays there even if G54 is moved later.
/// Programmed coordinates + shift() = the tip in the output frame, all in mm.
class Frames {
public:
  explicit Frames(ParameterTable &parameters) : parameters_(parameters) {}

  void set_inch(bool is_inch);
  void use_system(int system);
  int system() const { return system_; }
  /// G10 L2: a new origin for one axis of a system, in mm.
  void set_origin(int system, int axis, double origin_mm);
  bool is_g54_origin_set() const;

  /// G92: makes `tip_mm` on that axis read `programmed_mm`.
  void shift_axis(int axis, double tip_mm, double programmed_mm);
  void end_shift(bool clear_parameters);
  void restore_shift();

  void set_length_offset(double offset_mm) { length_offset_mm_ = offset_mm; }
  double length_offset_mm() const { return length_offset_mm_; }

  void freeze_output_frame();
  Vec3 shift() const { return origin_mm_ + shift_mm_ - output_origin_mm_; }
  /// The tip in the output frame when the machine's axes stand at `axes_mm`.
  Vec3 tip_from_machine(Vec3 axes_mm) const;
  /// Machine position kept in three parameters from `first`, in mm.
  Vec3 read_position(int first) const;

private:
  void write_position(int first, Vec3 position_mm);

  ParameterTable &parameters_;
  double unit_mm_ = 1.0;
  int system_ = 1;
  Vec3 origin_mm_{0.0};
  Vec3 shift_mm_{0.0};
  Vec3 output_origin_mm_{0.0};
  double length_offset_mm_ = 0.0;
  bool is_frozen_ = false;
};

} // namespace asperity::gcode
