// Ridges between hollows along one profile.
#include "ridge.h"

#include <cmath>

namespace asperity {

namespace {

/// Follows a profile up and down, and turns only when it has come back by `least`.
class CrestFollower {
public:
  CrestFollower(std::span<const double> profile, double least) : profile_(profile), least_(least) {}

  void restart(std::size_t i) {
    high_ = low_ = i;
    climbing_ = false;
    hollow_before_ = false;
    started_ = false;
  }

  void step(std::size_t i, std::vector<Ridge> &ridges) {
    if (profile_[i] > profile_[high_])
      high_ = i;
    if (profile_[i] < profile_[low_])
      low_ = i;
    if ((!started_ || climbing_) && profile_[high_] - profile_[i] >= least_) {
      turn_down(i);
    } else if ((!started_ || !climbing_) && profile_[i] - profile_[low_] >= least_) {
      turn_up(i, ridges);
    }
  }

private:
  void turn_down(std::size_t i) {
    has_crest_ = true;
    crest_ = high_;
    started_ = true;
    climbing_ = false;
    low_ = i;
  }
  void turn_up(std::size_t i, std::vector<Ridge> &ridges) {
    // A hollow is complete: the crest between it and the hollow before can be measured.
    if (hollow_before_ && has_crest_)
      ridges.push_back({crest_, profile_[crest_] - 0.5 * (profile_[hollow_] + profile_[low_])});
    // Where a profile begins rising, its hollow may lie outside.
    hollow_before_ = started_;
    hollow_ = low_;
    has_crest_ = false;
    started_ = true;
    climbing_ = true;
    high_ = i;
  }

  std::span<const double> profile_;
  double least_;
  std::size_t high_ = 0, low_ = 0, crest_ = 0, hollow_ = 0;
  bool climbing_ = false, started_ = false, hollow_before_ = false, has_crest_ = false;
};

} // namespace

std::vector<Ridge> ridges_in(std::span<const double> profile, double least) {
  std::vector<Ridge> ridges;
  CrestFollower follower(profile, least);
  bool inside = false;
  for (std::size_t i = 0; i < profile.size(); ++i) {
    if (std::isnan(profile[i])) {
      inside = false;
      continue;
    }
    if (!inside)
      follower.restart(i);
    inside = true;
    follower.step(i, ridges);
  }
  return ridges;
}

} // namespace asperity
