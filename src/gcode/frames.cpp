// Work offsets, the G92 shift and tool length offsets: from programmed coordinates to the tip in the G54
// frame.
#include "frames.h"

namespace asperity::gcode {
namespace {

constexpr double kInch_mm = 25.4;

} // namespace

void Frames::set_inch(bool is_inch) {
  const double unit_mm = is_inch ? kInch_mm : 1.0;
  if (unit_mm != unit_mm_)
    parameters_.scale_lengths(unit_mm_ / unit_mm);
  unit_mm_ = unit_mm;
}

Vec3 Frames::read_position(int first) const {
  return unit_mm_ * Vec3(parameters_.get(first), parameters_.get(first + 1), parameters_.get(first + 2));
}

void Frames::write_position(int first, Vec3 position_mm) {
  for (int axis = 0; axis < 3; ++axis)
    parameters_.set(first + axis, position_mm[axis] / unit_mm_);
}

void Frames::use_system(int system) {
  system_ = system;
  parameters_.set(ParameterTable::kSystemInForce, system);
  origin_mm_ = read_position(ParameterTable::origin_of(system));
}

void Frames::set_origin(int system, int axis, double origin_mm) {
  parameters_.set(ParameterTable::origin_of(system) + axis, origin_mm / unit_mm_);
  if (system == system_)
    origin_mm_[axis] = origin_mm;
}

bool Frames::is_g54_origin_set() const { return read_position(ParameterTable::origin_of(1)) != Vec3(0.0); }

void Frames::shift_axis(int axis, double tip_mm, double programmed_mm) {
  shift_mm_[axis] = tip_mm - (origin_mm_[axis] - output_origin_mm_[axis]) - programmed_mm;
  write_position(ParameterTable::kShiftOfG92, shift_mm_);
}

void Frames::end_shift(bool clear_parameters) {
  shift_mm_ = Vec3(0.0);
  if (clear_parameters)
    write_position(ParameterTable::kShiftOfG92, shift_mm_);
}

void Frames::restore_shift() { shift_mm_ = read_position(ParameterTable::kShiftOfG92); }

void Frames::freeze_output_frame() {
  if (is_frozen_)
    return;
  is_frozen_ = true;
  output_origin_mm_ = system_ == 1 ? origin_mm_ : read_position(ParameterTable::origin_of(1));
}

Vec3 Frames::tip_from_machine(Vec3 axes_mm) const {
  return axes_mm - Vec3(0.0, 0.0, length_offset_mm_) - output_origin_mm_;
}

} // namespace asperity::gcode
