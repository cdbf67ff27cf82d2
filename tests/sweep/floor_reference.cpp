// Dense samples and golden section over every piece.
#include "sweep/floor_reference.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

namespace asperity::floor_test {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

Vec3 mean_offset(const AxisOffset &offset) {
  const Vec2 p = 0.5 * (offset.left[0] + offset.right[0]);
  return {p.x, p.y, offset.axial_mm};
}

/// What one moment of one piece leaves of the cell.
struct Moment {
  const BentPiece &piece;
  const CutterProfile &profile;
  Vec2 cell;

  Contact operator()(double u) const {
    const Vec3 tip = piece.curve.point(u) + (1.0 - u) * mean_offset(piece.begin) + u * mean_offset(piece.end);
    const double d = glm::distance(plan(tip), cell);
    return {tip.z + profile.height_at(d), d};
  }
};

Contact golden_section(const Moment &moment, double low, double high) {
  const double part = 0.5 * (std::sqrt(5.0) - 1.0);
  double a = high - part * (high - low), b = low + part * (high - low);
  Contact at_a = moment(a), at_b = moment(b);
  for (int i = 0; i < 70; ++i) {
    if (at_a.z_mm <= at_b.z_mm) {
      high = b, b = a, at_b = at_a;
      at_a = moment(a = high - part * (high - low));
    } else {
      low = a, a = b, at_a = at_b;
      at_b = moment(b = low + part * (high - low));
    }
  }
  return at_a.z_mm <= at_b.z_mm ? at_a : at_b;
}

/// Between a moment that reaches the cell and one that does not, the last that does.
Contact last_reaching(const Moment &moment, double reaching, double missing) {
  for (int i = 0; i < 60; ++i) {
    const double middle = 0.5 * (reaching + missing);
    (std::isfinite(moment(middle).z_mm) ? reaching : missing) = middle;
  }
  return moment(reaching);
}

Contact lower_of(Contact a, Contact b) { return b.z_mm < a.z_mm ? b : a; }

Contact reference_of_piece(const Moment &moment) {
  const int samples = 200 + static_cast<int>(100.0 * std::abs(moment.piece.curve.sweep_rad));
  std::vector<Contact> at;
  for (int i = 0; i <= samples; ++i)
    at.push_back(moment(double(i) / samples));
  Contact least = lower_of(at.front(), at.back());
  for (int i = 0; i <= samples; ++i) {
    const int before = std::max(i - 1, 0), after = std::min(i + 1, samples);
    if (!std::isfinite(at[std::size_t(i)].z_mm))
      continue;
    least = lower_of(least, at[std::size_t(i)]);
    for (const int side : {before, after})
      if (!std::isfinite(at[std::size_t(side)].z_mm))
        least = lower_of(least, last_reaching(moment, double(i) / samples, double(side) / samples));
    if (at[std::size_t(i)].z_mm <= at[std::size_t(before)].z_mm &&
        at[std::size_t(i)].z_mm <= at[std::size_t(after)].z_mm)
      least = lower_of(least, golden_section(moment, double(before) / samples, double(after) / samples));
  }
  return least;
}

/// A cell this near the rim may or may not be reached, and above it the flank is next to upright.
bool is_at_rim(const Contact &contact, const SweptPath &path) {
  for (const SweptCutter &cutter : path.cutters)
    if (std::abs(contact.distance_mm / cutter.profile.radius_mm() - 1.0) < 1e-6 && !cutter.profile.is_flat())
      return true;
  return false;
}

/// The path with every cutter larger by a relative amount.
SweptPath scaled(SweptPath path, double by) {
  for (SweptCutter &cutter : path.cutters) {
    const CutterProfile &p = cutter.profile;
    if (p.is_flat())
      cutter.profile = CutterProfile::flat(p.radius_mm() * (1.0 + by));
  }
  return path;
}

} // namespace

Contact reference_contact(const SweptPath &path, Vec2 cell) {
  Contact least{kInfinity, 0.0};
  for (const SweptPiece &piece : path.pieces)
    least = lower_of(least, reference_of_piece({path.bent(piece), path.cutters[piece.cutter].profile, cell}));
  return least;
}

void expect_reference(const FloorChart &chart, const SweptPath &path, int cells, double tolerance_mm,
                      const std::string &what) {
  std::mt19937 random(17);
  std::uniform_int_distribution<std::size_t> any(0, chart.nx * chart.ny - 1);
  const bool has_disc = std::any_of(path.cutters.begin(), path.cutters.end(),
                                    [](const SweptCutter &c) { return c.profile.is_flat(); });
  // A disc's rim moved by this much moves no height on slopes below 100 by more than the tolerance.
  const SweptPath larger = scaled(path, 1e-9), smaller = scaled(path, -1e-9);
  int compared = 0, reached = 0;
  for (int n = 0; n < cells; ++n) {
    const std::size_t cell = any(random);
    if (!chart.in_feature(cell))
      continue;
    const Vec2 p(chart.x_mm(cell % chart.nx), chart.y_mm(cell / chart.nx));
    const Contact contact = reference_contact(path, p);
    if (is_at_rim(contact, path))
      continue;
    if (has_disc &&
        !(std::abs(reference_contact(larger, p).z_mm - reference_contact(smaller, p).z_mm) < 1e-7) &&
        std::isfinite(contact.z_mm))
      continue;
    ++compared;
    const double expected = contact.z_mm - chart.base_mm - double(chart.wanted_mm[cell]);
    if (std::isinf(expected)) {
      ASSERT_TRUE(std::isinf(chart.envelope_mm[cell])) << what << " at " << p.x << " " << p.y;
      continue;
    }
    ++reached;
    ASSERT_NEAR(double(chart.envelope_mm[cell]), expected, tolerance_mm)
        << what << " at " << p.x << " " << p.y;
  }
  ASSERT_GT(compared, cells / 2) << what;
  ASSERT_GT(reached, cells / 20) << what;
}

} // namespace asperity::floor_test
