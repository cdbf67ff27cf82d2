// Lowest point a moving disc leaves along one ray of a wall chart.
#pragma once

#include "sweep_wall_section.h"

#include <limits>

namespace asperity {

inline constexpr double kNotCut = std::numeric_limits<double>::infinity();

struct Ray {
  Vec2 foot{0.0}, normal{0, 1};
};

/// e at which the ray enters the disc: a - sqrt(r² - b²); kNotCut where it misses or where the disc's far
/// side lies within the material (a + sqrt(r² - b²) <= 0).
double disc_entry_mm(Vec2 centre, double radius_mm, const Ray &ray);

struct Entry {
  double e_mm = kNotCut;
  double u = 0.0;
};

/// The lowest entry over the section among its inner stationary point (contact on the given side of the
/// motion: +1 left, -1 right) and the nearer end. Closed form.
Entry lowest_straight(const Section &section, double contact_side, const Ray &ray);
Entry lowest_round(const Section &section, double contact_side, const Ray &ray);
/// The lowest entry over the section by safeguarded Newton steps from u_guess.
Entry lowest_smooth(const Section &section, double u_guess, const Ray &ray);
/// The same where an arc may turn head-on to the ray within the section: each side of that turn has its own
/// lowest.
Entry lowest_about_head_on(const Section &section, double u_guess, const Ray &ray);

/// The lowest entry with a far side out of the material when that side passes the foot within the section:
/// the value where it just does. kNotCut when it does not pass.
Entry lowest_at_crossing(const Section &section, const Ray &ray);

/// Cheap reasons why no crossing within a section can lower a ray.
class CrossingBounds {
public:
  CrossingBounds(const Section &section, const Disc &begin, const Disc &end);
  /// No disc of the section reaches farther than this from the chord of its centres.
  double reach_mm() const { return most_radius_mm_ + 0.5 * (length_mm_ - chord_mm_) + 1e-9; }
  bool allow(const Ray &ray, double envelope_mm) const;

private:
  Vec2 begin_{0.0}, end_{0.0};
  double chord_mm_ = 0, length_mm_ = 0, most_radius_mm_ = 0, least_radius_mm_ = 0;
  double always_inside_mm2_ = 0, always_outside_mm2_ = 0;
};

} // namespace asperity
