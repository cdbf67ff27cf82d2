// Builds the bore's laps: full circles one under the other, at steady feed.
#include "bench/wall_source.h"

#include "bench/wall_laps.h"

#include "asperity/base/units.h"

namespace asperity::bench {

WallSource wall_source() {
  WallSource made;
  Cutter cutter;
  cutter.kind = CutterKind::flat;
  cutter.diameter_mm = 2.0 * kCutter_mm;
  cutter.flutes = kTeeth;
  cutter.helix_deg = deg_from_rad(kHelix_rad);
  cutter.flute_length_mm = 20;
  cutter.runout_mm = kRunout_mm;
  made.job.cutters = {cutter};
  made.job.blank.shape = BlankShape::box;
  made.job.blank.size_mm = {60, 60};
  made.job.blank.z_bottom_mm = 0;
  made.job.blank.z_top_mm = kDepth_mm;
  SweptCutter swept;
  swept.profile = cutter.profile().grown(0.5 * kRunout_mm);
  swept.flute_length_mm = cutter.flute_length_mm;
  for (std::size_t i = 0; i < kBendNodes; ++i)
    swept.node_height_mm[i] = double(i);
  made.swept.cutters = {swept};

  const double radius = kBore_mm - swept.profile.radius_mm(), rpm = 30000;
  const double lap_s = 60.0 / rpm * kPassesPerLap / kTeeth;
  for (int lap = 0; lap < kLaps; ++lap) {
    const Vec3 at(radius, 0, lap_tip_mm(lap));
    PathPiece piece;
    piece.curve = Curve::plan_arc(at, at, {0, 0}, 2.0 * kPi);
    piece.length_mm = 2.0 * kPi * radius;
    piece.v_in_mm_per_s = piece.v_peak_mm_per_s = piece.v_out_mm_per_s = piece.feed_mm_per_s =
        piece.length_mm / lap_s;
    piece.acceleration_mm_per_s2 = 400;
    piece.start_s = lap * lap_s;
    piece.duration_s = lap_s;
    piece.spindle_rpm = rpm;
    piece.turn = SpindleTurn::clockwise;
    piece.tool = 1;
    piece.kind = MoveKind::feed;
    BentPiece bent;
    bent.curve = piece.curve;
    bent.owner = std::uint32_t(lap);
    made.path.pieces.push_back(piece);
    made.swept.add(bent);
  }
  return made;
}

} // namespace asperity::bench
