// Paths no machinist would write, to meet every case of the kernel.
#include "wall_jobs.h"

#include "sweep/changed_path.h"

#include <cmath>

namespace asperity::wall_test {

namespace {

class WildMaker {
public:
  WildMaker(WallKind kind, CutterShape shape, unsigned seed)
      : outline_(outline_of(kind)), is_inside_(is_inside(kind)), random_(seed), maker_(cutter_of(shape)) {}

  SweptPath path(double bend_mm) {
    at_ = near_wall();
    maker_.start(at_);
    const std::size_t moves = 6 + random_() % 6;
    for (std::size_t i = 0; i < moves; ++i)
      add_move(static_cast<unsigned>(random_() % 7));
    if (bend_mm > 0.0)
      maker_.bend(random_, bend_mm);
    // Sides alike: where a move turns head-on to the wall, offsets that differ by side jump there by
    // definition.
    return changed(maker_.path(), [](BentPiece &piece) {
      piece.begin.right = piece.begin.left;
      piece.end.right = piece.end.left;
    });
  }

private:
  double draw(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }

  Vec3 near_wall() {
    const double s = draw(0.0, outline_.length_mm());
    const Vec2 outward = outline_.outward_normal(s) * (is_inside_ ? -1.0 : 1.0);
    return {outline_.point(s) + draw(-2.0, 4.0) * outward, draw(-2.5, 1.0)};
  }

  void add_move(unsigned kind) {
    switch (kind) {
    case 0:
      return line({at_.x, at_.y, draw(-2.5, 1.0)}); // plunge or lift
    case 1:
      return line({plan(near_wall()), at_.z}); // level
    case 2:
      return line(near_wall()); // ramp
    case 3:
      return plan_arc(at_.z);
    case 4:
      return plan_arc(draw(-2.5, 1.0)); // helix
    case 5:
      return upright_arc();
    default:
      return line(at_); // standing
    }
  }

  void line(Vec3 end) {
    maker_.line_to(end);
    at_ = end;
  }

  void plan_arc(double z_end) {
    const double sweep = draw(-4.0, 4.0), direction = draw(0.0, 6.28);
    const Vec2 centre = plan(at_) + draw(0.3, 5.0) * Vec2(std::cos(direction), std::sin(direction));
    const Vec2 d = plan(at_) - centre;
    const Vec2 end = centre + std::cos(sweep) * d + std::sin(sweep) * left_of(d);
    maker_.arc_to({end, z_end}, centre, sweep);
    at_ = {end, z_end};
  }

  void upright_arc() {
    Curve arc;
    const bool is_zx = random_() % 2 == 0;
    arc.axis_x = is_zx ? Vec3(0, 0, 1) : Vec3(0, 1, 0);
    arc.axis_y = is_zx ? Vec3(1, 0, 0) : Vec3(0, 0, 1);
    arc.radius_mm = draw(0.3, 4.0);
    arc.start_rad = draw(0.0, 6.28);
    arc.sweep_rad = draw(-3.0, 3.0);
    const auto arm = [&](double a) {
      return arc.radius_mm * (std::cos(a) * arc.axis_x + std::sin(a) * arc.axis_y);
    };
    arc.begin = at_;
    arc.centre = at_ - arm(arc.start_rad);
    if (random_() % 3 == 0)
      arc.rise = (is_zx ? Vec3(0, 1, 0) : Vec3(1, 0, 0)) * draw(-1.0, 1.0);
    arc.end = at_ = arc.centre + arm(arc.start_rad + arc.sweep_rad) + arc.rise;
    maker_.curve(arc);
  }

  Outline outline_;
  bool is_inside_;
  std::mt19937 random_;
  PathMaker maker_;
  Vec3 at_{0.0};
};

} // namespace

SweptPath wild_path_of(WallKind kind, CutterShape shape, double bend_mm, unsigned seed) {
  return WildMaker(kind, shape, seed).path(bend_mm);
}

} // namespace asperity::wall_test
