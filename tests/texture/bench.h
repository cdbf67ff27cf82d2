// A clock part's straight wall and flat top, and hand-timed straight passes of a cutter along them.
#pragma once

#include "asperity/texture/feature_roughness.h"

#include <span>

namespace asperity::bench {

/// What a pass is run with.
struct Feed {
  double mm_per_s = 25;
  double rpm = 30000;
  double feed_per_rev_mm() const { return mm_per_s / (rpm / 60.0); }
};

/// A block 60 x 20 mm, z -10..0; its long side at y = -10 faces down in plan. Cutter tip at z = -10 beside
/// it.
class Bench {
public:
  explicit Bench(Cutter cutter);

  /// A straight feed at steady speed; begins when the one before ended.
  Bench &feed(Vec3 from, Vec3 to, Feed how);
  Bench &along(const Curve &curve, Feed how);
  /// Changing speed: from one to the other at steady acceleration.
  Bench &change(Vec3 from, Vec3 to, double v_in_mm_per_s, double v_out_mm_per_s, double rpm);
  Bench &arc(Vec3 from, Vec2 centre, double sweep_rad, Feed how);
  Bench &wait(double seconds);

  TextureSource source() const { return {job, path, swept}; }
  const WallFeature &wall() const { return std::get<WallFeature>(job.features[0]); }
  /// Axis of a cutter that just touches the long side.
  double beside_y_mm() const;
  /// Arc length on the outline abreast of (x, -10).
  double s_at_mm(double x_mm) const;
  /// Empty charts of the features, nothing swept.
  Chart wall_chart() const;
  Chart top_chart(double spacing_mm = 0.2) const;
  /// A row of the long side, columns `spacing` apart about x, tooth marks swept.
  WallChart side_strip(double x_mm, double length_mm, double spacing_mm, double z_mm, int threads = 1) const;

  Job job;
  TimedPath path;
  SweptPath swept;

private:
  PathPiece &add(const Curve &curve, double rpm);
  double now_s_ = 0;
};

/// 6 mm, 2 flutes, no helix, no runout.
Cutter plain_cutter(CutterKind kind = CutterKind::flat);

/// Greatest minus least residual of a strip or patch [mm].
double height_mm(std::span<const float> residual_mm);
/// Mean deviation from the mean [mm].
double ra_mm(std::span<const float> residual_mm);

} // namespace asperity::bench
