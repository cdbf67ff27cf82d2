// Cuts the swept path into strokes that are straight or round in plan and rise steadily.
#include "sweep_wall_stroke.h"

#include "asperity/base/parallel.h"
#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace asperity {

namespace {

/// Lowest height at which the profile has a radius at all.
double lowest_cut_mm(const CutterProfile &profile) {
  const double flat = profile.tip_flat_mm();
  if (flat >= 0.0)
    return 0.0;
  double low = 0.0, high = profile.shoulder_mm();
  for (int i = 0; i < 100; ++i) {
    const double middle = 0.5 * (low + high);
    (profile.radius_at(middle) < 0.0 ? low : high) = middle;
  }
  return high;
}

WallCutter wall_cutter_of(const SweptCutter &swept) {
  WallCutter cutter;
  const CutterProfile &profile = swept.profile;
  cutter.profile = profile;
  cutter.lowest_mm = lowest_cut_mm(profile);
  cutter.highest_mm = swept.flute_length_mm;
  cutter.is_cylinder = profile.is_flat();
  cutter.node_height_mm = swept.node_height_mm;
  const double corner = profile.corner_mm();
  cutter.arc_end_mm =
      profile.cone_half_angle_rad() == 0.0
          ? corner
          : std::min(corner * (1.0 - std::sin(profile.cone_half_angle_rad())), profile.shoulder_mm());
  cutter.break_mm.assign(swept.node_height_mm.begin(), swept.node_height_mm.end());
  cutter.break_mm.push_back(profile.shoulder_mm());
  cutter.break_mm.push_back(cutter.arc_end_mm);
  // The radius of a corner arc starts like a square root: graded breaks keep each part close to a parabola.
  for (const double part : {0.001, 0.004, 0.016, 0.06, 0.2, 0.5})
    if (corner > 0.0)
      cutter.break_mm.push_back(part * cutter.arc_end_mm);
  std::sort(cutter.break_mm.begin(), cutter.break_mm.end());
  cutter.break_mm.erase(std::unique(cutter.break_mm.begin(), cutter.break_mm.end()), cutter.break_mm.end());
  return cutter;
}

/// Everything but the plan shape: heights, offsets, names.
Stroke stroke_frame(const BentPiece &piece, double u0, double u1, double z0, double z1,
                    const WallCutter &cutter) {
  Stroke stroke;
  const double axial_rise = piece.end.axial_mm - piece.begin.axial_mm;
  stroke.z_begin_mm = z0 + piece.begin.axial_mm + u0 * axial_rise;
  stroke.z_rise_mm = z1 + piece.begin.axial_mm + u1 * axial_rise - stroke.z_begin_mm;
  stroke.begin = {between(piece.begin.left, piece.end.left, u0),
                  between(piece.begin.right, piece.end.right, u0)};
  stroke.end = {between(piece.begin.left, piece.end.left, u1),
                between(piece.begin.right, piece.end.right, u1)};
  stroke.has_two_sides = stroke.begin[0] != stroke.begin[1] || stroke.end[0] != stroke.end[1];
  for (const WallSide side : kWallSides) {
    const auto i = static_cast<std::size_t>(side);
    stroke.offset_max_mm =
        std::max({stroke.offset_max_mm, longest_mm(stroke.begin[i]), longest_mm(stroke.end[i])});
  }
  stroke.owner = piece.owner;
  stroke.cutter = piece.cutter;
  stroke.has_varying_radius = stroke.z_rise_mm != 0.0 && !cutter.is_cylinder;
  stroke.joins_previous = u0 > 0.0 || piece.joins_previous;
  return stroke;
}

Stroke chord_of(const BentPiece &piece, double u0, double u1, const WallCutter &cutter) {
  const Vec3 begin = piece.curve.point(u0), end = piece.curve.point(u1);
  Stroke stroke = stroke_frame(piece, u0, u1, begin.z, end.z, cutter);
  stroke.from = plan(begin);
  stroke.along = plan(end) - plan(begin);
  stroke.is_standing = stroke.along == Vec2(0.0);
  if (stroke.is_standing) {
    stroke.begin[1] = stroke.begin[0];
    stroke.end[1] = stroke.end[0];
    stroke.has_two_sides = false;
  }
  return stroke;
}

/// Part k of so many equal parts of a plan arc.
Stroke arc_of(const BentPiece &piece, std::size_t k, std::size_t parts, const WallCutter &cutter) {
  const Curve &curve = piece.curve;
  const double u0 = double(k) / double(parts), u1 = double(k + 1) / double(parts);
  const double turn = cross(plan(curve.axis_x), plan(curve.axis_y)) < 0.0 ? -1.0 : 1.0;
  Stroke stroke = stroke_frame(piece, u0, u1, curve.point(u0).z, curve.point(u1).z, cutter);
  const double angle = curve.start_rad + 0.5 * (u0 + u1) * curve.sweep_rad;
  stroke.is_arc = true;
  stroke.centre = plan(curve.centre);
  stroke.middle = std::cos(angle) * plan(curve.axis_x) + std::sin(angle) * plan(curve.axis_y);
  stroke.radius_mm = curve.radius_mm;
  stroke.half_sweep_rad = 0.5 * turn * curve.sweep_rad / static_cast<double>(parts);
  return stroke;
}

bool stays_an_arc(const Curve &curve) {
  return curve.is_plan_arc() && plan(curve.rise) == Vec2(0.0) && curve.radius_mm > 0.0;
}

std::size_t arc_count(const Curve &curve) {
  return static_cast<std::size_t>(std::max(1.0, std::ceil(std::abs(curve.sweep_rad) / kMostSweep_rad)));
}

/// Of an arc outside the XY plane. Its plan view turns back where the angle is a multiple of 90 degrees: no
/// chord may straddle such a place, since the wall changes sides there. A chord of angle a leaves its arc by
/// radius·a²/8.
std::vector<double> ends_of_chords(const Curve &curve) {
  const double step = std::sqrt(8.0 * kChord_mm / std::max(curve.radius_mm, kChord_mm));
  const double quarter = 0.5 * kPi, end = curve.start_rad + curve.sweep_rad;
  std::vector<double> knots{0.0};
  const auto first = static_cast<long>(std::floor(std::min(curve.start_rad, end) / quarter));
  for (long k = first; static_cast<double>(k) * quarter < std::max(curve.start_rad, end); ++k) {
    const double u = (static_cast<double>(k) * quarter - curve.start_rad) / curve.sweep_rad;
    if (u > 1e-9 && u < 1.0 - 1e-9)
      knots.push_back(u);
  }
  knots.push_back(1.0);
  std::sort(knots.begin(), knots.end());
  std::vector<double> ends{0.0};
  for (std::size_t i = 1; i < knots.size(); ++i) {
    const double run = knots[i] - knots[i - 1];
    const int chords = std::max(1, static_cast<int>(std::ceil(run * std::abs(curve.sweep_rad) / step)));
    for (int k = 1; k < chords; ++k)
      ends.push_back(knots[i - 1] + run * k / chords);
    ends.push_back(knots[i]);
  }
  return ends;
}

std::size_t part_count(const SweptPath &path, const SweptPiece &piece) {
  if (piece.is_line())
    return 1;
  const Curve curve = path.curve(piece);
  return stays_an_arc(curve) ? arc_count(curve) : ends_of_chords(curve).size() - 1;
}

/// Returns where the next piece's go.
Stroke *put_strokes(const BentPiece &piece, const WallCutter &cutter, Stroke *place) {
  if (piece.curve.is_line()) {
    *place = chord_of(piece, 0.0, 1.0, cutter);
    return place + 1;
  }
  if (stays_an_arc(piece.curve)) {
    const std::size_t parts = arc_count(piece.curve);
    for (std::size_t k = 0; k < parts; ++k)
      *place++ = arc_of(piece, k, parts, cutter);
    return place;
  }
  const std::vector<double> ends = ends_of_chords(piece.curve);
  for (std::size_t k = 1; k < ends.size(); ++k)
    *place++ = chord_of(piece, ends[k - 1], ends[k], cutter);
  return place;
}

} // namespace

Vec2 Stroke::plan_point(double u) const { return is_arc ? centre + arm(u) : from + u * along; }

Vec2 Stroke::plan_velocity(double u) const { return is_arc ? 2.0 * half_sweep_rad * left_of(arm(u)) : along; }

double Stroke::plan_length_mm() const {
  return is_arc ? std::abs(2.0 * half_sweep_rad) * radius_mm : glm::length(along);
}

std::vector<WallCutter> wall_cutters_of(const SweptPath &path) {
  std::vector<WallCutter> cutters;
  for (const SweptCutter &cutter : path.cutters)
    cutters.push_back(wall_cutter_of(cutter));
  return cutters;
}

StrokeList strokes_of(const SweptPath &path, std::span<const std::uint32_t> pieces,
                      const std::vector<WallCutter> &cutters, int threads) {
  // Counted first, so that threads know where theirs go.
  constexpr std::size_t kBlock = 512; // pieces
  std::vector<std::size_t> first_of_block(band_count(pieces.size(), kBlock) + 1, 0);
  for_each_band(pieces.size(), kBlock, threads, [&](std::size_t begin, std::size_t end) {
    for (std::size_t i = begin; i < end; ++i)
      first_of_block[begin / kBlock + 1] += part_count(path, path.pieces[pieces[i]]);
  });
  std::partial_sum(first_of_block.begin(), first_of_block.end(), first_of_block.begin());

  StrokeList strokes;
  strokes.resize(first_of_block.back());
  for_each_band(pieces.size(), kBlock, threads, [&](std::size_t begin, std::size_t end) {
    Stroke *place = strokes.data() + first_of_block[begin / kBlock];
    for (std::size_t i = begin; i < end; ++i) {
      const SweptPiece &piece = path.pieces[pieces[i]];
      place = put_strokes(path.bent(piece), cutters[piece.cutter], place);
    }
  });
  return strokes;
}

} // namespace asperity
