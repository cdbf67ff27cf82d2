// Small swept paths along walls, made up from a seed: every cutter shape, every wall kind.
#pragma once

#include "asperity/chart/wall_chart.h"
#include "asperity/sweep/swept_path.h"

#include <random>
#include <string>

namespace asperity::wall_test {

enum class CutterShape { flat, ball, corner_radius, tapered, pointed };
enum class WallKind { boss, bore, rectangle_outside, rectangle_inside, free_outside, free_inside };
inline constexpr CutterShape kCutterShapes[] = {CutterShape::flat, CutterShape::ball,
                                                CutterShape::corner_radius, CutterShape::tapered,
                                                CutterShape::pointed};
inline constexpr WallKind kWallKinds[] = {
    WallKind::boss,         WallKind::bore,       WallKind::rectangle_outside, WallKind::rectangle_inside,
    WallKind::free_outside, WallKind::free_inside};
std::string name_of(CutterShape shape);
std::string name_of(WallKind kind);

SweptCutter cutter_of(CutterShape shape);
Outline outline_of(WallKind kind);
bool is_inside(WallKind kind);

/// A path built curve by curve from where the last one ended, each with its own owner.
class PathMaker {
public:
  explicit PathMaker(SweptCutter cutter) { path_.cutters.push_back(std::move(cutter)); }
  PathMaker &start(Vec3 at);
  PathMaker &line_to(Vec3 end);
  PathMaker &arc_to(Vec3 end, Vec2 centre, double sweep_rad);
  PathMaker &curve(const Curve &curve);
  /// Offsets at every joint drawn from the seed: largest at the tip, sides apart, continuous. The next to it
  /// bend little.
  PathMaker &bend(std::mt19937 &random, double most_mm);
  const SweptPath &path() const { return path_; }

private:
  SweptPath path_;
  Vec3 at_{0.0};
};

/// Entry, one lap of the wall in steps of `step_mm`, exit; a ramp (dz over the lap) when asked.
SweptPath lap_of(WallKind kind, CutterShape shape, double z_begin_mm, double z_end_mm, double clearance_mm,
                 double bend_mm, unsigned seed);

/// Moves of every kind to and fro near the wall and through it: plunges, ramps, arcs in any plane, standing.
SweptPath wild_path_of(WallKind kind, CutterShape shape, double bend_mm, unsigned seed);

/// Every piece in so many parts.
SweptPath split(const SweptPath &path, int parts);

WallChart chart_of(WallKind kind, double spacing_mm, float blank_mm);

} // namespace asperity::wall_test
