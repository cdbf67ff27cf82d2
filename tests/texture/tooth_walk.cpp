// Steps every tooth in time and lowers the columns between its positions.
#include "texture/tooth_walk.h"

#include "asperity/base/units.h"
#include "asperity/surface/tooth_marks.h"

#include <algorithm>
#include <cmath>

namespace asperity::bench {

namespace {

/// Teeth are followed this far to both sides of the wall, in steps whose chords lie 0.02 nm off the arc.
constexpr double kReach_rad = 0.15, kStep_rad = 2e-4;

/// Steps longer than this cross the outline's seam, where no strip lies.
constexpr double kSeam_mm = 1;

/// Place on the wall: arc length, height above it.
struct OnWall {
  double s_mm = 0, e_mm = 0;
};

class Walk {
public:
  Walk(const Bench &bench, const WallChart &strip)
      : bench_(bench), strip_(strip), cutter_(bench.job.cutters[0]), heights_(strip.columns(), HUGE_VAL) {
    const std::size_t i = strip.outline.element_at(strip.s_mm.front());
    element_ = strip.outline.elements()[i];
    start_mm_ = strip.outline.element_start_mm(i);
    radii_ = tooth_radii_mm(cutter_.diameter_mm / 2, cutter_.flutes,
                            bench.job.effects.runout ? cutter_.runout_mm / 2 : 0.0);
  }

  void follow(const PathPiece &piece) {
    const double rev_per_s = rev_per_s_from_rpm(piece.spindle_rpm);
    const double step_s = kStep_rad / (2 * kPi * rev_per_s);
    // Steady acceleration over the whole piece.
    const double a = (piece.v_out_mm_per_s - piece.v_in_mm_per_s) / piece.duration_s;
    std::vector<std::pair<long, OnWall>> last(radii_.size(), {-2, {}});
    const auto steps = static_cast<long>(piece.duration_s / step_s);
    for (long k = 0; k <= steps; ++k) {
      const double t = static_cast<double>(k) * step_s;
      const double gone_mm = piece.v_in_mm_per_s * t + 0.5 * a * t * t;
      const Vec2 axis = plan(piece.curve.point(gone_mm / piece.length_mm));
      for (std::size_t i = 0; i < radii_.size(); ++i) {
        const double share = static_cast<double>(i) / cutter_.flutes;
        const double angle = 2 * kPi * (share - rev_per_s * (piece.start_s + t));
        const Vec2 arm(std::cos(angle), std::sin(angle));
        if (glm::dot(arm, facing(axis)) < std::cos(kReach_rad))
          continue;
        const OnWall at = on_wall(axis + radii_[i] * arm);
        if (last[i].first == k - 1)
          lower_between(last[i].second, at);
        last[i] = {k, at};
      }
    }
  }
  std::vector<double> take() { return std::move(heights_); }

private:
  Vec2 facing(Vec2 axis) const {
    if (!element_.is_arc())
      return -strip_.normal.front();
    const Vec2 outward = glm::normalize(axis - element_.centre);
    return strip_.inside ? outward : -outward;
  }
  OnWall on_wall(Vec2 p) const {
    double foot = 0;
    element_.distance_mm(p, &foot);
    const Vec2 outward = strip_.outline.outward_normal(start_mm_ + foot);
    return {start_mm_ + foot, glm::dot(p - element_.point(foot), strip_.inside ? -outward : outward)};
  }
  void lower_between(OnWall a, OnWall b) {
    if (a.s_mm > b.s_mm)
      std::swap(a, b);
    if (b.s_mm - a.s_mm > kSeam_mm)
      return;
    const auto first = std::lower_bound(strip_.s_mm.begin(), strip_.s_mm.end(), a.s_mm);
    for (auto i = static_cast<std::size_t>(first - strip_.s_mm.begin());
         i < strip_.columns() && strip_.s_mm[i] <= b.s_mm; ++i) {
      const double share = b.s_mm > a.s_mm ? (strip_.s_mm[i] - a.s_mm) / (b.s_mm - a.s_mm) : 0.0;
      heights_[i] = std::min(heights_[i], a.e_mm + share * (b.e_mm - a.e_mm));
    }
  }

  const Bench &bench_;
  const WallChart &strip_;
  const Cutter &cutter_;
  std::vector<double> heights_, radii_;
  OutlineElement element_;
  double start_mm_ = 0;
};

} // namespace

std::vector<double> walked_wall_mm(const Bench &bench, const WallChart &strip) {
  Walk walk(bench, strip);
  for (const PathPiece &piece : bench.path.pieces)
    walk.follow(piece);
  return walk.take();
}

} // namespace asperity::bench
