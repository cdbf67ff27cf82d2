// Laps of small parts from the clock workshop, bent at random.
#include "wall_jobs.h"

#include "sweep/changed_path.h"

#include "asperity/base/units.h"

#include <algorithm>
#include <cmath>

namespace asperity::wall_test {

std::string name_of(CutterShape shape) {
  switch (shape) {
  case CutterShape::flat:
    return "flat";
  case CutterShape::ball:
    return "ball";
  case CutterShape::corner_radius:
    return "corner radius";
  case CutterShape::tapered:
    return "tapered ball";
  case CutterShape::pointed:
    return "V";
  }
  return "";
}

std::string name_of(WallKind kind) {
  switch (kind) {
  case WallKind::boss:
    return "boss";
  case WallKind::bore:
    return "bore";
  case WallKind::rectangle_outside:
    return "rectangle outside";
  case WallKind::rectangle_inside:
    return "rectangle inside";
  case WallKind::free_outside:
    return "free outside";
  case WallKind::free_inside:
    return "free inside";
  }
  return "";
}

SweptCutter cutter_of(CutterShape shape) {
  SweptCutter cutter;
  switch (shape) {
  case CutterShape::flat:
    cutter.profile = CutterProfile::flat(1.5);
    break;
  case CutterShape::ball:
    cutter.profile = CutterProfile::ball(1.5);
    break;
  case CutterShape::corner_radius:
    cutter.profile = CutterProfile::corner_radius(1.5, 0.4);
    break;
  case CutterShape::tapered:
    cutter.profile = CutterProfile(1.5, 0.0, 0.5, rad_from_deg(15.0));
    break;
  case CutterShape::pointed:
    cutter.profile = CutterProfile(1.5, 0.1, 0.0, rad_from_deg(30.0));
    break;
  }
  cutter.flute_length_mm = 6.0;
  cutter.node_height_mm = {0.0, 0.8, 1.9, 3.0, 4.5, 6.0};
  return cutter;
}

namespace {

OutlineElement line(Vec2 a, Vec2 b) { return {a, b, Vec2(0.0), 0.0}; }
OutlineElement arc(Vec2 a, Vec2 b, Vec2 c, double sweep) { return {a, b, c, sweep}; }

/// A bell-crank-like shape: lines, a hollow arc of radius 3, a sharp corner, round ends.
Outline crank_outline() {
  const double q = kPi / 2;
  return Outline({line({-6, -4}, {-3, -4}), arc({-3, -4}, {3, -4}, {0, -4}, -kPi), line({3, -4}, {6, -4}),
                  arc({6, -4}, {8, -2}, {6, -2}, q), line({8, -2}, {7, 3}), line({7, 3}, {-6, 4}),
                  arc({-6, 4}, {-6, -4}, {-6, 0}, kPi)});
}

} // namespace

Outline outline_of(WallKind kind) {
  switch (kind) {
  case WallKind::boss:
    return Outline::circle({0.3, -0.2}, 11.0);
  case WallKind::bore:
    return Outline::circle({0.3, -0.2}, 9.0);
  case WallKind::rectangle_outside:
    return Outline::rounded_rectangle({1, 0}, 12.0, 8.0, 1.0);
  case WallKind::rectangle_inside:
    return Outline::rounded_rectangle({1, 0}, 12.0, 8.0, 2.0);
  case WallKind::free_outside:
  case WallKind::free_inside:
    return crank_outline();
  }
  return {};
}

bool is_inside(WallKind kind) {
  return kind == WallKind::bore || kind == WallKind::rectangle_inside || kind == WallKind::free_inside;
}

PathMaker &PathMaker::start(Vec3 at) {
  at_ = at;
  return *this;
}

PathMaker &PathMaker::curve(const Curve &curve) {
  BentPiece piece;
  piece.curve = curve;
  piece.owner = static_cast<std::uint32_t>(path_.pieces.size());
  piece.joins_previous = !path_.pieces.empty() && glm::length(curve.begin - at_) < 1e-9;
  path_.add(piece);
  at_ = curve.end;
  return *this;
}

PathMaker &PathMaker::line_to(Vec3 end) { return curve(Curve::line(at_, end)); }

PathMaker &PathMaker::arc_to(Vec3 end, Vec2 centre, double sweep_rad) {
  return curve(Curve::plan_arc(at_, end, centre, sweep_rad));
}

PathMaker &PathMaker::bend(std::mt19937 &random, double most_mm) {
  std::uniform_real_distribution<double> draw(-most_mm, most_mm);
  const auto one = [&](double axial) {
    AxisOffset offset;
    const Vec2 left(draw(random), draw(random)), right(draw(random), draw(random));
    for (std::size_t i = 0; i < kBendNodes; ++i) {
      const double share = 1.0 - 0.15 * double(i) + 0.05 * draw(random) / most_mm;
      offset.left[i] = share * left;
      offset.right[i] = share * right;
    }
    offset.axial_mm = axial;
    return offset;
  };
  AxisOffset at = one(0.0);
  path_ = changed(path_, [&](BentPiece &piece) {
    piece.begin = at;
    // Level stretches keep their height; half of the joints keep their offset.
    at = draw(random) > 0.0 ? one(0.3 * draw(random)) : at;
    const Vec3 v = piece.curve.end - piece.curve.begin;
    if (piece.curve.is_line() && plan(v) == Vec2(0.0)) {
      piece.begin.right = piece.begin.left;
      at.right = at.left;
    }
    piece.end = at;
  });
  return *this;
}

SweptPath lap_of(WallKind kind, CutterShape shape, double z_begin, double z_end, double clearance,
                 double bend_mm, unsigned seed) {
  std::mt19937 random(seed);
  const SweptCutter cutter = cutter_of(shape);
  const Outline outline = outline_of(kind);
  const double away = cutter.profile.radius_mm() + clearance, side = is_inside(kind) ? -1.0 : 1.0;
  const double length = outline.length_mm();
  std::vector<double> stops{0.0, length};
  for (std::size_t i = 1; i < outline.elements().size(); ++i)
    stops.push_back(outline.element_start_mm(i));
  std::uniform_real_distribution<double> anywhere(0.0, length);
  for (int i = 0; i < 8; ++i)
    stops.push_back(anywhere(random));
  std::sort(stops.begin(), stops.end());

  // Each stretch of an element becomes its offset line or arc; gaps at sharp corners are closed by lines.
  PathMaker maker(cutter);
  const auto z_at = [&](double s) { return z_begin + (z_end - z_begin) * s / length; };
  bool is_first = true;
  Vec2 at(0.0);
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    const double s0 = stops[i], s1 = stops[i + 1];
    if (s1 - s0 < 1e-9)
      continue;
    const OutlineElement &element = outline.elements()[outline.element_at(0.5 * (s0 + s1))];
    const double start = outline.element_start_mm(outline.element_at(0.5 * (s0 + s1)));
    const auto moved = [&](double s) {
      const Vec2 t = element.tangent(s - start);
      return element.point(s - start) - side * away * left_of(t);
    };
    const Vec2 from = moved(s0), to = moved(s1);
    if (is_first)
      maker.start({from, z_begin + 2.0}).line_to({from, z_begin});
    else if (glm::length(from - at) > 1e-9)
      maker.line_to({from, z_at(s0)});
    is_first = false;
    const double offset_radius = element.is_arc() ? glm::length(from - element.centre) : 0.0;
    const bool is_turned =
        element.is_arc() && glm::dot(from - element.centre, element.point(s0 - start) - element.centre) < 0.0;
    if (element.is_arc() && offset_radius > 1e-6 && !is_turned)
      maker.arc_to({to, z_at(s1)}, element.centre, element.sweep_rad * (s1 - s0) / element.length_mm());
    else
      maker.line_to({to, z_at(s1)});
    at = to;
  }
  maker.line_to({at, z_end + 3.0});
  if (bend_mm > 0.0)
    maker.bend(random, bend_mm);
  return maker.path();
}

WallChart chart_of(WallKind kind, double spacing_mm, float blank_mm) {
  WallChart chart = make_wall_chart(outline_of(kind), is_inside(kind), -3.0, 3.0, spacing_mm);
  std::fill(chart.blank_mm.begin(), chart.blank_mm.end(), blank_mm);
  return chart;
}

SweptPath split(const SweptPath &path, int parts) {
  SweptPath result;
  result.cutters = path.cutters;
  for (const SweptPiece &packed : path.pieces)
    for (int i = 0; i < parts; ++i) {
      const BentPiece piece = path.bent(packed);
      BentPiece part = piece;
      const double u0 = double(i) / parts, u1 = double(i + 1) / parts;
      part.begin = between(piece.begin, piece.end, u0);
      part.end = between(piece.begin, piece.end, u1);
      part.joins_previous = i > 0 || piece.joins_previous;
      result.add(part, u0, u1);
    }
  return result;
}

} // namespace asperity::wall_test
