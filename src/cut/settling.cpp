#include "settling.h"

#include <algorithm>
#include <cmath>

namespace asperity {

namespace {

/// Farther than so many times the last step a line through two answers is not trusted.
constexpr double kFarthest = 3.0;

AxisOffset difference(const AxisOffset &a, const AxisOffset &b) {
  AxisOffset d;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    d.left[i] = a.left[i] - b.left[i];
    d.right[i] = a.right[i] - b.right[i];
  }
  d.axial_mm = a.axial_mm - b.axial_mm;
  return d;
}

double dot(const AxisOffset &a, const AxisOffset &b) {
  double sum = a.axial_mm * b.axial_mm;
  for (std::size_t i = 0; i < kBendNodes; ++i)
    sum += glm::dot(a.left[i], b.left[i]) + glm::dot(a.right[i], b.right[i]);
  return sum;
}

/// Share of the way from a to b where the line through both misses is nearest to none.
double secant_share(const AxisOffset &miss_a, const AxisOffset &miss_b) {
  const AxisOffset change = difference(miss_a, miss_b);
  const double square = dot(change, change);
  return square > 0.0 ? dot(miss_a, change) / square : 0.0;
}

} // namespace

double largest_change_mm(const AxisOffset &a, const AxisOffset &b) {
  double most2 = 0.0;
  for (std::size_t i = 0; i < kBendNodes; ++i) {
    const Vec2 left = a.left[i] - b.left[i], right = a.right[i] - b.right[i];
    most2 = std::max({most2, glm::dot(left, left), glm::dot(right, right)});
  }
  return std::max(std::abs(a.axial_mm - b.axial_mm), std::sqrt(most2));
}

bool Settling::take(const AxisOffset &answer) {
  if (largest_change_mm(guess_, answer) < kSettled_mm) {
    guess_ = answer;
    return true;
  }
  const Look now{guess_, answer, difference(answer, guess_)};
  if (!last_) {
    guess_ = answer;
    last_ = now;
    return false;
  }
  const bool crossed = dot(now.miss, last_->miss) < 0.0;
  const bool is_stuck = !crossed && opposite_; // this side came nearer, the other stands still
  if (crossed)
    opposite_ = last_;
  if (!opposite_) {
    const double share = std::max(secant_share(now.miss, last_->miss), -kFarthest);
    guess_ = between(now.answer, last_->answer, share);
    last_ = now;
    return false;
  }
  last_ = now;
  if (largest_change_mm(now.guess, opposite_->guess) < kSettled_mm)
    return true;
  if (is_stuck) {
    guess_ = between(now.guess, opposite_->guess, 0.5);
  } else {
    const double share = std::clamp(secant_share(now.miss, opposite_->miss), 0.0, 1.0);
    guess_ = between(now.answer, opposite_->answer, share);
  }
  return false;
}

} // namespace asperity
