// Builds the scenes of the texture tests.
#include "texture/bench.h"

#include "asperity/base/units.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace asperity::bench {

namespace {

constexpr double kLength_mm = 60, kWidth_mm = 20, kDepth_mm = 10, kSpare_mm = 1;

Blank block() {
  Blank blank;
  blank.shape = BlankShape::box;
  blank.size_mm = {kLength_mm + 2 * kSpare_mm, kWidth_mm + 2 * kSpare_mm};
  blank.z_bottom_mm = -kDepth_mm;
  blank.z_top_mm = kSpare_mm;
  return blank;
}

} // namespace

Cutter plain_cutter(CutterKind kind) {
  Cutter cutter;
  cutter.kind = kind;
  cutter.diameter_mm = 6;
  cutter.flutes = 2;
  cutter.helix_deg = 0;
  cutter.flute_length_mm = 20;
  cutter.runout_mm = 0;
  return cutter;
}

Bench::Bench(Cutter cutter) {
  job.cutters = {cutter};
  job.blank = block();
  WallFeature side;
  side.name = "bell-crank side";
  side.outline = Outline::rounded_rectangle({0, 0}, kLength_mm, kWidth_mm, 2.0);
  side.z_bottom_mm = -kDepth_mm;
  FloorFeature top;
  top.name = "bell-crank top";
  top.outline = side.outline;
  job.features = {side, top};
  SweptCutter swept_cutter;
  swept_cutter.profile = cutter.profile().grown(job.effects.runout ? cutter.runout_mm / 2 : 0.0);
  swept_cutter.flute_length_mm = cutter.flute_length_mm;
  for (std::size_t i = 0; i < kBendNodes; ++i)
    swept_cutter.node_height_mm[i] = static_cast<double>(i);
  swept.cutters = {swept_cutter};
}

PathPiece &Bench::add(const Curve &curve, double rpm) {
  PathPiece piece;
  piece.curve = curve;
  piece.length_mm = curve.length_mm();
  piece.acceleration_mm_per_s2 = 400;
  piece.start_s = now_s_;
  piece.spindle_rpm = rpm;
  piece.turn = SpindleTurn::clockwise;
  piece.tool = 1;
  piece.kind = MoveKind::feed;
  piece.line = static_cast<std::uint32_t>(path.pieces.size() + 1);
  BentPiece bent;
  bent.curve = curve;
  bent.owner = static_cast<std::uint32_t>(path.pieces.size());
  bent.joins_previous =
      !path.pieces.empty() && glm::distance(path.pieces.back().curve.point(1), curve.begin) < 1e-9;
  swept.add(bent);
  path.pieces.push_back(piece);
  return path.pieces.back();
}

Bench &Bench::along(const Curve &curve, Feed how) {
  PathPiece &piece = add(curve, how.rpm);
  piece.v_in_mm_per_s = piece.v_peak_mm_per_s = piece.v_out_mm_per_s = piece.feed_mm_per_s = how.mm_per_s;
  now_s_ += piece.duration_s = piece.length_mm / how.mm_per_s;
  return *this;
}

Bench &Bench::feed(Vec3 from, Vec3 to, Feed how) { return along(Curve::line(from, to), how); }

Bench &Bench::arc(Vec3 from, Vec2 centre, double sweep_rad, Feed how) {
  const Vec2 out = plan(from) - centre;
  const double a = std::atan2(out.y, out.x) + sweep_rad;
  const Vec2 end = centre + glm::length(out) * Vec2(std::cos(a), std::sin(a));
  return along(Curve::plan_arc(from, {end, from.z}, centre, sweep_rad), how);
}

Bench &Bench::change(Vec3 from, Vec3 to, double v_in, double v_out, double rpm) {
  PathPiece &piece = add(Curve::line(from, to), rpm);
  piece.v_in_mm_per_s = v_in;
  piece.v_out_mm_per_s = v_out;
  piece.v_peak_mm_per_s = piece.feed_mm_per_s = std::max(v_in, v_out);
  piece.acceleration_mm_per_s2 = std::abs(v_out * v_out - v_in * v_in) / (2 * piece.length_mm);
  now_s_ += piece.duration_s = 2 * piece.length_mm / (v_in + v_out);
  return *this;
}

Bench &Bench::wait(double seconds) {
  now_s_ += seconds;
  return *this;
}

double Bench::beside_y_mm() const { return -kWidth_mm / 2 - swept.cutters[0].profile.radius_mm(); }

double Bench::s_at_mm(double x_mm) const {
  const Outline &outline = wall().outline;
  for (std::size_t i = 0; i < outline.elements().size(); ++i) {
    double foot = 0;
    if (outline.elements()[i].distance_mm({x_mm, -kWidth_mm / 2}, &foot) < 1e-9)
      return outline.element_start_mm(i) + foot;
  }
  ADD_FAILURE() << "x lies beyond the side";
  return 0;
}

Chart Bench::wall_chart() const {
  return make_wall_chart(wall().outline, wall().side == Side::inside, wall().z_bottom_mm, wall().z_top_mm,
                         0.5);
}

Chart Bench::top_chart(double spacing_mm) const {
  const Vec2 half(kLength_mm / 2, kWidth_mm / 2);
  return make_floor_chart(-half, half, spacing_mm, 0.0);
}

WallChart Bench::side_strip(double x_mm, double length_mm, double spacing_mm, double z_mm,
                            int threads) const {
  std::vector<double> columns;
  const double middle = s_at_mm(x_mm);
  const auto count = static_cast<std::size_t>(std::lround(length_mm / spacing_mm));
  for (std::size_t i = 0; i < count; ++i)
    columns.push_back(middle + (static_cast<double>(i) + 0.5) * spacing_mm - length_mm / 2);
  WallChart strip = make_wall_chart(wall().outline, false, columns, {z_mm});
  EXPECT_TRUE(sweep_wall_with_marks(strip, source(), threads, Progress()));
  return strip;
}

double height_mm(std::span<const float> residual_mm) {
  const auto [low, high] = std::minmax_element(residual_mm.begin(), residual_mm.end());
  return static_cast<double>(*high) - static_cast<double>(*low);
}

double ra_mm(std::span<const float> residual_mm) {
  const double mean =
      std::accumulate(residual_mm.begin(), residual_mm.end(), 0.0) / static_cast<double>(residual_mm.size());
  double sum = 0;
  for (const float z : residual_mm)
    sum += std::abs(static_cast<double>(z) - mean);
  return sum / static_cast<double>(residual_mm.size());
}

} // namespace asperity::bench
