// Exact speed and time along a piece of steady acceleration, cruise and steady deceleration.
#include "speed_profile.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Time over a distance at steady acceleration: mean speed is the mean of both ends. Keeps its digits near v1
/// = v2.
double ramp_time_s(double distance_mm, double from_mm_per_s, double to_mm_per_s) {
  return distance_mm > 0.0 ? 2.0 * distance_mm / (from_mm_per_s + to_mm_per_s) : 0.0;
}

double rising_mm(const PathPiece &piece) {
  return change_distance_mm(piece.v_in_mm_per_s, piece.v_peak_mm_per_s, piece.acceleration_mm_per_s2);
}

double falling_mm(const PathPiece &piece) {
  return change_distance_mm(piece.v_out_mm_per_s, piece.v_peak_mm_per_s, piece.acceleration_mm_per_s2);
}

} // namespace

double speed_after_mm_per_s(double speed_mm_per_s, double acceleration_mm_per_s2, double distance_mm) {
  return std::sqrt(speed_mm_per_s * speed_mm_per_s + 2.0 * acceleration_mm_per_s2 * distance_mm);
}

double triangle_peak_mm_per_s(double acceleration_mm_per_s2, double distance_mm, double v_in_mm_per_s,
                              double v_out_mm_per_s) {
  return std::sqrt(acceleration_mm_per_s2 * distance_mm +
                   (v_in_mm_per_s * v_in_mm_per_s + v_out_mm_per_s * v_out_mm_per_s) / 2.0);
}

double change_distance_mm(double from_mm_per_s, double to_mm_per_s, double acceleration_mm_per_s2) {
  if (from_mm_per_s == to_mm_per_s || acceleration_mm_per_s2 <= 0.0)
    return 0.0;
  return std::abs(to_mm_per_s - from_mm_per_s) * (to_mm_per_s + from_mm_per_s) /
         (2.0 * acceleration_mm_per_s2);
}

double profile_duration_s(const PathPiece &piece) {
  if (piece.length_mm <= 0.0 || piece.v_peak_mm_per_s <= 0.0)
    return 0.0;
  const double rising = rising_mm(piece), falling = falling_mm(piece);
  const double cruising = std::max(piece.length_mm - rising - falling, 0.0);
  return ramp_time_s(rising, piece.v_in_mm_per_s, piece.v_peak_mm_per_s) + cruising / piece.v_peak_mm_per_s +
         ramp_time_s(falling, piece.v_peak_mm_per_s, piece.v_out_mm_per_s);
}

double PathPiece::speed_at(double distance_mm) const {
  const double done = std::clamp(distance_mm, 0.0, length_mm);
  const double left = length_mm - done;
  if (done < rising_mm(*this))
    return std::min(speed_after_mm_per_s(v_in_mm_per_s, acceleration_mm_per_s2, done), v_peak_mm_per_s);
  if (left < falling_mm(*this))
    return std::min(speed_after_mm_per_s(v_out_mm_per_s, acceleration_mm_per_s2, left), v_peak_mm_per_s);
  return v_peak_mm_per_s;
}

double PathPiece::time_at(double distance_mm) const {
  const double done = std::clamp(distance_mm, 0.0, length_mm);
  const double left = length_mm - done;
  if (done <= 0.0 || v_peak_mm_per_s <= 0.0)
    return 0.0;
  const double rising = rising_mm(*this);
  if (done < rising)
    return ramp_time_s(done, v_in_mm_per_s, speed_at(done));
  if (left < falling_mm(*this))
    return duration_s - ramp_time_s(left, v_out_mm_per_s, speed_at(done));
  return ramp_time_s(rising, v_in_mm_per_s, v_peak_mm_per_s) + (done - rising) / v_peak_mm_per_s;
}

} // namespace asperity
