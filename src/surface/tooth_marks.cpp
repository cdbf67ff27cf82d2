// Hollows of single teeth along a wall: the lower envelope of equal parabolas, refined to the tooth's
// trochoid.
#include "asperity/surface/tooth_marks.h"

#include "asperity/base/units.h"
#include "asperity/surface/kinematic.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace asperity {

std::vector<double> tooth_radii_mm(double radius_mm, int flutes, double eccentricity_mm, double angle_rad) {
  std::vector<double> radii;
  for (int i = 0; i < flutes; ++i)
    radii.push_back(radius_mm + eccentricity_mm * std::cos(2.0 * kPi * i / flutes + angle_rad));
  return radii;
}

ToothMarks::ToothMarks(const ToothPass &pass)
    : radius_(pass.radius_mm), path_radius_(pass.radius_mm), curvature_(0), wall_(pass.wall_per_mm),
      period_(pass.flutes * pass.feed_per_tooth_mm),
      turns_per_mm_(std::tan(pass.helix_rad) / (2.0 * kPi * pass.radius_mm)) {
  const double advance = period_ / (2.0 * kPi);
  path_radius_ = radius_ + (pass.is_climb ? -advance : advance);
  // A bore hardly wider than the cutter leaves no hollows: the path then hugs the wall.
  curvature_ = std::max(0.0, radius_ / (path_radius_ * path_radius_) + wall_);

  const std::vector<double> radii =
      tooth_radii_mm(radius_, pass.flutes, pass.eccentricity_mm, pass.angle_rad);
  const double longest = *std::max_element(radii.begin(), radii.end());
  std::vector<Mark> all;
  for (std::size_t i = 0; i < radii.size(); ++i)
    all.push_back({static_cast<double>(i) * pass.feed_per_tooth_mm, longest - radii[i]});
  keep_visible(all);
}

void ToothMarks::keep_visible(const std::vector<Mark> &all) {
  // Without feed or curvature there is one smooth surface, the longest tooth's.
  if (period_ <= 0 || curvature_ <= 0) {
    period_ = 0;
    marks_.push_back({0.0, 0.0});
    return;
  }
  // Between two teeth the surfaces cross once; a tooth shows where it is lower than all others, each of which
  // is met in this period, the one before and the one after.
  for (const Mark &mark : all) {
    Mark seen = mark;
    seen.begin_mm = -std::numeric_limits<double>::infinity();
    seen.end_mm = std::numeric_limits<double>::infinity();
    for (const Mark &other : all)
      for (const double shift : {-period_, 0.0, period_}) {
        const double place = other.place_mm + shift;
        if (place == mark.place_mm)
          continue;
        const double crossing = (place + mark.place_mm) / 2.0 +
                                (other.lag_mm - mark.lag_mm) / (curvature_ * (place - mark.place_mm));
        if (place < mark.place_mm)
          seen.begin_mm = std::max(seen.begin_mm, crossing);
        else
          seen.end_mm = std::min(seen.end_mm, crossing);
      }
    if (seen.begin_mm < seen.end_mm)
      marks_.push_back(seen);
  }
}

double ToothMarks::rise_mm(double aside_mm) const {
  // x = R sin q +- a q solved for q to the next order in q: good to 1e-5 even at a feed of a third of R.
  double q = aside_mm / path_radius_;
  q += radius_ * q * q * q / (6.0 * path_radius_);
  const double square = q * q;
  return radius_ * square * (0.5 - square / 24.0) + wall_ * aside_mm * aside_mm / 2.0;
}

double ToothMarks::height_at_place_mm(double place_mm) const {
  if (period_ == 0)
    return 0.0;
  const double first = marks_.front().begin_mm;
  const double x = place_mm - period_ * std::floor((place_mm - first) / period_);
  std::size_t i = 0;
  while (i + 1 < marks_.size() && x >= marks_[i].end_mm)
    ++i;
  return marks_[i].lag_mm + rise_mm(x - marks_[i].place_mm);
}

double ToothMarks::height_mm(double s_mm, double z_mm) const {
  return height_at_place_mm(s_mm - period_ * turns_per_mm_ * z_mm);
}

double ToothMarks::height_at_turn_mm(double turns, double z_mm) const {
  return height_at_place_mm(period_ * (turns - turns_per_mm_ * z_mm));
}

double ToothMarks::pitch_mm() const { return period_ / static_cast<double>(marks_.size()); }

double ToothMarks::cusp_mm() const {
  double highest = 0;
  if (period_ > 0)
    for (const Mark &mark : marks_)
      highest = std::max(highest, mark.lag_mm + rise_mm(mark.end_mm - mark.place_mm));
  return highest;
}

double wall_texture_mm(const ToothPass &pass, double s_mm, double z_mm) {
  return ToothMarks(pass).height_mm(s_mm, z_mm);
}

} // namespace asperity
