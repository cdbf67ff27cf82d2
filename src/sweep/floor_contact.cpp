// Lowest contact of a cutter with a corner or cone on rising lines and helices.
#include "floor_contact.h"

#include "asperity/base/units.h"

namespace asperity {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();
/// Steps end when what is left to gain is certainly less than this [mm].
constexpr double kGain_mm = 1e-11;

/// Value and derivative of a rising function whose zero is wanted.
struct Pull {
  double value, rate;
};

/// Zero of a function that rises from negative at `low` to positive at `high`: Newton steps, halving where
/// they leave the bracket. |value| x bracket bounds the height still to be gained, the height being convex
/// there.
template <class Function> double zero_of(const Function &pull, double low, double high, double guess) {
  // Guesses next to an upright rim would begin with steps of no length.
  double x = guess > low && guess < 0.999 * high ? guess : 0.5 * (low + high);
  for (int step = 0; step < 100; ++step) {
    const Pull here = pull(x);
    (here.value < 0.0 ? low : high) = x;
    if (std::abs(here.value) * (high - low) < kGain_mm)
      return x;
    const double next = x - here.value / here.rate;
    const bool stays = next > low && next < high;
    if (stays && std::abs(here.value * (next - x)) < kGain_mm)
      return next;
    x = stays ? next : 0.5 * (low + high);
  }
  return x;
}

/// A place near the contact's distance from the foot, on a line passing the cell at distance q with slope m:
/// exact for contact on the axis's line (q < flat) and, to first order in m, beyond it.
double guess_shift(const Flank &flank, double q, double m) {
  const double contact = flank.flat + flank.corner * m / std::sqrt(1.0 + m * m);
  const double under = contact > q ? std::sqrt(contact * contact - q * q) : 0.0;
  const double slope = flank.slope(q);
  const double beside = slope > 0.0 ? m * q / slope : kInfinity;
  if (under == 0.0)
    return beside;
  return std::min(under, beside);
}

/// Distance tau from the foot, down the slope, at which a cutter on an endless line touches lowest: slope(d)
/// tau / d = m, d^2 = q^2 + tau^2; at most the half chord w of the reach.
double shift_on_line(const Flank &flank, double q, double m, double w) {
  if (m == 0.0)
    return 0.0;
  if (flank.is_disc())
    return w;
  if (flank.corner == 0.0) {
    // Cone: tau = m q / sqrt(lean^2 - m^2), or on the rim of the tip's flat.
    if (m >= flank.lean)
      return w;
    const double tau = m * q / std::sqrt((flank.lean - m) * (flank.lean + m));
    if (q * q + tau * tau < flank.flat * flank.flat)
      return std::sqrt((flank.flat - q) * (flank.flat + q));
    return std::min(tau, w);
  }
  const auto pull = [&](double tau) {
    const double d = std::sqrt(q * q + tau * tau), slope = flank.slope(d);
    const double part = tau / d;
    return Pull{slope * part - m, flank.bend(d) * part * part + slope * (1.0 - part * part) / d};
  };
  if (flank.has_cone() && pull(w).value <= 0.0)
    return w;
  return std::min(zero_of(pull, 0.0, w, guess_shift(flank, q, m)), w);
}

/// A cell's place round a helix, and how far round the cutter reaches it.
struct PlaceOnHelix {
  double gap, k, reach_rad; ///< distance from the arc; product of the two radii; angle to either side

  PlaceOnHelix(const Flank &flank, double rho, double radius) : gap(rho - radius), k(rho * radius) {
    // sin(reach / 2)^2 = (R^2 - gap^2) / 4k, from d^2 = gap^2 + 4k sin^2(angle / 2).
    const double sine2 = k > 0.0 ? (flank.reach - gap) * (flank.reach + gap) / (4.0 * k) : 1.0;
    reach_rad = sine2 >= 1.0 ? kPi : 2.0 * std::asin(std::sqrt(std::max(sine2, 0.0)));
  }
  double distance(double angle) const {
    const double half = std::sin(0.5 * angle);
    return std::sqrt(gap * gap + 4.0 * k * half * half);
  }
};

/// Calls take(angle) for the angles from the cell's spoke, down the slope, of all lowest contacts on an
/// endless helix.
template <class Take>
void for_contacts_on_helix(const Flank &flank, const PlaceOnHelix &place, double radius, double rise_per_rad,
                           const Take &take) {
  if (flank.is_disc())
    return take(place.reach_rad);
  const auto pull = [&](double delta) {
    const double d = place.distance(delta), slope = flank.slope(d), part = place.k * std::sin(delta) / d;
    return Pull{slope * part - rise_per_rad,
                flank.bend(d) * part * part + slope * (place.k * std::cos(delta) - part * part) / d};
  };
  const double guess = guess_shift(flank, std::abs(place.gap), rise_per_rad / radius) / std::sqrt(place.k);
  // Round an arc larger than the cutter the pull of a flank that ends upright rises over the whole reach.
  if (radius > flank.reach && !flank.has_cone())
    return take(zero_of(pull, 0.0, place.reach_rad, guess));
  // Round a smaller one it may rise and fall again: every rise through zero is a dip of its own.
  constexpr int kTrials = 24;
  double low = 0.0;
  bool was_negative = true;
  for (int trial = 1; trial <= kTrials; ++trial) {
    const double high = place.reach_rad * trial / kTrials;
    const bool is_negative = !(pull(high).value > 0.0);
    if (was_negative && !is_negative)
      take(zero_of(pull, low, high, guess));
    low = high;
    was_negative = is_negative;
  }
  if (was_negative) // steeper than the flank out to the rim: the rim comes first
    take(place.reach_rad);
}

} // namespace

double AnyOnLine::operator()(double px, double py) const {
  const Vec2 d(px - low.x, py - low.y);
  const double s = glm::dot(d, along), q = std::abs(cross(along, d));
  const double w2 = (flank.reach - q) * (flank.reach + q);
  if (w2 < 0.0)
    return kInfinity;
  const double w = std::sqrt(w2);
  if (s + w < 0.0 || s - w > length)
    return kInfinity;
  const double lowest = s - shift_on_line(flank, q, slope, w);
  const double c = std::clamp(lowest, 0.0, length), off = std::abs(c - s);
  if (c != lowest && off > w)
    return kInfinity;
  return z + slope * c + flank.height(std::min(std::sqrt(q * q + off * off), flank.reach));
}

double first_contact_mm(const FloorStroke &stroke, const Flank &flank, Vec2 cell) {
  const Vec2 d = cell - stroke.low;
  const double s = glm::dot(d, stroke.low_along), q = std::abs(cross(stroke.low_along, d));
  const double w = std::sqrt(std::max(0.0, (flank.reach - q) * (flank.reach + q)));
  const double under = q < flank.flat ? std::sqrt((flank.flat - q) * (flank.flat + q)) : 0.0;
  const double shift = stroke.slope > 0.0 ? shift_on_line(flank, q, stroke.slope, w) : under;
  return std::clamp(s - shift, 0.0, stroke.length_mm);
}

double AnyOnHelix::operator()(double px, double py) const {
  const Vec2 spoke = Vec2(px, py) - stroke.centre, begin = stroke.low - stroke.centre;
  const PlaceOnHelix place(flank, glm::length(spoke), stroke.radius_mm);
  if (std::abs(place.gap) > flank.reach)
    return kInfinity;
  const double cell = stroke.turn * std::atan2(cross(begin, spoke), glm::dot(begin, spoke));
  const auto height = [&](double a, double d) { return stroke.z_mm + rise_per_rad * a + flank.height(d); };
  double least = kInfinity;
  for (const double end : {0.0, stroke.sweep_rad})
    if (const double d = place.distance(end - cell); d <= flank.reach)
      least = std::min(least, height(end, d));
  const bool in_reach = [&] {
    for (const double turn : {-2.0 * kPi, 0.0, 2.0 * kPi})
      if (cell + turn + place.reach_rad >= 0.0 && cell + turn - place.reach_rad <= stroke.sweep_rad)
        return true;
    return false;
  }();
  if (!in_reach || place.k == 0.0)
    return least;
  for_contacts_on_helix(flank, place, stroke.radius_mm, rise_per_rad, [&](double shift) {
    const double a = cell < shift ? cell - shift + 2.0 * kPi : cell - shift;
    // In reach by its making; rounding at the rim must not lose it.
    if (a <= stroke.sweep_rad)
      least = std::min(least, height(a, std::min(place.distance(shift), flank.reach)));
  });
  return least;
}

} // namespace asperity
